//! Rings of straight sides: their corners in order, the last one followed by the first.

use super::{Point, Span, with_next};

/// The sides of a ring, the last one back to its start.
pub(crate) fn sides(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    with_next(ring).map(|(a, b)| (*a, *b))
}

/// Whether a point lies inside a ring.
pub(crate) fn is_inside(ring: &[Point], p: Point) -> bool {
    let crossed = sides(ring)
        .filter(|(a, b)| (a.y > p.y) != (b.y > p.y))
        .filter(|(a, b)| p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x))
        .count();
    crossed % 2 == 1
}

/// The point of a side nearest to another, and how far along it is.
pub(crate) fn nearest_on((a, b): (Point, Point), p: Point) -> (Point, f64) {
    let along = b - a;
    let share = (p - a).dot(along) / along.hypot2().max(f64::MIN_POSITIVE);
    let share = Span::SHARES.nearest(share);
    (a.lerp(b, share), share)
}

/// How far a point lies from the nearest of some sides.
pub(crate) fn distance(sides: impl Iterator<Item = (Point, Point)>, p: Point) -> f64 {
    let far = |side| nearest_on(side, p).0.distance(p);
    sides.map(far).fold(f64::INFINITY, f64::min)
}

/// The area within a ring, more than nothing when it runs clockwise on the page.
pub(crate) fn signed_area(ring: &[Point]) -> f64 {
    let twice: f64 = sides(ring)
        .map(|(a, b)| a.to_vec2().cross(b.to_vec2()))
        .sum();
    0.5 * twice
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
    }
}
