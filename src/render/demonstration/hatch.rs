//! Hatching: parallel lines within an area, which a black printer prints too.

use crate::drawing::{DrawnPath, Pen};
use crate::geometry::{Point, Vec2, counted, with_next};
use kurbo::BezPath;

/// Between the lines of a hatching, in millimetres on paper.
const APART: f64 = 1.1;

/// An area hatched once, for paper put in, or crossed, for paper doubled or cut away.
pub(super) fn over(ring: &[Point], crossed: bool) -> DrawnPath {
    let ways = [Vec2::new(1.0, 1.0), Vec2::new(1.0, -1.0)];
    let mut path = BezPath::new();
    for way in ways.into_iter().take(1 + usize::from(crossed)) {
        for [a, b] in lines(ring, way.normalize(), APART) {
            path.move_to(a);
            path.line_to(b);
        }
    }
    DrawnPath::stroked(path, Pen::solid(0.18))
}

/// The lines across a ring, `apart` from each other, along a direction. They lie on one lattice
/// wherever the ring is, so that areas side by side go on into each other.
fn lines(ring: &[Point], direction: Vec2, apart: f64) -> Vec<[Point; 2]> {
    let across = Vec2::new(-direction.y, direction.x);
    let level = |p: Point| p.to_vec2().dot(across);
    let along = |p: Point| p.to_vec2().dot(direction);
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for p in ring {
        low = low.min(level(*p));
        high = high.max(level(*p));
    }
    if !(low.is_finite() && high.is_finite() && high > low) {
        return Vec::new();
    }
    let first = (low / apart).ceil();
    let count = counted(((high / apart).floor() - first + 1.0).max(0.0));
    let mut found = Vec::new();
    for k in 0..count {
        // Off the lattice by a hair, so that no corner lies on a line.
        let at = (first + k as f64) * apart + apart * 1e-4;
        let mut crossings: Vec<f64> = with_next(ring)
            .filter(|(a, b)| (level(**a) > at) != (level(**b) > at))
            .map(|(a, b)| along(a.lerp(*b, (at - level(*a)) / (level(*b) - level(*a)))))
            .collect();
        crossings.sort_by(f64::total_cmp);
        let (pairs, _) = crossings.as_chunks::<2>();
        let place = |t: f64| (direction * t + across * at).to_point();
        found.extend(pairs.iter().map(|[from, to]| [place(*from), place(*to)]));
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_is_filled_with_lines() {
        let square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)].map(Point::from);
        let found = lines(&square, Vec2::new(1.0, 0.0), 1.0);
        assert_eq!(found.len(), 10);
        assert!(found.iter().all(|[a, b]| (b.x - a.x - 10.0).abs() < 1e-9));
    }
}
