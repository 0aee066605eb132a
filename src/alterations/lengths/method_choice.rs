//! Which way of a back-length reduction was chosen, beside those that were not.

use crate::alterations::{Hinge, MethodTable};

/// The ways of one back-length reduction of a chain, and the one that was made.
///
/// ```
/// use blockwright::alterations::{Hinge, MethodChoice, compare_methods};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let table = compare_methods(&pattern, 15.0)?;
/// let choice = MethodChoice { step: 1, chosen: Hinge::Shared, table };
/// assert!(choice.table.row(choice.chosen).is_some());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct MethodChoice {
    /// Which step of the chain, counted from one.
    pub step: usize,
    /// The way that was made.
    pub chosen: Hinge,
    /// What every way does to the pattern as it was before the step.
    pub table: MethodTable,
}
