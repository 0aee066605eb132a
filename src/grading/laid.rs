//! One size of a piece where it lies in the nest.

use crate::geometry::perpendicular;
use crate::piece::Piece;
use kurbo::{BezPath, Point, Vec2};

/// One size of a piece, moved so that the aligned point is the origin.
pub(super) struct Laid<'a> {
    /// Which size of the range it is, counted from 0.
    pub number: usize,
    pub label: &'a str,
    pub piece: &'a Piece,
    pub by: Vec2,
}

/// A line from point to point.
pub(super) fn open(points: &[Point]) -> BezPath {
    let mut path = BezPath::new();
    for (index, p) in points.iter().enumerate() {
        if index == 0 {
            path.move_to(*p);
        } else {
            path.line_to(*p);
        }
    }
    path
}

/// A head ending at `tip`, pointing along `direction`.
pub(super) fn arrow_head(tip: Point, direction: Vec2) -> BezPath {
    let back = tip - direction * 3.5;
    let side = perpendicular(direction) * 1.1;
    let mut path = open(&[tip, back + side, back - side]);
    path.close_path();
    path
}
