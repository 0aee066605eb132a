//! A pattern on one sheet: every piece drawn and laid beside the others, grain upright.

use crate::explain::Explain;
use thiserror::Error;

use super::finished_girths::FinishedGirths;
use super::label::{SMALL, Statement};
use super::strokes::{closed, ring};
use super::{
    ArrangeError, Drawing, DrawingError, Face, SHEET_GAP_MM, SHEET_WIDTH_MM, SheetPart, lay,
    piece_marks, place_on_sheet,
};
use crate::allowance::CutLines;
use crate::piece::{Cut, Pattern, Piece};
use crate::units::{Unit, speak};

/// The longest line of a list that is written on a piece, in characters: as wide as the line
/// that a piece without allowances bears.
const LONGEST_LINE: usize = 42;

/// What is written on the pieces.
///
/// ```
/// use blockwright::drawing::PatternLabels;
/// let labels = PatternLabels { size: Some("40".into()), ..PatternLabels::new("Linen tunic") };
/// assert_eq!((labels.title.as_str(), labels.date), ("Linen tunic", None));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PatternLabels {
    /// The job's title.
    pub title: String,
    /// For whom the pattern is, if it should be said.
    pub wearer: Option<String>,
    /// Its size, if it has one.
    pub size: Option<String>,
    /// Its date, as it is to be written, if it should be said.
    pub date: Option<String>,
    /// The unit in which lengths are written.
    pub unit: Unit,
}

impl PatternLabels {
    /// The title alone.
    #[must_use]
    pub fn new(title: impl Into<String>) -> Self {
        Self {
            title: title.into(),
            ..Self::default()
        }
    }

    /// What stands on a piece, the most important first.
    fn on(&self, piece: &Piece, number: &str, cut: Option<&CutLines>) -> Vec<Statement> {
        let small = |text: String| Statement::new(text, Face::Regular, SMALL);
        let mut all = vec![
            Statement::new(piece.name().to_uppercase(), Face::Bold, 7.0),
            Statement::new(number, Face::Bold, 4.6),
            Statement::new(piece.cut().words(), Face::Regular, 4.6),
        ];
        let size = self.size.iter().map(|size| format!("size {size}"));
        all.extend(size.map(|text| Statement::new(text, Face::Bold, 4.6)));
        all.push(small(self.title.clone()));
        all.extend(self.wearer.iter().map(|name| small(format!("for {name}"))));
        all.extend(self.date.iter().cloned().map(small));
        match cut {
            Some(cut) => {
                all.extend(listed(&speak(&cut.allowances().words(), self.unit)).map(small))
            }
            None => all.push(small("stitching line shown: add seam allowance".to_owned())),
        }
        all.push(small("sew a toile first".to_owned()));
        all
    }
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
/// let labels = PatternLabels::new("Tube");
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
/// let labels = PatternLabels::new("Tube");
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
/// let labels = PatternLabels::new("Tube");
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
    let count = pattern.pieces().len();
    let draw = |(index, piece): (usize, &Piece)| {
        let number = format!("piece {} of {count}", index + 1);
        let statements = labels.on(piece, &number, cut);
        let heading = format!("{}, {number}; no room on it for:", piece.name());
        let girths = FinishedGirths::of(pattern, piece, labels.unit);
        let line = cut.and_then(|c| c.of(piece.name()));
        let layers = piece_marks::draw(piece, line, (&statements, &heading), &girths);
        Ok(SheetPart {
            name: piece.name().to_owned(),
            drawing: Drawing::new(layers.into_layers())?,
            turns: piece.cut() != Cut::Fold,
            outlines: vec![line.map_or_else(|| ring(piece), |cut| closed(cut.segments()))],
        })
    };
    pattern.pieces().iter().enumerate().map(draw).collect()
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

/// A list on lines of a piece, broken behind its commas.
pub(crate) fn listed(words: &str) -> impl Iterator<Item = String> {
    let mut lines: Vec<String> = Vec::new();
    for part in words.split_inclusive(", ") {
        match lines.last_mut() {
            Some(line) if line.len() + part.len() <= LONGEST_LINE => line.push_str(part),
            _ => lines.push(part.to_owned()),
        }
    }
    lines.into_iter().map(|line| line.trim_end().to_owned())
}

/// One line a piece: its number, what it is and how it is cut.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::drawing::contents;
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// assert_eq!(contents(&pattern)[0], "1 back: cut 1 on the fold");
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[must_use]
pub fn contents(pattern: &Pattern) -> Vec<String> {
    pattern
        .pieces()
        .iter()
        .enumerate()
        .map(|(index, piece)| format!("{} {}: {}", index + 1, piece.name(), piece.cut().words()))
        .collect()
}

impl Explain for SheetError {
    fn code(&self) -> String {
        match self {
            Self::Arrange(error) => error.code(),
            Self::Drawing(error) => error.code(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Arrange(error) => error.place(),
            Self::Drawing(error) => error.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Arrange(error) => error.cure(),
            Self::Drawing(error) => error.cure(),
        }
    }
}
