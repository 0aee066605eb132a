//! Whether a point lies on the cloth of a piece.

use crate::geometry::{Curve, Point, Region, crossings};
use crate::piece::Outline;

/// The area within an outline.
pub(super) struct Inside(Region);

impl Inside {
    pub(super) fn of(outline: &Outline) -> Self {
        Self(Region::within(outline.segments()))
    }

    /// Whether a point lies within the outline, or within `margin` of it.
    pub(super) fn holds(&self, point: Point, margin: f64) -> bool {
        point.is_finite() && (self.0.surrounds(point) || self.0.passes_near(point, margin))
    }

    /// Whether a point lies within the outline and farther than `margin` from it.
    pub(super) fn holds_deep(&self, point: Point, margin: f64) -> bool {
        point.is_finite() && self.0.surrounds(point) && !self.0.passes_near(point, margin)
    }

    /// Where a straight line leaves the outline, its ends apart, if it does.
    pub(super) fn leaves(&self, from: Point, to: Point, margin: f64) -> Option<Point> {
        let line = Curve::line(from, to).ok()?;
        crossings(line.segments(), self.0.ring())
            .into_iter()
            .map(|c| c.point)
            .find(|p| p.distance(from) > margin && p.distance(to) > margin)
    }
}
