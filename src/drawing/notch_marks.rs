//! Notches.

use kurbo::{BezPath, Point, Vec2};

use super::pens::DART;
use super::piece_layers::{PieceLayers, mark_named};
use super::room::Room;
use super::strokes::stroke;
use super::{Pen, path_names};
use crate::allowance::cut_line_beside;
use crate::geometry::{Curve, perpendicular};
use crate::piece::{Notch, Piece};

/// Length of a notch mark inside the stitching line: 3 to 6 mm (NIMI, *Dress Making Trade Theory*).
pub(crate) const NOTCH: f64 = 6.0;

/// Draws every notch: inward from the stitching line where that is cut along, else from the cut
/// line across the allowance to the stitching line.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece, cut: Option<&Curve>) {
    for notch in piece.notches() {
        for (at, inward) in places(piece, notch) {
            let path = match cut.and_then(|cut| cut_line_beside(cut, at, -inward)) {
                Some(from) => stroke(&[from, at]),
                None => stroke(&[at, at + inward * NOTCH]),
            };
            let name = path_names::notch(piece.name(), &notch.name);
            mark_named(&mut out.marks, room, path, Pen::solid(DART), name);
        }
    }
}

/// The cuts of a notch as they are snipped, inward from the line that is cut along: no longer
/// than a notch is, and across an allowance not beyond the stitching line.
pub(crate) fn notch_cuts(piece: &Piece, notch: &Notch, cut: Option<&Curve>) -> Vec<BezPath> {
    let snip = |(at, inward): (Point, Vec2)| {
        let beside = cut.and_then(|cut| cut_line_beside(cut, at, -inward));
        let from = beside.unwrap_or(at);
        let long = beside.map_or(NOTCH, |from| from.distance(at).min(NOTCH));
        stroke(&[from, from + inward * long])
    };
    places(piece, notch).map(snip).collect()
}

/// Where the cuts of a notch are, and the direction into the piece.
fn places(piece: &Piece, notch: &Notch) -> impl Iterator<Item = (Point, Vec2)> {
    let edge = piece.outline().edge(&notch.edge);
    notch.cuts().into_iter().filter_map(move |place| {
        let (at, along) = edge?.curve().point_at(place).ok()?;
        Some((at, perpendicular(along)))
    })
}
