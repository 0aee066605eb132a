//! What a file is made of: a style and its pieces in sizes.

use crate::allowance::CutLines;
use crate::piece::Pattern;

/// The style that a file holds.
///
/// ```
/// use blockwright::render::dxf::Style;
/// let style = Style { title: "Linen tunic", sample_size: "40", date: None };
/// assert_eq!(style.sample_size, "40");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Style<'a> {
    /// What the work is called.
    pub title: &'a str,
    /// The size from which others are judged; of a single pattern, for whom it is.
    pub sample_size: &'a str,
    /// Its date as it is to be written, if it should be said.
    pub date: Option<&'a str>,
}

/// A pattern in one size.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::render::dxf::SizedPattern;
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let sized = SizedPattern { size: "40", pattern: &pattern, cut: None };
/// assert_eq!(sized.pattern.pieces().len(), 2);
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizedPattern<'a> {
    /// What the size is called.
    pub size: &'a str,
    /// The pattern.
    pub pattern: &'a Pattern,
    /// Its cut lines, if it has allowances.
    pub cut: Option<&'a CutLines>,
}
