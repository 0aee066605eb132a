//! A pattern on one sheet: every piece drawn and laid beside the others, grain upright.

use thiserror::Error;

use super::{
    ArrangeError, Drawing, DrawingError, SHEET_GAP_MM, SHEET_WIDTH_MM, SheetPart, lay, piece_marks,
    place_on_sheet,
};
use crate::allowance::CutLines;
use crate::piece::{Cut, Pattern, Piece};

/// The longest line of a list that is written on a piece, in characters: as wide as the line
/// that a piece without allowances bears.
const LONGEST_LINE: usize = 42;

/// What is written on the pieces.
///
/// ```
/// use blockwright::drawing::PatternLabels;
/// let labels = PatternLabels { title: "Linen tunic".into(), wearer: Some("Ines".into()) };
/// assert_eq!(labels.title, "Linen tunic");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PatternLabels {
    /// The job's title.
    pub title: String,
    /// For whom the pattern is, if it should be said.
    pub wearer: Option<String>,
}

/// Why a pattern could not be laid out.
///
/// ```
/// use blockwright::drawing::{ArrangeError, SheetError};
/// let e = SheetError::from(ArrangeError::TooWide { name: "skirt back".into(), width: 990.0, sheet: 884.0 });
/// assert!(e.to_string().contains("skirt back"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum SheetError {
    /// A piece does not fit on the sheet.
    #[error(transparent)]
    Arrange(#[from] ArrangeError),
    /// Something cannot be drawn.
    #[error(transparent)]
    Drawing(#[from] DrawingError),
}

/// Draws every piece with its marks and words and lays them on a sheet.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::drawing::{PatternLabels, pattern_sheet};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let labels = PatternLabels { title: "Tube".into(), wearer: None };
/// assert!(pattern_sheet(&pattern, &labels)?.bounds().height() > 590.0);
/// # Ok(()) }
/// ```
///
/// # Errors
/// When a piece is wider than the sheet or a coordinate cannot be drawn.
pub fn pattern_sheet(pattern: &Pattern, labels: &PatternLabels) -> Result<Drawing, SheetError> {
    sheet_of(pattern, labels, None)
}

/// The same sheet with seam allowances: cut lines boldest, stitching lines thin and dashed
/// inside them, notches across the allowance.
///
/// ```
/// use blockwright::allowance::{Allowances, CutLines};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::drawing::{PatternLabels, pattern_sheet_to_cut};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let labels = PatternLabels { title: "Tube".into(), wearer: None };
/// let cut = CutLines::new(&pattern, &Allowances::usual())?;
/// let sheet = pattern_sheet_to_cut(&pattern, &labels, &cut)?;
/// assert!(sheet.layers().iter().any(|layer| layer.name == "cutting lines"));
/// # Ok(()) }
/// ```
///
/// # Errors
/// When a piece is wider than the sheet or a coordinate cannot be drawn.
pub fn pattern_sheet_to_cut(
    pattern: &Pattern,
    labels: &PatternLabels,
    cut: &CutLines,
) -> Result<Drawing, SheetError> {
    sheet_of(pattern, labels, Some(cut))
}

/// Every piece of a pattern drawn by itself, to be laid out: the pieces of [`pattern_sheet`], or
/// of [`pattern_sheet_to_cut`] with cut lines. A piece on the fold is not turned.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::drawing::{PatternLabels, pattern_parts};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let labels = PatternLabels { title: "Tube".into(), wearer: None };
/// let parts = pattern_parts(&pattern, &labels, None)?;
/// assert_eq!((parts[0].name.as_str(), parts[0].turns), ("back", false));
/// # Ok(()) }
/// ```
///
/// # Errors
/// When a coordinate cannot be drawn.
pub fn pattern_parts(
    pattern: &Pattern,
    labels: &PatternLabels,
    cut: Option<&CutLines>,
) -> Result<Vec<SheetPart>, SheetError> {
    let mut lines = vec![labels.title.clone()];
    lines.extend(labels.wearer.iter().map(|name| format!("for {name}")));
    match cut {
        Some(cut) => lines.extend(wrapped(&cut.allowances().words())),
        None => lines.push("stitching line shown: add seam allowance".to_owned()),
    }
    lines.push("sew a toile first".to_owned());
    let draw = |piece: &Piece| {
        let layers = piece_marks::draw(piece, cut.and_then(|c| c.of(piece.name())), &lines);
        Ok(SheetPart {
            name: piece.name().to_owned(),
            drawing: Drawing::new(layers.into_layers())?,
            turns: piece.cut() != Cut::Fold,
        })
    };
    pattern.pieces().iter().map(draw).collect()
}

fn sheet_of(
    pattern: &Pattern,
    labels: &PatternLabels,
    cut: Option<&CutLines>,
) -> Result<Drawing, SheetError> {
    let parts = pattern_parts(pattern, labels, cut)?;
    let placements = place_on_sheet(&parts, SHEET_WIDTH_MM, SHEET_GAP_MM)?;
    Ok(lay(&parts, &placements)?)
}

/// A list on lines short enough for a piece, broken behind its commas.
fn wrapped(words: &str) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for part in words.split_inclusive(", ") {
        match lines.last_mut() {
            Some(line) if line.len() + part.len() <= LONGEST_LINE => line.push_str(part),
            _ => lines.push(part.to_owned()),
        }
    }
    lines
        .iter()
        .map(|line| line.trim_end().to_owned())
        .collect()
}

/// One line a piece: what it is and how it is cut.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::drawing::contents;
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// assert_eq!(contents(&pattern)[0], "back: cut 1 on the fold");
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn contents(pattern: &Pattern) -> Vec<String> {
    pattern
        .pieces()
        .iter()
        .map(|piece| format!("{}: {}", piece.name(), piece.cut().words()))
        .collect()
}
