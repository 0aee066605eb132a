//! What went wrong, for a person and for a program.

use std::fmt;
use std::path::Path;

use blockwright::explain::{Explain, Explanation};
use blockwright::job::{Fault, JobError};
use blockwright::measurements::{FileErrors, FileProblem, Place};
use blockwright::units::Unit;
use serde::{Serialize, Serializer};

use super::source_file::{ReadError, SourceFile};

/// The most characters of a line that are shown.
const WIDEST: usize = 2 * HALF;
const HALF: usize = 45;

/// How many problems of one file are listed; more are counted.
const MOST: usize = 50;

/// One thing that is wrong. As JSON: `code`, `text`, and where it is known `file`, `line`,
/// `column`, `key` (the keys that lead there, joined by points), `source` (the beginning of the
/// line), `place` (what of the pattern or the body it is about) and `cure` (what to do).
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct Problem {
    code: String,
    text: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    file: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    line: Option<u64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    column: Option<u64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    key: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "beginning")]
    source: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    place: Option<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    cure: Option<String>,
}

/// The beginning of a line: a machine can read the rest in the file.
fn beginning<S: Serializer>(line: &Option<String>, serializer: S) -> Result<S::Ok, S::Error> {
    let short: Option<String> = line
        .as_ref()
        .map(|line| line.chars().take(WIDEST).collect());
    short.serialize(serializer)
}

impl Problem {
    /// A problem of no place.
    pub(super) fn new(code: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            code: code.into(),
            text: text.into(),
            file: None,
            line: None,
            column: None,
            key: None,
            source: None,
            place: None,
            cure: None,
        }
    }

    /// An error of the library, with what it says of its place and of the way out.
    pub(super) fn of(error: &dyn Explain) -> Self {
        Self::said(error.explanation())
    }

    fn said(explained: Explanation) -> Self {
        Self {
            place: explained.place,
            cure: Some(explained.cure),
            ..Self::new(explained.code, explained.cause)
        }
    }

    /// A file that could not be read, of no place yet.
    pub(super) fn of_read(error: &ReadError) -> Self {
        Self::new(error.code(), error.to_string())
    }

    /// The same in a file.
    pub(super) fn in_file(mut self, shown: impl Into<String>) -> Self {
        self.file = Some(shown.into());
        self
    }

    /// The same at a place of a file.
    pub(super) fn at(mut self, file: &SourceFile, place: Place, key: &str) -> Self {
        self.file = Some(file.shown().to_owned());
        if place.line > 0 {
            self.line = Some(place.line);
            self.column = Some(place.column);
            self.source = file.line(place.line).map(str::to_owned);
        }
        self.key = (!key.is_empty()).then(|| key.to_owned());
        self
    }

    fn of_file(file: &SourceFile, problem: &FileProblem) -> Self {
        Self {
            text: problem.message(),
            cure: Some(problem.cure()),
            ..Self::of(&problem.cause)
        }
        .at(file, problem.place, &problem.path)
    }

    /// The line of the file and a caret below the place; a long line is shown in part.
    fn excerpt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (Some(line), Some(column), Some(source)) = (self.line, self.column, &self.source)
        else {
            return Ok(());
        };
        let column = usize::try_from(column.saturating_sub(1)).unwrap_or(usize::MAX);
        let from = if column < WIDEST - 10 {
            0
        } else {
            column - HALF
        };
        let shown: String = source.chars().skip(from).take(WIDEST).collect();
        let dots = if from > 0 { "…" } else { "" };
        let number = line.to_string();
        let caret = (column - from).min(shown.chars().count()) + dots.chars().count();
        write!(f, "\n  {number} | {dots}{}", shown.trim_end())?;
        write!(f, "\n  {:1$} | {2:3$}^", "", number.len(), "", caret)
    }
}

impl fmt::Display for Problem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("error: ")?;
        if let Some(file) = &self.file {
            f.write_str(file)?;
            if let (Some(line), Some(column)) = (self.line, self.column) {
                write!(f, ":{line}:{column}")?;
            }
            f.write_str(": ")?;
        }
        if let Some(key) = &self.key {
            write!(f, "{key}: ")?;
        }
        f.write_str(&self.text)?;
        self.excerpt(f)
    }
}

/// Reads a file that was named on the command line, `-` being standard input.
pub(super) fn read_argument(path: &Path) -> Result<SourceFile, Failure> {
    SourceFile::read_or_input(path).map_err(|error| {
        Failure::wrong(Problem::of_read(&error).in_file(path.display().to_string()))
    })
}

/// Why a command did not do what was asked. As JSON: `status` (`refused` or `wrong`), `exit`
/// and `errors`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub(super) struct Failure {
    status: &'static str,
    exit: u8,
    errors: Vec<Problem>,
}

impl Failure {
    /// The command or a file is wrong.
    pub(super) fn wrong(problem: Problem) -> Self {
        Self {
            status: "wrong",
            exit: 2,
            errors: vec![problem],
        }
    }

    /// A measurement was refused.
    pub(super) fn refused(problem: Problem) -> Self {
        Self {
            status: "refused",
            exit: 1,
            errors: vec![problem],
        }
    }

    /// A file is wrong; or it is well written and holds measurements that are refused.
    pub(super) fn of_file(file: &SourceFile, errors: &FileErrors) -> Self {
        let all = errors.all();
        let mut problems: Vec<Problem> = all
            .iter()
            .take(MOST)
            .map(|problem| Problem::of_file(file, problem))
            .collect();
        if all.len() > MOST {
            let text = format!("and {} more problems", all.len() - MOST);
            problems.push(Problem::new("more", text).in_file(file.shown()));
        }
        let refused = errors.only_refused_measurements();
        Self {
            status: if refused { "refused" } else { "wrong" },
            exit: if refused { 1 } else { 2 },
            errors: problems,
        }
    }

    /// A job gave no pattern; lengths are said in a unit, and a step is shown where it is written.
    pub(super) fn of_job(
        file: &SourceFile,
        error: &JobError,
        (unit, steps): (Unit, &[Place]),
    ) -> Self {
        let said = Problem::said(error.in_unit(unit));
        let step = error
            .step()
            .and_then(|step| steps.get(step.checked_sub(1)?));
        let problem = match step {
            Some(place) => said.at(file, *place, "alterations"),
            None => said.in_file(file.shown()),
        };
        let refused = error.fault() == Fault::Pattern;
        Self {
            status: if refused { "refused" } else { "wrong" },
            exit: if refused { 1 } else { 2 },
            errors: vec![problem],
        }
    }

    /// The exit code.
    pub(super) const fn exit(&self) -> u8 {
        self.exit
    }

    /// As JSON.
    pub(super) fn json(&self) -> String {
        // Strings and numbers only: nothing that JSON cannot hold.
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, problem) in self.errors.iter().enumerate() {
            if place > 0 {
                f.write_str("\n")?;
            }
            write!(f, "{problem}")?;
        }
        Ok(())
    }
}
