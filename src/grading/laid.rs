//! One size of a piece where it lies in the nest.

use crate::allowance::CutLines;
use crate::drawing::{closed, ring};
use crate::geometry::{Curve, Point, perpendicular};
use crate::piece::{Edge, Piece};
use kurbo::{Affine, BezPath, ParamCurve, Rect, Vec2};

/// One size of a piece, moved so that the aligned point is the origin.
pub(super) struct Laid<'a> {
    /// Which size of the range it is, counted from 0.
    pub number: usize,
    pub label: &'a str,
    pub piece: &'a Piece,
    /// The cut lines of the size, if the range has allowances.
    pub cut: Option<&'a CutLines>,
    pub by: Vec2,
}

impl Laid<'_> {
    /// The piece's cut line, not moved.
    pub fn cut_line(&self) -> Option<&Curve> {
        self.cut?.of(self.piece.name())
    }

    /// The closed line along which this size is cut, where it lies: the stitching line if there
    /// is no other.
    pub fn cut_ring(&self) -> BezPath {
        let mut path = self
            .cut_line()
            .map_or_else(|| ring(self.piece), |cut| closed(cut.segments()));
        path.apply_affine(Affine::translate(self.by));
        path
    }

    /// What that line takes up.
    pub fn cut_bounds(&self) -> Rect {
        let stitched = || self.piece.outline().bounds();
        self.cut_line().map_or_else(stitched, Curve::bounds) + self.by
    }

    /// The corner of that line where two edges meet, the second after the first.
    pub fn cut_corner(&self, first: &Edge, second: &Edge) -> Point {
        let stitched = first.curve().end();
        let Some((cut, widths)) = self.cut_line().zip(self.cut.map(CutLines::allowances)) else {
            return stitched + self.by;
        };
        // Of the places nearby where the line turns, that farthest beyond both edges.
        let reach = 2.0 * (widths.of(first) + widths.of(second));
        let side = -self.piece.outline().area().signum();
        let along = first.curve().end_direction() + second.curve().start_direction();
        let outward = perpendicular(along) * side;
        let beyond = |p: &Point| (*p - stitched).dot(outward);
        cut.segments()
            .iter()
            .map(ParamCurve::start)
            .filter(|p| p.distance(stitched) <= reach)
            .max_by(|a, b| beyond(a).total_cmp(&beyond(b)))
            .unwrap_or(stitched)
            + self.by
    }
}
