//! From a place on the stitching line across the allowance.

use super::Allowances;
use crate::geometry::{Curve, Point, Vec2, crossings, tolerance};

/// Where the cut line lies outside a place on the stitching line, unless it is the same there.
///
/// ```
/// use blockwright::allowance::cut_line_beside;
/// use blockwright::geometry::{Curve, Point, Vec2};
/// let cut = Curve::line(Point::new(0.0, 15.0), Point::new(90.0, 15.0))?;
/// let found = cut_line_beside(&cut, Point::new(40.0, 0.0), Vec2::new(0.0, 1.0));
/// assert_eq!(found, Some(Point::new(40.0, 15.0)));
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[must_use]
pub fn cut_line_beside(cut: &Curve, at: Point, outward: Vec2) -> Option<Point> {
    let ray = Curve::line(at, at + outward * 3.0 * Allowances::MOST).ok()?;
    crossings(ray.segments(), cut.segments())
        .first()
        .map(|c| c.point)
        .filter(|p| p.distance(at) > tolerance::PRINT)
}
