//! Whether a point lies on the cloth of a piece.

use crate::geometry::{Curve, Point, crossings, hull, tolerance};
use crate::piece::Outline;
use kurbo::{BezPath, ParamCurveNearest, PathSeg, Rect, Shape};

/// The area within an outline.
pub(super) struct Inside {
    ring: Vec<PathSeg>,
    /// Around each segment.
    hulls: Vec<Rect>,
}

impl Inside {
    pub(super) fn of(outline: &Outline) -> Self {
        let ring = outline.segments();
        let hulls = ring.iter().map(hull).collect();
        Self { ring, hulls }
    }

    /// Whether a point lies within the outline, or within `margin` of it.
    pub(super) fn holds(&self, point: Point, margin: f64) -> bool {
        point.is_finite() && (self.surrounds(point) || self.near(point, margin))
    }

    /// Whether a point lies within the outline and farther than `margin` from it.
    pub(super) fn holds_deep(&self, point: Point, margin: f64) -> bool {
        point.is_finite() && self.surrounds(point) && !self.near(point, margin)
    }

    /// Where a straight line leaves the outline, its ends apart, if it does.
    pub(super) fn leaves(&self, from: Point, to: Point, margin: f64) -> Option<Point> {
        let line = Curve::line(from, to).ok()?;
        crossings(line.segments(), &self.ring)
            .into_iter()
            .map(|c| c.point)
            .find(|p| p.distance(from) > margin && p.distance(to) > margin)
    }

    /// Whether the outline winds round a point. Only segments at its level can pass it.
    fn surrounds(&self, point: Point) -> bool {
        let level = |around: &Rect| around.y0 <= point.y && point.y <= around.y1;
        let passing = self.ring.iter().zip(&self.hulls);
        let passing = passing.filter(|(_, around)| level(around));
        BezPath::from_path_segments(passing.map(|(segment, _)| *segment)).contains(point)
    }

    /// Whether the outline comes within `margin` of a point.
    fn near(&self, point: Point, margin: f64) -> bool {
        self.ring.iter().zip(&self.hulls).any(|(segment, around)| {
            around.inflate(margin, margin).contains(point)
                && segment.nearest(point, tolerance::POINT).distance_sq <= margin * margin
        })
    }
}
