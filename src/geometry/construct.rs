//! Ruler and compass: points from lines, angles and distances.

use super::elementary::atan2;
use super::{GeometryError, tolerance};
use kurbo::{Point, Vec2};

/// The unit vector that points `angle` radians clockwise from the positive x axis.
///
/// ```
/// use blockwright::geometry::unit;
/// let down = unit(std::f64::consts::FRAC_PI_2);
/// assert!((down.y - 1.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn unit(angle: f64) -> Vec2 {
    Vec2::from_angle(angle)
}

/// The vector turned a quarter clockwise as seen on the page.
///
/// ```
/// use blockwright::geometry::{perpendicular, Vec2};
/// assert_eq!(perpendicular(Vec2::new(1.0, 0.0)), Vec2::new(0.0, 1.0));
/// ```
#[must_use]
pub fn perpendicular(v: Vec2) -> Vec2 {
    Vec2::new(-v.y, v.x)
}

/// The point `distance` millimetres from `from` in the direction of `toward`.
///
/// Returns `from` when the two coincide.
///
/// ```
/// use blockwright::geometry::{along, Point};
/// assert_eq!(along(Point::ORIGIN, Point::new(10.0, 0.0), 4.0), Point::new(4.0, 0.0));
/// ```
#[must_use]
pub fn along(from: Point, toward: Point, distance: f64) -> Point {
    let v = toward - from;
    let length = v.hypot();
    if length <= tolerance::POINT {
        from
    } else {
        from + v * (distance / length)
    }
}

/// The angle from `a` to `b`, in radians, clockwise positive, in (-π, π].
///
/// ```
/// use blockwright::geometry::{angle_between, Vec2};
/// let quarter = angle_between(Vec2::new(1.0, 0.0), Vec2::new(0.0, 2.0));
/// assert!((quarter - std::f64::consts::FRAC_PI_2).abs() < 1e-12);
/// ```
#[must_use]
pub fn angle_between(a: Vec2, b: Vec2) -> f64 {
    atan2(a.cross(b), a.dot(b))
}

/// Where the line through `p` along `u` meets the line through `q` along `v`.
///
/// ```
/// use blockwright::geometry::{intersect_lines, Point, Vec2};
/// let x = intersect_lines(Point::ORIGIN, Vec2::new(1.0, 0.0), Point::new(3.0, -2.0), Vec2::new(0.0, 1.0));
/// assert_eq!(x, Ok(Point::new(3.0, 0.0)));
/// ```
///
/// # Errors
/// [`GeometryError::Parallel`] when the lines have the same direction.
pub fn intersect_lines(p: Point, u: Vec2, q: Point, v: Vec2) -> Result<Point, GeometryError> {
    let cross = u.cross(v);
    if cross.abs() <= tolerance::ANGLE * u.hypot() * v.hypot() {
        return Err(GeometryError::Parallel);
    }
    Ok(p + u * ((q - p).cross(v) / cross))
}
