//! Darts that are too wide to press well.

use super::{Dart, EdgeName, Pattern, Piece, Warning};

/// A dart wider at its mouth than this is better divided, in millimetres (value from memory; a
/// dart is divided when it makes too sharp a bulge, says a mid-century drafting course without
/// a number).
const WIDE: f64 = 45.0;

/// A warning for every dart of the pieces that is better divided.
pub(crate) fn wide_darts<'p>(pieces: impl IntoIterator<Item = &'p Piece>) -> Vec<Warning> {
    let of_piece = |piece: &'p Piece| {
        let darts = piece.darts().iter().filter(|d| d.intake() > WIDE);
        darts.map(move |dart| wide(piece, dart))
    };
    pieces.into_iter().flat_map(of_piece).collect()
}

fn wide(piece: &Piece, dart: &Dart) -> Warning {
    Warning::new(
        "wide_dart",
        format!(
            "the {} dart of the {} takes in {:.0} mm: above {WIDE:.0} mm a dart presses badly; divide it (dart_division)",
            dart.name,
            piece.name(),
            dart.intake()
        ),
    )
}

/// A dart over the blade is at most so wide at the shoulder, in millimetres: a mouth of 16 to 20 for a
/// length of 60 to 80 (a drafting text on the back shoulder dart); what is more goes to the neckline.
const WIDE_AT_SHOULDER: f64 = 20.0;

/// A dart that got wider by less, or is wider by less, is not worth a word, in millimetres.
const WIDER: f64 = 0.5;

/// A warning for every dart that a step made wider than presses well.
pub(crate) fn newly_wide(before: &Pattern, after: &Pattern) -> Vec<Warning> {
    let mut warnings = Vec::new();
    for piece in after.pieces() {
        let old = before
            .pieces()
            .iter()
            .filter(|p| p.base_name() == piece.base_name());
        let old: Vec<&Dart> = old.flat_map(Piece::darts).collect();
        let grew = |dart: &&Dart| {
            let same = |d: &&&Dart| d.name == dart.name && d.edge == dart.edge;
            let was = old.iter().filter(same).map(|d| d.intake());
            dart.intake() > was.fold(0.0, f64::max) + WIDER
        };
        for dart in piece.darts().iter().filter(grew) {
            let over_blade = piece.bust_point().is_none() && dart.edge == Some(EdgeName::SHOULDER);
            if dart.intake() > WIDE {
                warnings.push(wide(piece, dart));
            } else if over_blade && dart.intake() > WIDE_AT_SHOULDER + WIDER {
                warnings.push(Warning::new(
                    "wide_shoulder_dart",
                    format!(
                        "the {} dart of the {} takes in {:.0} mm: on a back shoulder up to {WIDE_AT_SHOULDER:.0} mm lie flat; give the rest to the neckline (dart_division, share: {:.2})",
                        dart.name,
                        piece.name(),
                        dart.intake(),
                        1.0 - WIDE_AT_SHOULDER / dart.intake()
                    ),
                ));
            }
        }
    }
    warnings
}
