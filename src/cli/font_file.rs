//! The font that a job names for scripts that the built-in one lacks.

use std::fs::File;
use std::io::Read as _;
use std::path::Path;

use blockwright::job::JobFile;
use blockwright::render::pdf::FontFile;

use super::problem::{Failure, Problem};
use super::source_file::SourceFile;

/// The job with the bytes of the font that it names.
pub(super) fn with_font(job: JobFile, path: &Path, file: &SourceFile) -> Result<JobFile, Failure> {
    let Some(named) = job.font_path() else {
        return Ok(job);
    };
    let font = path.parent().unwrap_or_else(|| Path::new("")).join(named);
    let wrong = |text: String| {
        let problem = Problem::new("font_file", text);
        Failure::wrong(problem.in_file(file.shown()))
    };
    let mut bytes = Vec::new();
    let most = u64::try_from(FontFile::MOST_BYTES).unwrap_or(u64::MAX);
    let read = File::open(&font).and_then(|open| open.take(most + 1).read_to_end(&mut bytes));
    read.map_err(|error| {
        wrong(format!(
            "`print.font` names {}, which cannot be read: {error}; paths are meant from the folder of the job",
            font.display()
        ))
    })?;
    job.with_font(bytes)
        .map_err(|error| wrong(format!("`print.font` names {}: {error}", font.display())))
}
