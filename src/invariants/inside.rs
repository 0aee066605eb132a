//! Whether a point lies on the cloth of a piece.

use crate::geometry::{Curve, Point, crossings};
use crate::piece::Outline;
use kurbo::{BezPath, PathSeg, Shape};

/// The area within an outline.
pub(super) struct Inside {
    path: BezPath,
    ring: Vec<PathSeg>,
}

impl Inside {
    pub(super) fn of(outline: &Outline) -> Self {
        let ring = outline.segments();
        Self {
            path: BezPath::from_path_segments(ring.iter().copied()),
            ring,
        }
    }

    /// Whether a point lies within the outline, or within `margin` of it.
    pub(super) fn holds(&self, point: Point, margin: f64) -> bool {
        point.is_finite() && (self.path.contains(point) || self.distance(point) <= margin)
    }

    /// Whether a point lies within the outline and farther than `margin` from it.
    pub(super) fn holds_deep(&self, point: Point, margin: f64) -> bool {
        point.is_finite() && self.path.contains(point) && self.distance(point) > margin
    }

    /// Where a straight line leaves the outline, its ends apart, if it does.
    pub(super) fn leaves(&self, from: Point, to: Point, margin: f64) -> Option<Point> {
        let line = Curve::line(from, to).ok()?;
        crossings(line.segments(), &self.ring)
            .into_iter()
            .map(|c| c.point)
            .find(|p| p.distance(from) > margin && p.distance(to) > margin)
    }

    fn distance(&self, point: Point) -> f64 {
        Curve::new(self.ring.clone()).map_or(f64::INFINITY, |ring| ring.nearest(point).0)
    }
}
