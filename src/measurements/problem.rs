//! What is wrong with a file of measurements or a job, and where.

use crate::explain::{Explain, Several};
use std::fmt;

use thiserror::Error;

use super::error::MeasurementError;
use super::file_kind::FileKind;
use super::measurement::UnknownMeasurement;
use crate::units::{Unit, UnitError, speak};

/// A place in a text, both numbers counted from one; zero where it is not known.
///
/// ```
/// use blockwright::measurements::Place;
///
/// assert_eq!(Place { line: 7, column: 3 }.to_string(), "line 7, column 3");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// The line.
    pub line: u64,
    /// The column, in characters.
    pub column: u64,
}

impl Place {
    /// The beginning of a text.
    pub const START: Self = Self { line: 1, column: 1 };

    /// Not known, as in a document that was not read from a text.
    pub const UNKNOWN: Self = Self { line: 0, column: 0 };
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

/// What is wrong at one place of a file.
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::measurements::{FileCause, MeasurementSet};
///
/// let errors = MeasurementSet::parse("unit: ells\n").unwrap_err();
/// assert!(errors.all().iter().any(|p| matches!(p.cause, FileCause::BadUnit { .. })));
/// # }
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum FileCause {
    /// The text is no YAML or no JSON, or a key stands twice.
    #[error("{message}; {cure}")]
    Syntax {
        /// What is wrong.
        message: String,
        /// What to write.
        cure: &'static str,
        /// The same with the line of the file and a mark below the place.
        snippet: String,
    },
    /// A key that the file has no use for.
    #[error("`{key}` is not known here; {hint}")]
    UnknownKey {
        /// The key, shortened if long.
        key: String,
        /// The key that was meant, or those that are known.
        hint: String,
    },
    /// Lines that belong to the key above them begin in the same column as it.
    #[error(
        "`{key}` begins in the same column as `{above}`, which has nothing below it; put two spaces \
         before every line that belongs to `{above}`"
    )]
    NotIndented {
        /// The first such key, shortened if long.
        key: String,
        /// The key to which it belongs.
        above: &'static str,
    },
    /// All that is impossible in the unit of the file is usual in another.
    #[error(
        "{count} measurements are impossible in {written} and usual in {}, {example} among them; \
         if they were taken in {0}, write `unit: {meant}`",
        .meant.plural()
    )]
    OtherUnit {
        /// How many.
        count: usize,
        /// The unit of the file.
        written: Unit,
        /// The unit in which they are usual.
        meant: Unit,
        /// The first of them as it is written, such as `height 66`.
        example: String,
    },
    /// The file is of another kind than is wanted here.
    #[error("this is {found}, and {wanted} is wanted here; {}", found.hint(*wanted))]
    OtherFile {
        /// What it is.
        found: FileKind,
        /// What is wanted.
        wanted: FileKind,
    },
    /// A key that must be there.
    #[error("`{key}` is missing; {hint}")]
    MissingKey {
        /// The key.
        key: &'static str,
        /// What to write.
        hint: &'static str,
    },
    /// Something else stands where a value is expected.
    #[error("{found} stands here; write {expected}")]
    WrongShape {
        /// What stands there.
        found: &'static str,
        /// What is expected.
        expected: &'static str,
    },
    /// The unit of the file is not one of the three.
    #[error("`{unit}` is not a unit; write `mm`, `cm` or `in`")]
    BadUnit {
        /// What is written, shortened if long.
        unit: String,
    },
    /// A size label stands twice, or a base is not among the labels.
    #[error("size `{label}` {problem}")]
    BadLabel {
        /// The label.
        label: String,
        /// What is wrong with it and what to do.
        problem: &'static str,
    },
    /// A word that is not one of those that may stand there.
    #[error("`{word}` is no {what}; {hint}")]
    UnknownWord {
        /// What was written, shortened if long.
        word: String,
        /// What is to be chosen.
        what: &'static str,
        /// The word that was meant, or those that are known.
        hint: String,
    },
    /// Something that has no meaning beside the rest of the file.
    #[error("{problem}; {hint}")]
    Senseless {
        /// What does not go together.
        problem: String,
        /// What to do about it.
        hint: &'static str,
    },
    /// More of something than any file needs.
    #[error("{found} {what} stand here; at most {most} are taken, split the work")]
    TooMany {
        /// What.
        what: &'static str,
        /// How many there are.
        found: usize,
        /// How many there may be.
        most: usize,
    },
    /// An alteration that is not known, or whose settings are wrong.
    #[error("{text}")]
    Alteration {
        /// What is wrong and what to do.
        text: String,
        /// Whether the alteration itself is not known.
        unknown: bool,
    },
    /// A length that is read and lies outside what can be meant.
    #[error("{found} mm is out of reach; write {low} to {high} mm")]
    OutOfReach {
        /// What was written, in mm.
        found: f64,
        /// The least, in mm.
        low: f64,
        /// The most, in mm.
        high: f64,
    },
    /// A name that is no measurement.
    #[error(transparent)]
    UnknownMeasurement(#[from] UnknownMeasurement),
    /// A value that cannot be read.
    #[error(transparent)]
    Value(#[from] UnitError),
    /// A value that makes the body impossible.
    #[error(transparent)]
    Measurement(#[from] MeasurementError),
}

impl FileCause {
    /// Whether the file is as it should be and a value is refused for being impossible on
    /// a body.
    #[must_use]
    pub const fn refuses_measurement(&self) -> bool {
        matches!(
            self,
            Self::Measurement(MeasurementError::OutOfRange { .. }) | Self::OtherUnit { .. }
        )
    }

    /// Whether it explains all else that is wrong with the file.
    const fn explains_the_rest(&self) -> bool {
        matches!(self, Self::NotIndented { .. } | Self::OtherFile { .. })
    }
}

/// One problem of a file: what, and where.
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::measurements::MeasurementSet;
///
/// let errors = MeasurementSet::parse(
///     "name: Ada\nunit: cm\nmeasurements:\n  bust_grith: 92\n",
/// )
/// .unwrap_err();
/// // The three others that are missing are reported at `measurements:`, line 3.
/// let typo = &errors.all()[3];
/// assert_eq!(typo.place.line, 4);
/// assert!(typo.to_string().contains("did you mean `bust_girth`"));
/// # }
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct FileProblem {
    /// Where it stands.
    pub place: Place,
    /// The keys that lead there, joined by points; empty at the top.
    pub path: String,
    /// What is wrong.
    pub cause: FileCause,
    /// The unit in which its lengths are said: the one they are written in.
    pub unit: Unit,
}

impl fmt::Display for FileProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // It names its place itself, above the line it shows.
        if let FileCause::Syntax { snippet, .. } = &self.cause {
            return f.write_str(snippet.trim_end());
        }
        if self.place != Place::UNKNOWN {
            write!(f, "{}: ", self.place)?;
        }
        if !self.path.is_empty() {
            write!(f, "{}: ", self.path)?;
        }
        f.write_str(&self.message())
    }
}

