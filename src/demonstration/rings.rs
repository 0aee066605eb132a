//! Closed and open runs of straight sides.

pub(super) use crate::geometry::ring::{distance, is_inside, nearest_on, sides, signed_area};
use crate::geometry::{Point, Vec2};

/// The sides of an open run.
pub(super) fn steps(run: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    run.iter().copied().zip(run.iter().copied().skip(1))
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
        assert_eq!(length(&square), 30.0);
        let (at, way) = point_along(&square, 12.0).unwrap();
        assert_eq!((at, way), (Point::new(10.0, 2.0), Vec2::new(0.0, 1.0)));
        assert_eq!(at_level(&square, 5.0), Some(Point::new(10.0, 5.0)));
        assert_eq!(at_upright(&square, 4.0), Some(Point::new(4.0, 0.0)));
        assert_eq!(at_level(&square, 11.0), None);
    }
}
