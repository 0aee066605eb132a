//! The cut lines of a whole pattern.

use super::{AllowanceError, Allowances, cut_line};
use crate::geometry::Curve;
use crate::piece::Pattern;

/// The cut line of every piece of a pattern, and the widths they were made with.
///
/// ```
/// use blockwright::allowance::{Allowances, CutLines};
/// use blockwright::piece::{Pattern, PatternParts};
/// let empty = Pattern::new(PatternParts { block: "skirt".into(), pieces: vec![], seams: vec![], girths: vec![], warnings: vec![] })?;
/// let lines = CutLines::new(&empty, &Allowances::usual())?;
/// assert!(lines.of("back").is_none());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct CutLines {
    allowances: Allowances,
    lines: Vec<(String, Curve)>,
}

impl CutLines {
    /// The cut lines of a pattern.
    ///
    /// # Errors
    /// When the allowance of a piece has no room.
    pub fn new(pattern: &Pattern, allowances: &Allowances) -> Result<Self, AllowanceError> {
        let line = |piece: &crate::piece::Piece| {
            Ok((piece.name().to_owned(), cut_line(piece, allowances)?))
        };
        Ok(Self {
            allowances: allowances.clone(),
            lines: pattern
                .pieces()
                .iter()
                .map(line)
                .collect::<Result<_, _>>()?,
        })
    }

    /// The cut line of the piece of that name: a closed chain, clockwise on the page.
    #[must_use]
    pub fn of(&self, piece: &str) -> Option<&Curve> {
        let mut lines = self.lines.iter();
        lines.find(|(name, _)| name == piece).map(|(_, line)| line)
    }

    /// The widths.
    #[must_use]
    pub fn allowances(&self) -> &Allowances {
        &self.allowances
    }
}
