//! Writing the document of a pattern.

use super::to_shape::to_shape;
use crate::allowance::CutLines;
use crate::alterations::Account;
use crate::measurements::{Body, BodyRecord};
use crate::piece::Pattern;
use serde::Serialize;

/// The pattern as pretty-printed JSON, ending in a line feed, with the accounts of the
/// alterations that made it.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let text = json::render(&pattern, &body, "Skirt", &[]);
/// assert!(text.contains("\"format\": \"blockwright-pattern\""));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn render(pattern: &Pattern, body: &Body, title: &str, accounts: &[Account]) -> String {
    text(&document(pattern, body, title, accounts))
}

/// The same with the cut line of every piece, a closed path under `cut_line`.
///
/// ```
/// use blockwright::allowance::{Allowances, CutLines};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let cut = CutLines::new(&pattern, &Allowances::usual())?;
/// let text = json::render_to_cut(&pattern, &body, "Skirt", &[], &cut);
/// assert!(text.contains("\"cut_line\": \"M"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn render_to_cut(
    pattern: &Pattern,
    body: &Body,
    title: &str,
    accounts: &[Account],
    cut: &CutLines,
) -> String {
    text(&document_to_cut(pattern, body, title, accounts, cut))
}

/// A document as pretty-printed JSON, ending in a line feed.
pub(super) fn text(document: &impl Serialize) -> String {
    // Strings, finite numbers and string keys only: nothing that JSON cannot hold.
    let mut text = serde_json::to_string_pretty(document).unwrap_or_default();
    text.push('\n');
    text
}

/// The same as a value, to be written as part of a larger document.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let value = serde_json::to_value(json::document(&pattern, &body, "Skirt", &[]))?;
/// assert_eq!(value["block"], "skirt");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn document(
    pattern: &Pattern,
    body: &Body,
    title: &str,
    accounts: &[Account],
) -> impl Serialize + use<> {
    to_shape(pattern, BodyRecord::from(body), title, accounts, None)
}

/// The same value with the cut line of every piece.
///
/// ```
/// use blockwright::allowance::{Allowances, CutLines};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::render::json;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Skirt))?;
/// let cut = CutLines::new(&pattern, &Allowances::usual())?;
/// let value = serde_json::to_value(json::document_to_cut(&pattern, &body, "Skirt", &[], &cut))?;
/// assert!(value["pieces"][0]["cut_line"].is_string());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn document_to_cut(
    pattern: &Pattern,
    body: &Body,
    title: &str,
    accounts: &[Account],
    cut: &CutLines,
) -> impl Serialize + use<> {
    to_shape(pattern, BodyRecord::from(body), title, accounts, Some(cut))
}
