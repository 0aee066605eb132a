//! Paths that several marks are made of.

use kurbo::{BezPath, ParamCurve, PathSeg, Point, Vec2};

use crate::geometry::perpendicular;
use crate::piece::Piece;

/// A line from point to point.
pub(crate) fn stroke(points: &[Point]) -> BezPath {
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

/// A head to be filled, ending at `tip`, pointing along the unit vector `direction`.
pub(crate) fn arrow_head(tip: Point, direction: Vec2, length: f64) -> BezPath {
    let back = tip - direction * length;
    let side = perpendicular(direction) * (length / 3.0);
    let mut path = stroke(&[tip, back + side, back - side]);
    path.close_path();
    path
}

/// The closed outline of a piece as one path.
pub(crate) fn ring(piece: &Piece) -> BezPath {
    closed(&piece.outline().segments())
}

/// The segments of a closed ring as one path.
pub(crate) fn closed(segments: &[PathSeg]) -> BezPath {
    let mut path = chain(segments);
    path.close_path();
    path
}

/// The segments as one path. Neighbouring edges agree to a rounding only, so the path is made
/// by hand: a gap of a nanometre must not start a new one.
pub(super) fn chain(segments: &[PathSeg]) -> BezPath {
    let mut path = BezPath::new();
    for (index, segment) in segments.iter().enumerate() {
        if index == 0 {
            path.move_to(segment.start());
        }
        path.push(segment.as_path_el());
    }
    path
}
