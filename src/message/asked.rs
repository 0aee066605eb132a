//! What a message may ask.

use super::problem::{Problem, Problems};
use crate::job::{Job, JobFile};
use crate::units::Unit;
use serde::Deserialize;
use serde_json::{Map, Value};
use std::collections::BTreeMap;

/// A message.
#[derive(Debug, Deserialize)]
#[serde(tag = "ask", rename_all = "snake_case")]
pub(super) enum Ask {
    Describe {},
    Measure {
        set: TypedSet,
        #[serde(default)]
        unit: Unit,
        focus: Option<String>,
    },
    Form {
        set: Option<TypedSet>,
        #[serde(default)]
        unit: Unit,
        #[serde(default)]
        paper: String,
    },
    Signs {
        #[serde(default)]
        words: String,
        #[serde(default)]
        unit: Unit,
    },
    Draft {
        #[serde(flatten)]
        made: MadeFrom,
        #[serde(default)]
        report: bool,
    },
    FitMap {
        #[serde(flatten)]
        made: MadeFrom,
    },
    Most {
        #[serde(flatten)]
        made: MadeFrom,
        step: usize,
    },
    Fit {
        #[serde(flatten)]
        made: MadeFrom,
        wearer: Value,
    },
    Output {
        #[serde(flatten)]
        made: MadeFrom,
        #[serde(flatten)]
        wanted: Wanted,
    },
    Read {
        text: String,
        #[serde(default)]
        name: String,
        #[serde(default)]
        files: Files,
    },
    Write {
        #[serde(flatten)]
        made: MadeFrom,
        wearer: Option<Value>,
        #[serde(default)]
        off: Vec<OffStep>,
    },
}

/// Texts of files by name.
pub(super) type Files = BTreeMap<String, String>;

/// A set as it is typed: any of its values may be unfinished.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
pub(super) struct TypedSet {
    pub name: String,
    pub unit: Unit,
    pub source: Option<String>,
    pub notes: Option<String>,
    pub measurements: Map<String, Value>,
}

/// A job with the keys of a job file, and the files it names.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct MadeFrom {
    pub job: Value,
    #[serde(default)]
    pub files: Files,
}

/// A step that was switched off, and before which of the others it stands.
#[derive(Debug, Clone, PartialEq, Deserialize, serde::Serialize)]
pub(super) struct OffStep {
    pub at: usize,
    pub step: Value,
}

/// What is to come out.
#[derive(Debug, Clone, Deserialize)]
pub(super) struct Wanted {
    pub what: What,
    /// The text of a size table, for a range.
    #[serde(default)]
    pub table: String,
    /// The width of the cloth, with its unit.
    #[serde(default)]
    pub width: String,
    #[serde(default)]
    pub folded: bool,
    #[serde(default)]
    pub one_way: bool,
    pub rounds: Option<u32>,
}

/// A kind of output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum What {
    Pages,
    Sheet,
    Svg,
    Document,
    Dxf,
    Fitting,
    Range,
    Lay,
    Batch,
}

impl MadeFrom {
    /// The job file of the message.
    pub(super) fn file(&self) -> Result<JobFile, Problems> {
        Ok(JobFile::from_json(&self.job.to_string())?)
    }

    /// The text of a file that the job names.
    pub(super) fn text(&self, path: Option<&str>) -> Option<&str> {
        text_of(&self.files, path)
    }

    /// The job file with the block of one's own that it names.
    pub(super) fn with_block(&self, file: JobFile) -> Result<JobFile, Problems> {
        let Some(path) = file.block_path().map(str::to_owned) else {
            return Ok(file);
        };
        let text = self.text(Some(&path)).ok_or_else(|| missing(&path))?;
        let body = self.text(file.body_path()).map(str::to_owned);
        file.with_block(text, body.as_deref())
            .map_err(|error| Problems::of_resolve(&error))
    }

    /// The job, with everything it names.
    pub(super) fn job(&self) -> Result<Job, Problems> {
        let file = self.with_block(self.file()?)?;
        let file = match file.wearer_path().map(str::to_owned) {
            None => file,
            Some(path) => {
                let text = self.text(Some(&path)).ok_or_else(|| missing(&path))?;
                file.with_wearer(text)
                    .map_err(|error| Problems::of_resolve(&error))?
            }
        };
        let text = self.text(file.body_path()).map(str::to_owned);
        file.resolve(text.as_deref())
            .map_err(|error| Problems::of_resolve(&error))
    }
}

/// The text of a file by the last part of its path: whoever sends it knows no folders.
pub(super) fn text_of<'a>(files: &'a Files, path: Option<&str>) -> Option<&'a str> {
    let path = path?;
    let name = path.rsplit(['/', '\\']).next().unwrap_or(path);
    files
        .get(path)
        .or_else(|| files.get(name))
        .map(String::as_str)
}

/// A file that the job names was not sent.
pub(super) fn missing(path: &str) -> Problems {
    Problems::wrong(Problem {
        place: Some(path.to_owned()),
        ..Problem::new(
            "file_wanted",
            format!("the job needs the file `{path}`, which was not opened with it"),
            "open both files together",
        )
    })
}
