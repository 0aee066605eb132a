//! Files in an answer.

use crate::job::OutputFile;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde::Serialize;

/// A file, its bytes in base64.
#[derive(Debug, Serialize)]
pub(super) struct MadeFile {
    name: String,
    #[serde(rename = "type")]
    kind: &'static str,
    data: String,
}

impl MadeFile {
    pub(super) fn new(name: impl Into<String>, bytes: &[u8]) -> Self {
        let name = name.into();
        Self {
            kind: kind(&name),
            data: STANDARD.encode(bytes),
            name,
        }
    }
}

impl From<&OutputFile> for MadeFile {
    fn from(file: &OutputFile) -> Self {
        Self::new(file.name.clone(), &file.bytes)
    }
}

/// The media type by the end of a name.
fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("pdf") => "application/pdf",
        Some("svg") => "image/svg+xml",
        Some("json") => "application/json",
        Some("jsonl") => "application/x-ndjson",
        Some("csv") => "text/csv",
        Some("dxf") => "image/vnd.dxf",
        Some("html") => "text/html",
        Some("yaml") => "application/yaml",
        _ => "application/octet-stream",
    }
}
