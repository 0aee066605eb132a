//! Placing parts on paper from a roll.

use crate::drawing::{ArrangeError, Placement, SHEET_GAP_MM, SheetPart, place_on_sheet};
use crate::geometry::counted;

use super::page_shape::PageShape;

/// Places for parts within the width of the roll; if a part is wider, within that of as many
/// strips side by side as it needs, or one more if that saves paper. No part is turned.
pub(super) fn place(
    parts: &[SheetPart],
    shape: &PageShape,
) -> Result<Vec<Placement>, ArrangeError> {
    let widest = parts
        .iter()
        .map(|part| part.drawing.bounds().width())
        .fold(0.0, f64::max);
    let fewest = counted(((widest - shape.overlap) / shape.pitch.width).ceil()).max(1);
    let most = if fewest == 1 { 1 } else { fewest + 1 };
    let mut best: Option<(f64, Vec<Placement>)> = None;
    for strips in fewest..=most {
        let placements = place_on_sheet(parts, shape.width_of(strips), SHEET_GAP_MM)?;
        let paper = strips as f64 * length(parts, &placements);
        if best.as_ref().is_none_or(|(least, _)| paper < *least) {
            best = Some((paper, placements));
        }
    }
    Ok(best.map(|(_, placements)| placements).unwrap_or_default())
}

/// The height in mm that parts take as they are placed.
fn length(parts: &[SheetPart], placements: &[Placement]) -> f64 {
    parts
        .iter()
        .zip(placements)
        .map(|(part, placement)| part.drawing.bounds().y1 + placement.by.y)
        .fold(0.0, f64::max)
}
