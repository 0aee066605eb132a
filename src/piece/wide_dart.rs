//! Darts that are too wide to press well.

use super::{Piece, Warning};

/// A dart wider at its mouth than this is better divided, in millimetres (value from memory; a
/// dart is divided when it makes too sharp a bulge, says a mid-century drafting course without
/// a number).
const WIDE: f64 = 45.0;

/// A warning for every dart of the pieces that is better divided.
pub(crate) fn wide_darts<'p>(pieces: impl IntoIterator<Item = &'p Piece>) -> Vec<Warning> {
    let of_piece = |piece: &'p Piece| {
        let wide = piece.darts().iter().filter(|d| d.intake() > WIDE);
        wide.map(|dart| {
            Warning::new(
                "wide_dart",
                format!(
                    "the {} dart of the {} takes in {:.0} mm: above {WIDE:.0} mm a dart presses badly; divide it (dart_division)",
                    dart.name,
                    piece.name(),
                    dart.intake()
                ),
            )
        })
    };
    pieces.into_iter().flat_map(of_piece).collect()
}
