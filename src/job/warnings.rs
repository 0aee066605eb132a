//! What is doubtful about a body, as warnings of its pattern.

use super::Job;
use crate::measurements::SetReport;
use crate::piece::{Pattern, PieceError, Warning};

/// The pattern with what is doubtful about the body, and what was noticed about the job,
/// added to its warnings.
pub(super) fn with_doubts(pattern: Pattern, job: &Job) -> Result<Pattern, PieceError> {
    let mut parts = pattern.into_parts();
    let unit = job.set.unit();
    for doubt in job.set.body().doubts() {
        let warning = Warning::new(doubt.code.code(), doubt.text(unit));
        parts.warnings.push(warning);
    }
    for text in SetReport::new(&job.set).beyond_survey_texts() {
        parts.warnings.push(Warning::new("beyond_survey", text));
    }
    parts.warnings.extend(job.notes.iter().cloned());
    Pattern::new(parts)
}