impl std::error::Error for FileProblem {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        Some(&self.cause)
    }
}

/// Everything that is wrong with a file, in the order of the file.
///
/// ```
/// # #[cfg(feature = "yaml")] {
/// use blockwright::measurements::MeasurementSet;
///
/// let errors = MeasurementSet::parse("name: Ada\nunit: ells\nfoo: 1\n").unwrap_err();
/// assert_eq!(errors.all().len(), 3); // the unit, foo, and no measurements
/// let lines: Vec<u64> = errors.into_iter().map(|problem| problem.place.line).collect();
/// assert!(lines.is_sorted());
/// # }
/// ```
pub type FileErrors = Several<FileProblem>;

impl FileErrors {
    /// The problems in the order of the file; `None` if there are none.
    pub(crate) fn gathered(mut problems: Vec<FileProblem>) -> Option<Self> {
        if problems
            .iter()
            .any(|problem| problem.cause.explains_the_rest())
        {
            problems.retain(|problem| problem.cause.explains_the_rest());
        }
        problems.sort_by_key(|problem| problem.place);
        Self::of(problems)
    }

    /// Whether all that is wrong is values that are impossible on a body.
    #[must_use]
    pub fn only_refused_measurements(&self) -> bool {
        self.all().iter().all(|p| p.cause.refuses_measurement())
    }
}

