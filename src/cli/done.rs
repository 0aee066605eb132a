//! What a command prints when it is done: the report, and what was written where.

use std::path::Path;

use blockwright::job::OutputFile;
use serde::Serialize;

use super::folder;
use super::kept::Kept;
use super::problem::Failure;

/// The report as JSON: the report's own fields, and what was written where.
#[derive(Debug, Serialize)]
struct Done<'a, R> {
    status: &'static str,
    #[serde(flatten)]
    report: &'a R,
    #[serde(skip_serializing_if = "Option::is_none")]
    folder: Option<String>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    files: Vec<&'a str>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    kept: Vec<Kept>,
}

/// Writes the files into a folder; what is to be reported.
pub(super) fn written<R: Serialize>(
    folder: &Path,
    files: &[OutputFile],
    force: bool,
    json: bool,
    (report, text): (&R, impl FnOnce() -> String),
) -> Result<String, Failure> {
    let kept = folder::write(folder, files, force)?;
    let files: Vec<&str> = files.iter().map(|file| file.name.as_str()).collect();
    let shown = folder.display().to_string();
    if !json {
        let mut text = format!("{}\nWritten to {shown}: {}\n", text(), files.join(", "));
        for Kept { name, kept_as } in &kept {
            text.push_str(&format!(
                "{name} was changed since it was written: your version is kept as {kept_as}\n"
            ));
        }
        return Ok(text);
    }
    Ok(as_json(&Done {
        status: "ok",
        report,
        folder: Some(shown),
        files,
        kept,
    }))
}

/// What is to be reported where nothing is written.
pub(super) fn unwritten<R: Serialize>(report: &R) -> String {
    as_json(&Done {
        status: "ok",
        report,
        folder: None,
        files: Vec::new(),
        kept: Vec::new(),
    })
}

/// A JSON document as it is printed. It holds strings and finite numbers only: nothing that JSON
/// cannot hold.
pub(super) fn as_json(document: &impl Serialize) -> String {
    let mut text = serde_json::to_string_pretty(document).unwrap_or_default();
    text.push('\n');
    text
}
