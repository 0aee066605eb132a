//! Closed and open runs of straight sides.

use crate::geometry::{Point, Span, Vec2};

/// The sides of a ring, the last one back to its start.
pub(super) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    let next = ring.iter().copied().cycle().skip(1);
    ring.iter().copied().zip(next)
}

/// The sides of an open run.
pub(super) fn steps(run: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    run.iter().copied().zip(run.iter().copied().skip(1))
}

/// Whether a point lies inside a ring.
pub(super) fn is_inside(ring: &[Point], p: Point) -> bool {
    let crossed = sides(ring)
        .filter(|(a, b)| (a.y > p.y) != (b.y > p.y))
        .filter(|(a, b)| p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x))
        .count();
    crossed % 2 == 1
}

/// The point of a side nearest to another, and how far along it is.
pub(super) fn nearest_on((a, b): (Point, Point), p: Point) -> (Point, f64) {
    let along = b - a;
    let share = (p - a).dot(along) / along.hypot2().max(f64::MIN_POSITIVE);
    let share = Span::SHARES.nearest(share);
    (a.lerp(b, share), share)
}

/// How far a point lies from the nearest of some sides.
pub(super) fn distance(sides: impl Iterator<Item = (Point, Point)>, p: Point) -> f64 {
    let far = |side| nearest_on(side, p).0.distance_squared(p);
    sides.map(far).fold(f64::INFINITY, f64::min).sqrt()
}

/// The area within a ring, more than nothing when it runs clockwise on the page.
pub(super) fn signed_area(ring: &[Point]) -> f64 {
    let twice: f64 = sides(ring)
        .map(|(a, b)| a.to_vec2().cross(b.to_vec2()))
        .sum();
    0.5 * twice
}

/// How long a run is.
pub(super) fn length(run: &[Point]) -> f64 {
    steps(run).map(|(a, b)| a.distance(b)).sum()
}

/// The point so far along a run, and the direction there.
pub(super) fn point_along(run: &[Point], at: f64) -> Option<(Point, Vec2)> {
    let mut left = at;
    let mut last = None;
    for (a, b) in steps(run) {
        let long = a.distance(b);
        if long <= 0.0 {
            continue;
        }
        let direction = (b - a) / long;
        if left <= long {
            return Some((a + direction * left.max(0.0), direction));
        }
        left -= long;
        last = Some((b, direction));
    }
    last
}

/// Where a run crosses a level first.
pub(super) fn at_level(run: &[Point], y: f64) -> Option<Point> {
    steps(run)
        .find(|(a, b)| (a.y - y) * (b.y - y) <= 0.0 && a.y != b.y)
        .map(|(a, b)| a.lerp(b, (y - a.y) / (b.y - a.y)))
}

/// Where a run crosses an upright first.
pub(super) fn at_upright(run: &[Point], x: f64) -> Option<Point> {
    steps(run)
        .find(|(a, b)| (a.x - x) * (b.x - x) <= 0.0 && a.x != b.x)
        .map(|(a, b)| a.lerp(b, (x - a.x) / (b.x - a.x)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square() {
        let square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)].map(Point::from);
        assert_eq!(signed_area(&square), 100.0);
        assert!(is_inside(&square, Point::new(3.0, 4.0)));
        assert!(!is_inside(&square, Point::new(13.0, 4.0)));
        assert_eq!(distance(sides(&square), Point::new(3.0, 4.0)), 3.0);
        assert_eq!(length(&square), 30.0);
        let (at, way) = point_along(&square, 12.0).unwrap();
        assert_eq!((at, way), (Point::new(10.0, 2.0), Vec2::new(0.0, 1.0)));
        assert_eq!(at_level(&square, 5.0), Some(Point::new(10.0, 5.0)));
        assert_eq!(at_upright(&square, 4.0), Some(Point::new(4.0, 0.0)));
        assert_eq!(at_level(&square, 11.0), None);
    }
}
