//! What is doubtful about a body, as warnings of its pattern.

use crate::allowance::Allowances;
use crate::measurements::{MeasurementSet, SetReport};
use crate::piece::{Pattern, PieceError, Warning};

/// The pattern with what is doubtful about the body, and what was noticed about the job,
/// added to its warnings.
pub(super) fn with_doubts(
    pattern: Pattern,
    set: &MeasurementSet,
    allowances: Option<&Allowances>,
    notes: &[Warning],
) -> Result<Pattern, PieceError> {
    let unused = allowances
        .filter(|allowances| **allowances != Allowances::usual())
        .map_or_else(Vec::new, |allowances| allowances.unused(&pattern));
    let mut parts = pattern.into_parts();
    let unit = set.unit();
    for doubt in set.body().doubts() {
        let warning = Warning::new(doubt.code.code(), doubt.text(unit));
        parts.warnings.push(warning);
    }
    for text in SetReport::new(set).beyond_survey_texts() {
        parts.warnings.push(Warning::new("beyond_survey", text));
    }
    for place in unused {
        let text = format!("the allowance at {place} has no effect: no piece is cut there");
        parts.warnings.push(Warning::new("allowance_unused", text));
    }
    parts.warnings.extend(notes.iter().cloned());
    Pattern::new(parts)
}
