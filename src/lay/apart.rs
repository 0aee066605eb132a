//! The proof that laid pieces keep apart: by the distances of their outlines, without anything that the
//! search knows.

use super::Laid;
use crate::geometry::Point;
use crate::geometry::ring::{is_inside, nearest_on, sides};
use kurbo::Rect;

/// What rounding may take of a gap, in millimetres.
const ROUNDING: f64 = 0.02;

/// Whether pieces lie on cloth of a length and width, keep the gap from its ends and selvedges (on the
/// fold, from the selvedge alone), and keep it from one another.
pub(super) fn keep_apart(pieces: &[Laid], [length, width]: [f64; 2], gap: f64) -> bool {
    let least = gap - ROUNDING;
    pieces.iter().enumerate().all(|(k, one)| {
        let bounds = one.shape.bounds();
        let lowest = if one.on_fold { -ROUNDING } else { least };
        bounds.x0 >= least
            && bounds.x1 <= length - least
            && bounds.y0 >= lowest
            && bounds.y1 <= width - least
            && pieces
                .iter()
                .take(k)
                .all(|other| are_apart(one, other, least))
    })
}

fn are_apart(one: &Laid, other: &Laid, least: f64) -> bool {
    let near = |a: Rect, b: Rect| {
        let (x, y) = (
            (a.x0 - b.x1).max(b.x0 - a.x1),
            (a.y0 - b.y1).max(b.y0 - a.y1),
        );
        x < least.max(0.0) && y < least.max(0.0)
    };
    let (a, b) = (one.shape.bounds(), other.shape.bounds());
    if !near(a, b) {
        return true;
    }
    let (mine, theirs) = (one.shape.points(), other.shape.points());
    let starts_inside = |ring: &[Point], points: &[Point]| {
        let deep = |p: &&Point| is_inside(ring, **p) && away(ring, **p) > ROUNDING;
        points.iter().find(deep).is_some()
    };
    if starts_inside(mine, theirs) || starts_inside(theirs, mine) {
        return false;
    }
    sides(mine).all(|side| {
        let room = Rect::from_points(side.0, side.1);
        !near(room, b)
            || sides(theirs).all(|across| {
                !near(room, Rect::from_points(across.0, across.1))
                    || distance(side, across) >= least
            })
    })
}

fn away(ring: &[Point], p: Point) -> f64 {
    crate::geometry::ring::distance(sides(ring), p)
}

/// The distance of two straight sides; less than nothing where they cross.
fn distance(one: (Point, Point), other: (Point, Point)) -> f64 {
    let side_of = |(a, b): (Point, Point), p: Point| (b - a).cross(p - a);
    let crosses = side_of(one, other.0) * side_of(one, other.1) < 0.0
        && side_of(other, one.0) * side_of(other, one.1) < 0.0;
    let ends = [
        nearest_on(one, other.0).0.distance(other.0),
        nearest_on(one, other.1).0.distance(other.1),
        nearest_on(other, one.0).0.distance(one.0),
        nearest_on(other, one.1).0.distance(one.1),
    ];
    let nearest = ends.into_iter().fold(f64::INFINITY, f64::min);
    // Sides that cross by a rounding touch.
    if crosses { -nearest } else { nearest }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lay::{CutShape, LayPart, Pose};
    use kurbo::Vec2;

    fn laid(along: f64, across: f64, at: (f64, f64)) -> Laid {
        let part = LayPart::new("piece", CutShape::rectangle(along, across).unwrap());
        Laid::new(&part, Pose::default(), Vec2::new(at.0, at.1))
    }

    #[test]
    fn pieces_too_near_crossing_or_within_one_another_are_found() {
        let cloth = [500.0, 300.0];
        let first = laid(100.0, 100.0, (5.0, 5.0));
        let keeps = |other: Laid| keep_apart(&[first.clone(), other], cloth, 5.0);
        assert!(keeps(laid(50.0, 50.0, (110.0, 5.0))));
        assert!(
            keeps(laid(50.0, 50.0, (109.0, 109.0))),
            "corner from corner"
        );
        for at in [
            (109.0, 5.0),
            (90.0, 50.0),
            (20.0, 20.0),
            (108.0, 108.0),
            (446.0, 5.0),
            (200.0, 246.0),
        ] {
            assert!(!keeps(laid(50.0, 50.0, at)), "{at:?}");
        }
        let none = [first.clone(), laid(50.0, 50.0, (105.0, 5.0))];
        assert!(keep_apart(&none, cloth, 0.0), "they touch");
        assert!(!keep_apart(
            &[first, laid(50.0, 50.0, (104.9, 5.0))],
            cloth,
            0.0
        ));
    }
}
