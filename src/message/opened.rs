//! The answer to `read`: what a file is, and what stands in it.

use super::asked::{Files, OffStep, missing, text_of};
use super::problem::{Problem, Problems};
use super::written_files::{MADE_FOR, WEARER, switched_off};
use crate::job::JobFile;
use crate::measurements::{MeasurementFile, MeasurementSet};
use serde::Serialize;
use serde_json::Value;

#[derive(Debug, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub(super) enum Opened {
    Job {
        /// With its body in it.
        job: Value,
        /// The wearer whom the block is fitted to, where its body is somebody else.
        #[serde(skip_serializing_if = "Option::is_none")]
        wearer: Option<Value>,
        off: Vec<OffStep>,
    },
    Set {
        set: Value,
    },
    Table {
        name: String,
        sizes: Vec<String>,
        text: String,
    },
}

/// Keys that a job has and nothing else.
const JOB_KEYS: [&str; 2] = ["block", "title"];

pub(super) fn open(text: &str, name: &str, files: &Files) -> Result<Opened, Problems> {
    if is_job(text) {
        return job(text, files);
    }
    match MeasurementFile::parse(text) {
        Ok(MeasurementFile::Set(set)) => Ok(Opened::Set {
            set: as_value(&set),
        }),
        Ok(MeasurementFile::Table(table)) => Ok(Opened::Table {
            name: table.name().to_owned(),
            sizes: table.labels().map(str::to_owned).collect(),
            text: text.to_owned(),
        }),
        Err(_) if text.trim().is_empty() => {
            let text = format!("`{name}` is empty");
            let cure = "open a job, a measurement set or a size table";
            Err(Problems::wrong(Problem::new("empty_file", text, cure)))
        }
        Err(errors) => Err(errors.into()),
    }
}

/// Whether a text has the keys of a job at its first level, wherever it may be wrong.
fn is_job(text: &str) -> bool {
    let json = text.trim_start().starts_with('{');
    JOB_KEYS.iter().any(|key| {
        text.lines().any(|line| {
            let line = if json {
                line.trim_start_matches([' ', '\t', '{', '"'])
            } else {
                line
            };
            line.strip_prefix(key)
                .is_some_and(|rest| rest.trim_start_matches('"').trim_start().starts_with(':'))
        })
    })
}

fn job(text: &str, files: &Files) -> Result<Opened, Problems> {
    let file = JobFile::parse(text)?;
    let path = file.body_path().map(str::to_owned);
    let body = text_of(files, path.as_deref());
    if let (Some(path), None) = (&path, body) {
        return Err(missing(path));
    }
    let file = match file.block_path().map(str::to_owned) {
        None => file,
        Some(path) => {
            let block = text_of(files, Some(&path)).ok_or_else(|| missing(&path))?;
            file.with_block(block, body)
                .map_err(|error| Problems::of_resolve(&error))?
        }
    };
    let file = match file.wearer_path().map(str::to_owned) {
        None => file,
        Some(path) => {
            let text = text_of(files, Some(&path)).ok_or_else(|| missing(&path))?;
            file.with_wearer(text)
                .map_err(|error| Problems::of_resolve(&error))?
        }
    };
    let mut job = file
        .resolve(body)
        .map_err(|error| Problems::of_resolve(&error))?;
    let wearer = match (job.compared.take(), files.get(WEARER)) {
        (Some(wearer), _) => Some(as_value(&wearer)),
        (None, Some(text)) if path.as_deref() == Some(MADE_FOR) => {
            Some(as_value(&MeasurementSet::parse(text)?))
        }
        _ => None,
    };
    Ok(Opened::Job {
        job: as_value(&job),
        wearer,
        off: switched_off(text),
    })
}

fn as_value(value: &impl Serialize) -> Value {
    // Mappings with names for keys, texts and finite numbers: nothing that JSON cannot hold.
    serde_json::to_value(value).unwrap_or_default()
}
