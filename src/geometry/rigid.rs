//! Motions that keep every length: turns, shifts, mirrors, laying one edge on another.

use super::{angle_between, tolerance};
use kurbo::{Affine, Point, Vec2};

/// A motion that keeps every length and angle; it may mirror.
///
/// # Guarantees
/// Built only from turns, shifts and mirrors, so it is an isometry.
///
/// ```
/// use blockwright::geometry::{Point, Rigid};
/// let quarter = Rigid::turn_about(Point::ORIGIN, std::f64::consts::FRAC_PI_2);
/// assert!(quarter.apply(Point::new(1.0, 0.0)).distance(Point::new(0.0, 1.0)) < 1e-12);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rigid(Affine);

impl Rigid {
    /// The motion that moves nothing.
    pub const IDENTITY: Self = Self(Affine::IDENTITY);

    /// A turn about `pivot` by `angle` radians, clockwise as seen on the page.
    #[must_use]
    pub fn turn_about(pivot: Point, angle: f64) -> Self {
        Self(Affine::rotate_about(angle, pivot))
    }

    /// A shift by `by` millimetres.
    #[must_use]
    pub fn shift(by: Vec2) -> Self {
        Self(Affine::translate(by))
    }

    /// A mirror in the line through `on` along `direction`; moves nothing if that has no length.
    #[must_use]
    pub fn mirror(on: Point, direction: Vec2) -> Self {
        if direction.hypot() <= tolerance::ANGLE {
            return Self::IDENTITY;
        }
        Self(Affine::reflect(on, direction))
    }

    /// The motion, without mirroring, that lays the ray from `from` along `from_direction`
    /// on the ray from `to` along `to_direction`.
    #[must_use]
    pub fn lay(from: Point, from_direction: Vec2, to: Point, to_direction: Vec2) -> Self {
        let turn = angle_between(from_direction, to_direction);
        Self(Affine::translate(to - from) * Affine::rotate_about(turn, from))
    }

    /// First `self`, then `next`.
    #[must_use]
    pub fn then(self, next: Self) -> Self {
        Self(next.0 * self.0)
    }

    /// Where the motion takes a point.
    #[must_use]
    pub fn apply(&self, point: Point) -> Point {
        self.0 * point
    }

    /// Where the motion takes a direction.
    #[must_use]
    pub fn apply_direction(&self, direction: Vec2) -> Vec2 {
        self.apply(direction.to_point()) - self.apply(Point::ORIGIN)
    }

    /// The motion as a matrix.
    #[must_use]
    pub fn affine(&self) -> Affine {
        self.0
    }
}

/// The point mirrored in the line through `on` along `direction`.
///
/// ```
/// use blockwright::geometry::{mirror_about, Point, Vec2};
/// let p = mirror_about(Point::new(3.0, 5.0), Point::ORIGIN, Vec2::new(0.0, 1.0));
/// assert!(p.distance(Point::new(-3.0, 5.0)) < 1e-12);
/// ```
#[must_use]
pub fn mirror_about(point: Point, on: Point, direction: Vec2) -> Point {
    Rigid::mirror(on, direction).apply(point)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn laying_a_ray_on_a_ray_keeps_lengths() {
        let (p, d) = (Point::new(3.0, 4.0), Vec2::new(1.0, 2.0).normalize());
        let (q, e) = (Point::new(-7.0, 1.0), Vec2::new(-2.0, 0.3).normalize());
        let lay = Rigid::lay(p, d, q, e);
        assert!(lay.apply(p).distance(q) < 1e-12);
        assert!(lay.apply(p + d * 10.0).distance(q + e * 10.0) < 1e-12);
    }
}
