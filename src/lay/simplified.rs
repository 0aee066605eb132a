//! Outlines with fewer corners, which nowhere lie within the outline they stand for.

use crate::geometry::ring::{nearest_on, sides};
use crate::geometry::{Point, Vec2};

/// How far the outline with fewer corners may stray, in millimetres.
const TOLERANCE: f64 = 0.08;

/// How far two sides that are made longer until they meet may reach beyond the side between them.
const LONGER: f64 = 20.0;

/// The outline (of positive area) with as few corners as lie within the tolerance outside it.
///
/// A corner that points inward is left out; a side between two that point outward is replaced by its
/// neighbours, made longer until they meet. Either only adds area. The least change is made first.
pub(super) fn simplified(outline: Vec<Point>) -> Vec<Point> {
    let mut ring: Vec<Corner> = outline.iter().map(|&at| Corner { at, off: 0.0 }).collect();
    while ring.len() > 4 {
        let count = ring.len();
        let changes = (0..count).filter_map(|k| change(&ring, k));
        let Some(least) = changes.min_by(|a, b| a.corner.off.total_cmp(&b.corner.off)) else {
            break;
        };
        let next = (least.at + 1) % count;
        if let Some(place) = ring.get_mut(if least.drops_next { least.at } else { next }) {
            *place = least.corner;
        }
        ring.remove(if least.drops_next { next } else { least.at });
    }
    let found: Vec<Point> = ring.into_iter().map(|corner| corner.at).collect();
    if crosses_itself(&found) {
        outline
    } else {
        found
    }
}

/// A corner, and how far the outline there may have come from where it was.
#[derive(Clone, Copy)]
struct Corner {
    at: Point,
    off: f64,
}

/// What replaces the corner `at` and, where it drops the next, that one too.
struct Change {
    at: usize,
    drops_next: bool,
    corner: Corner,
}

/// The change at a corner that adds area alone and strays little.
fn change(ring: &[Corner], k: usize) -> Option<Change> {
    let corner = |step: usize| ring.get((k + step) % ring.len()).copied();
    let (before, one, two, after) = (corner(ring.len() - 1)?, corner(0)?, corner(1)?, corner(2)?);
    let way = |a: Corner, b: Corner| b.at - a.at;
    if way(before, one).cross(way(one, two)) <= 0.0 {
        // It points inward, or lies on a straight: the next corner takes its place.
        let (foot, _) = nearest_on((before.at, two.at), one.at);
        let off = foot.distance(one.at) + one.off.max(before.off).max(two.off);
        return (off <= TOLERANCE).then_some(Change {
            at: k,
            drops_next: false,
            corner: Corner { at: two.at, off },
        });
    }
    if way(one, two).cross(way(two, after)) <= 0.0 {
        return None;
    }
    let meet = meeting(before.at, way(before, one), after.at, way(two, after))?;
    let (foot, _) = nearest_on((one.at, two.at), meet);
    let reaches = (meet - one.at).dot(way(before, one)) >= 0.0
        && (meet - two.at).dot(way(two, after)) <= 0.0
        && meet.distance(one.at) < LONGER;
    let off = foot.distance(meet) + one.off.max(two.off);
    (reaches && off <= TOLERANCE).then_some(Change {
        at: k,
        drops_next: true,
        corner: Corner { at: meet, off },
    })
}

/// Where two straight lines meet.
fn meeting(a: Point, along_a: Vec2, b: Point, along_b: Vec2) -> Option<Point> {
    let turn = along_a.cross(along_b);
    // Sides that hardly turn meet nowhere in particular.
    if turn.abs() <= 1e-6 * along_a.hypot() * along_b.hypot() {
        return None;
    }
    Some(a + along_a * ((b - a).cross(along_b) / turn))
}

fn crosses_itself(ring: &[Point]) -> bool {
    let sides: Vec<(Point, Point)> = sides(ring).collect();
    let side_of = |(a, b): (Point, Point), p: Point| (b - a).cross(p - a);
    sides.iter().enumerate().any(|(k, &one)| {
        sides.iter().skip(k + 2).any(|&other| {
            other.1 != one.0
                && side_of(one, other.0) * side_of(one, other.1) < 0.0
                && side_of(other, one.0) * side_of(other, one.1) < 0.0
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::ring::{distance, is_inside, signed_area};

    #[test]
    fn a_circle_and_a_hollow_keep_their_inside_with_fewer_corners() {
        let circle = |radius: f64, way: f64| {
            (0..360).map(move |k| {
                let turn = f64::from(k) / 360.0 * std::f64::consts::TAU * way;
                Point::new(radius * libm::cos(turn), radius * libm::sin(turn))
            })
        };
        let hollow = (0..=240).map(|k| {
            let turn = f64::from(k) / 240.0 * std::f64::consts::PI;
            Point::new(200.0 * libm::cos(turn), 300.0 - 200.0 * libm::sin(turn))
        });
        let square = [
            (-300.0, 300.0),
            (-300.0, -100.0),
            (300.0, -100.0),
            (300.0, 300.0),
        ];
        let square = square.map(Point::from).into_iter();
        for ring in [
            circle(150.0, 1.0).collect(),
            square.chain(hollow).collect::<Vec<_>>(),
        ] {
            let fewer = simplified(ring.clone());
            assert!(
                2 * fewer.len() < ring.len(),
                "{} of {}",
                fewer.len(),
                ring.len()
            );
            for p in &ring {
                let away = distance(sides(&fewer), *p);
                assert!(
                    is_inside(&fewer, *p) || away < 1e-9,
                    "{p} lies {away} outside"
                );
                assert!(away < 0.5, "{away}");
            }
            let more = signed_area(&fewer) / signed_area(&ring);
            assert!((1.0..1.01).contains(&more), "{more}");
        }
    }
}
