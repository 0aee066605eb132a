//! Notches.

use kurbo::{BezPath, Point, Vec2};

use super::Pen;
use super::outline_lines::outward_to;
use super::pens::DART;
use super::piece_layers::{PieceLayers, mark};
use super::room::Room;
use super::strokes::stroke;
use crate::geometry::{Curve, perpendicular};
use crate::piece::{Notch, NotchKind, Piece};

/// Length of a notch mark inside the stitching line: 3 to 6 mm (NIMI, *Dress Making Trade Theory*).
const NOTCH: f64 = 6.0;
/// Distance between the two cuts of a double notch: 6 to 8 mm (value from memory).
const NOTCH_APART: f64 = 6.0;

/// Draws every notch: inward from the stitching line where that is cut along, else from the cut
/// line across the allowance to the stitching line.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece, cut: Option<&Curve>) {
    for notch in piece.notches() {
        for (at, inward) in places(piece, notch) {
            let path = match cut.and_then(|cut| outward_to(cut, at, -inward)) {
                Some(from) => stroke(&[from, at]),
                None => stroke(&[at, at + inward * NOTCH]),
            };
            mark(&mut out.marks, room, path, Pen::solid(DART));
        }
    }
}

/// The cuts of a notch, inward from the stitching line.
pub(crate) fn notch_cuts(piece: &Piece, notch: &Notch) -> Vec<BezPath> {
    places(piece, notch)
        .map(|(at, inward)| stroke(&[at, at + inward * NOTCH]))
        .collect()
}

/// Where the cuts of a notch are, and the direction into the piece.
fn places(piece: &Piece, notch: &Notch) -> impl Iterator<Item = (Point, Vec2)> {
    let offsets: &[f64] = match notch.kind {
        NotchKind::Single => &[0.0],
        NotchKind::Double => &[-NOTCH_APART / 2.0, NOTCH_APART / 2.0],
    };
    let edge = piece.outline().edge(&notch.edge);
    offsets.iter().filter_map(move |offset| {
        let (at, along) = edge?.curve().point_at(notch.at + offset).ok()?;
        Some((at, perpendicular(along)))
    })
}
