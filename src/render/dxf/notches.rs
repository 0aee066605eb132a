//! Notches where the boundary is: on the cut line if there is one.

use crate::allowance::cut_line_beside;
use crate::drawing::NOTCH;
use crate::geometry::{Curve, Point, Vec2, perpendicular};
use crate::piece::Piece;

/// A notch on the boundary, on the page.
#[derive(Debug, Clone, Copy)]
pub(super) struct NotchAt {
    /// Where it is.
    pub(super) at: Point,
    /// The way into the piece.
    pub(super) inward: Vec2,
    /// How deep it is cut, in mm: no farther than to the stitching line.
    pub(super) depth: f64,
}

/// Every cut of every notch of a piece, and one at each leg of each dart that opens on an edge:
/// dart intakes are notched (NIMI, *Dress Making Trade Theory*).
pub(super) fn notches(piece: &Piece, cut: Option<&Curve>) -> Vec<NotchAt> {
    let mut found = Vec::new();
    let mut add = |at: Point, inward: Vec2| {
        let beside = cut.and_then(|cut| cut_line_beside(cut, at, -inward));
        found.push(NotchAt {
            at: beside.unwrap_or(at),
            inward,
            depth: beside.map_or(NOTCH, |from| from.distance(at).min(NOTCH)),
        });
    };
    for notch in piece.notches() {
        let Some(edge) = piece.outline().edge(&notch.edge) else {
            continue;
        };
        for place in notch.cuts() {
            // A second cut that would lie past the end of the edge is not made.
            if let Ok((at, along)) = edge.curve().point_at(place) {
                add(at, perpendicular(along));
            }
        }
    }
    for dart in piece.darts().iter().filter(|dart| dart.edge.is_some()) {
        for leg in dart.legs {
            add(leg, (dart.apex() - leg).normalize());
        }
    }
    found
}
