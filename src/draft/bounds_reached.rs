//! Which bounds a figure reaches when a block is drafted for it.

use super::bounds::Bound;
use super::front_door::shaping_of;
use super::upper_body::upper_body;
use super::{Block, DraftError, DraftOptions, Figure};
use std::collections::BTreeSet;

/// The bounds that the upper body of a block reaches for a figure: for each of them the draft
/// is a compromise. A skirt has none.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, Figure, bounds_reached};
/// let reached = bounds_reached(&Figure::cylinder(900.0), &DraftOptions::of(Block::Skirt))?;
/// assert!(reached.is_empty());
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
///
/// # Errors
/// When the block cannot be drafted for this figure.
pub fn bounds_reached(
    figure: &Figure,
    options: &DraftOptions,
) -> Result<BTreeSet<Bound>, DraftError> {
    if options.block == Block::Skirt {
        return Ok(BTreeSet::new());
    }
    let frame = upper_body(figure, &options.ease, &shaping_of(figure, options))?;
    Ok(frame.bounds.reached())
}
