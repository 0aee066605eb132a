//! A level line across an outline.

use super::Outline;
use crate::geometry::{Curve, GeometryError, Point, crossings};

/// The level line through a point inside an outline, from the outline on its left on the page
/// to that on its right.
pub(crate) fn level_through(outline: &Outline, point: Point) -> Result<Curve, GeometryError> {
    let bounds = outline.bounds();
    let at = |x: f64| Point::new(x, point.y);
    let across = Curve::line(at(bounds.x0 - 10.0), at(bounds.x1 + 10.0))?;
    let met = crossings(across.segments(), &outline.segments());
    let places = || met.iter().map(|crossing| crossing.point.x);
    let left = places().filter(|x| *x < point.x).reduce(f64::max);
    let right = places().filter(|x| *x > point.x).reduce(f64::min);
    let (Some(left), Some(right)) = (left, right) else {
        return Err(GeometryError::Parallel);
    };
    Curve::line(at(left), at(right))
}
