//! The answer to `write`: jobs and sets as YAML files of the command.

use super::asked::{MadeFrom, OffStep};
use super::problem::Problems;
use crate::job::JobFile;
use crate::measurements::MeasurementSet;
use serde::Serialize;
use serde_json::Value;

/// Whom the block is made for, where it is fitted to somebody else.
pub(super) const MADE_FOR: &str = "made-for.yaml";
/// Whom it is for.
pub(super) const WEARER: &str = "wearer.yaml";
/// The job.
pub(super) const JOB: &str = "job.yaml";
/// Before a step that is switched off, which a job does not know.
pub(super) const OFF: &str = "# switched off, before step ";

#[derive(Debug, Serialize)]
pub(super) struct Written {
    files: Vec<WrittenFile>,
}

#[derive(Debug, Serialize)]
struct WrittenFile {
    name: &'static str,
    text: String,
}

/// `wearer` is the one the block is fitted to, where the job's body is another.
pub(super) fn write(
    asked: &MadeFrom,
    wearer: Option<&Value>,
    off: &[OffStep],
) -> Result<Written, Problems> {
    let mut job = asked.job.clone();
    let mut files = Vec::new();
    let body_name = if wearer.is_some() { MADE_FOR } else { WEARER };
    let body = job
        .get("body")
        .filter(|body| body.is_object())
        .map(|body| MeasurementSet::from_json(&body.to_string()))
        .transpose()?;
    if let Some(set) = body {
        files.push(WrittenFile {
            name: body_name,
            text: set.to_yaml(),
        });
        if let Value::Object(map) = &mut job {
            map.insert("body".to_owned(), Value::from(body_name));
        }
    }
    if let Some(wearer) = wearer {
        let set = MeasurementSet::from_json(&wearer.to_string())?;
        files.push(WrittenFile {
            name: WEARER,
            text: set.to_yaml(),
        });
        if let Value::Object(map) = &mut job {
            map.insert("wearer".to_owned(), Value::from(WEARER));
        }
    }
    let file = JobFile::from_json(&job.to_string())?;
    let mut text = String::from("# blockwright draft job.yaml -o DIR makes the same pattern.\n");
    text.push_str(&file.to_yaml());
    for step in off {
        text.push_str(&format!("{OFF}{}: {}\n", step.at + 1, step.step));
    }
    files.insert(0, WrittenFile { name: JOB, text });
    Ok(Written { files })
}

/// The steps that were switched off, from the comments of a job file.
pub(super) fn switched_off(text: &str) -> Vec<OffStep> {
    let of_line = |line: &str| {
        let (number, step) = line.strip_prefix(OFF)?.split_once(": ")?;
        Some(OffStep {
            at: number.trim().parse::<usize>().ok()?.checked_sub(1)?,
            step: serde_json::from_str(step).ok()?,
        })
    };
    text.lines().filter_map(of_line).collect()
}