impl Explain for FileCause {
    fn code(&self) -> String {
        match self {
            Self::Syntax { .. } => "syntax",
            Self::UnknownKey { .. } => "unknown_key",
            Self::NotIndented { .. } => "not_indented",
            Self::OtherUnit { .. } => "other_unit",
            Self::OtherFile { .. } => "other_file",
            Self::MissingKey { .. } => "missing_key",
            Self::WrongShape { .. } => "wrong_shape",
            Self::BadUnit { .. } => "bad_unit",
            Self::BadLabel { .. } => "bad_label",
            Self::UnknownWord { .. } => "unknown_word",
            Self::Senseless { .. } => "senseless",
            Self::TooMany { .. } => "too_many",
            Self::Alteration { unknown: true, .. } => "unknown_alteration",
            Self::Alteration { .. } => "bad_setting",
            Self::OutOfReach { .. } => "out_of_reach",
            Self::UnknownMeasurement(_) => "unknown_measurement",
            Self::Value(_) => "bad_value",
            Self::Measurement(MeasurementError::Missing { .. }) => "missing_measurement",
            Self::Measurement(MeasurementError::Repeated { .. }) => "repeated_measurement",
            Self::Measurement(_) => "impossible_measurement",
        }
        .to_owned()
    }

    fn cure(&self) -> String {
        match self {
            Self::Syntax { cure, .. } => (*cure).to_owned(),
            Self::NotIndented { above, .. } => {
                format!("put two spaces before every line that belongs to `{above}`")
            }
            Self::OtherUnit { meant, .. } => format!("write `unit: {meant}`"),
            Self::OtherFile { found, wanted } => found.hint(*wanted).to_owned(),
            Self::UnknownKey { hint, .. } | Self::UnknownWord { hint, .. } => hint.clone(),
            Self::MissingKey { hint, .. } => (*hint).to_owned(),
            Self::WrongShape { expected, .. } => format!("write {expected}"),
            Self::BadUnit { .. } => "write `mm`, `cm` or `in`".to_owned(),
            Self::BadLabel { .. } => "give every size its own label".to_owned(),
            Self::Senseless { hint, .. } => (*hint).to_owned(),
            Self::TooMany { most, .. } => format!("keep at most {most} and split the work"),
            Self::Alteration { unknown: true, .. } => {
                "write the name of an alteration from the list in the guide".to_owned()
            }
            Self::Alteration { .. } => "write the settings that the alteration has".to_owned(),
            Self::OutOfReach { low, high, .. } => format!("write {low} to {high} mm"),
            Self::UnknownMeasurement(error) => error.cure(),
            Self::Value(error) => error.cure(),
            Self::Measurement(error) => error.cure(),
        }
    }
}

impl Explain for FileProblem {
    fn code(&self) -> String {
        self.cause.code()
    }

    /// Line and column, and the keys that lead there.
    fn place(&self) -> Option<String> {
        let keys = if self.path.is_empty() { "" } else { ": " };
        Some(format!("{}{keys}{}", self.place, self.path))
    }

    fn message(&self) -> String {
        match &self.cause {
            FileCause::Measurement(error) => error.in_unit(self.unit),
            cause => speak(&cause.message(), self.unit),
        }
    }

    fn cure(&self) -> String {
        match &self.cause {
            FileCause::Measurement(error) => error.cure_in(self.unit),
            cause => speak(&cause.cure(), self.unit),
        }
    }
}
