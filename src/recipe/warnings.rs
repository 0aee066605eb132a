//! What is doubtful about a body, as warnings of its pattern.

use super::Recipe;
use crate::allowance::Allowances;
use crate::measurements::{Body, MeasurementSet, SetReport};
use crate::piece::{Pattern, PieceError, Warning};
use crate::units::{Unit, speak};

/// The pattern with more to be known about it.
pub(super) fn with_warnings(pattern: Pattern, more: Vec<Warning>) -> Result<Pattern, PieceError> {
    if more.is_empty() {
        return Ok(pattern);
    }
    let mut parts = pattern.into_parts();
    parts.warnings.extend(more);
    Pattern::new(parts)
}

/// The pattern with the lengths of its warnings in a unit.
pub(super) fn with_warnings_in(pattern: Pattern, unit: Unit) -> Result<Pattern, PieceError> {
    if unit == Unit::Mm || pattern.warnings().is_empty() {
        return Ok(pattern);
    }
    let mut parts = pattern.into_parts();
    for warning in &mut parts.warnings {
        warning.text = speak(&warning.text, unit);
    }
    Pattern::new(parts)
}

/// The pattern with what is doubtful about the body, and what was noticed about the recipe,
/// added to its warnings.
pub(super) fn with_doubts(
    pattern: Pattern,
    recipe: &Recipe,
    body: &Body,
    unit: Unit,
) -> Result<Pattern, PieceError> {
    let unused = recipe
        .allowances
        .as_ref()
        .filter(|allowances| **allowances != Allowances::usual())
        .map_or_else(Vec::new, |allowances| allowances.unused(&pattern));
    let mut parts = with_warnings_in(pattern, unit)?.into_parts();
    let mut found: Vec<Warning> = Vec::new();
    for doubt in body.doubts() {
        found.push(Warning::new(doubt.code.code(), doubt.text(unit)));
    }
    let set = MeasurementSet::new(MeasurementSet::UNNAMED, unit, body.clone());
    for text in SetReport::new(&set).beyond_survey_texts() {
        found.push(Warning::new("beyond_survey", text));
    }
    for place in unused {
        let text = format!("the allowance at {place} has no effect: no piece is cut there");
        found.push(Warning::new("allowance_unused", text));
    }
    found.extend(recipe.notes.iter().map(|note| {
        let text = speak(&note.text, unit);
        Warning::new(note.code.clone(), text)
    }));
    // A block of one's own may bring the same doubts along.
    found.retain(|warning| !parts.warnings.contains(warning));
    parts.warnings.extend(found);
    Pattern::new(parts)
}
