//! A body that holds itself more upright or more bent than it was solved for.

use super::point::Point3;
use crate::geometry::elementary::{cos, sin};

/// A bend of the trunk above the waist: it leans back by an angle, about a line through its sides, so
/// that sides keep their length, the back is shortened and the front lengthened.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lean {
    /// Radians; positive leans back.
    pub(super) angle: f64,
    /// How far forward the line through the sides is.
    pub(super) pivot: f64,
    /// The height over which the trunk bends, from the waist up.
    pub(super) over: f64,
}

impl Lean {
    pub(super) fn bend(&self, place: Point3) -> Point3 {
        let t = place.y / self.over;
        if self.angle == 0.0 || t <= 0.0 {
            return place;
        }
        let turn = self.angle * t.min(1.0);
        let (sine, cosine) = (sin(turn), cos(turn));
        let radius = self.over / self.angle;
        let (beyond, out) = (place.y - self.over * t.min(1.0), place.z - self.pivot);
        Point3::new(
            place.x,
            radius * sine + beyond * cosine + out * sine,
            self.pivot - radius * (1.0 - cosine) - beyond * sine + out * cosine,
        )
    }
}
