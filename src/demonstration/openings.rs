//! What opens and what overlaps along the cuts.

use super::panel::Panel;
use super::rings::{length, nearest_on, point_along, signed_area, steps};
use super::slash::{Opening, OpeningKind};
use crate::geometry::{Point, Rigid, Vec2, perpendicular};

/// How far beside a cut a panel is looked for, in millimetres.
const BESIDE: f64 = 0.05;

/// What opens by less is a line, in millimetres.
const LEAST: f64 = 0.3;

/// What goes apart by less, square to the cut, slides along it, in millimetres.
const SLIDES: f64 = 0.02;

/// A stretch of a cut between the same two panels, that opens or overlaps all along.
struct Stretch {
    run: Vec<Point>,
    left: Rigid,
    right: Rigid,
    kind: OpeningKind,
}

/// Gaps and overlaps along cuts; a hinge divides a cut.
pub(super) fn openings(panels: &[Panel], cuts: &[Vec<Point>], hinges: &[Point]) -> Vec<Opening> {
    let mut found = Vec::new();
    for cut in cuts {
        for stretch in stretches(panels, cut, hinges, cuts) {
            found.extend(opening(&stretch));
        }
    }
    found
}

fn stretches(
    panels: &[Panel],
    cut: &[Point],
    hinges: &[Point],
    cuts: &[Vec<Point>],
) -> Vec<Stretch> {
    let mut found: Vec<Stretch> = Vec::new();
    for (a, b) in divided(cut, cuts) {
        let along = b - a;
        if along.hypot() <= f64::EPSILON {
            continue;
        }
        // Right of a step on a page with y down.
        let aside = perpendicular(along.normalize()) * BESIDE;
        let middle = a.midpoint(b);
        let at = |p: Point| panels.iter().find(|panel| panel.surrounds(p));
        let (Some(right), Some(left)) = (at(middle + aside), at(middle - aside)) else {
            continue;
        };
        let (left, right) = (left.motion(), right.motion());
        let Some(kind) = kind((a, b), &left, &right) else {
            continue;
        };
        let hinged = hinges.iter().any(|hinge| hinge.distance(a) < 1e-3);
        match found.last_mut() {
            Some(last)
                if !hinged
                    && last.kind == kind
                    && last.left == left
                    && last.right == right
                    && last.run.last() == Some(&a) =>
            {
                last.run.push(b);
            }
            _ => found.push(Stretch {
                run: vec![a, b],
                left,
                right,
                kind,
            }),
        }
    }
    found
}

/// Whether a step of a cut opens or overlaps: how far the right panel went from the left one, square
/// to it; nothing where they slide along it.
fn kind((a, b): (Point, Point), left: &Rigid, right: &Rigid) -> Option<OpeningKind> {
    let way = left.apply_direction(perpendicular((b - a).normalize()));
    let out = |p: Point| (right.apply(p) - left.apply(p)).dot(way);
    let apart = out(a) + out(b);
    if apart.abs() <= SLIDES {
        return None;
    }
    Some(if apart > 0.0 {
        OpeningKind::Gap
    } else {
        OpeningKind::Overlap
    })
}

/// The steps of a cut, divided where other cuts end on it.
fn divided(cut: &[Point], cuts: &[Vec<Point>]) -> Vec<(Point, Point)> {
    let ends: Vec<Point> = cuts
        .iter()
        .filter(|other| other.as_slice() != cut)
        .flat_map(|other| [other.first(), other.last()])
        .flatten()
        .copied()
        .collect();
    let mut found = Vec::new();
    for (a, b) in steps(cut) {
        let on = |p: &&Point| {
            let (near, share) = nearest_on((a, b), **p);
            near.distance(**p) < 1e-3 && (1e-6..1.0 - 1e-6).contains(&share)
        };
        let mut between: Vec<Point> = ends.iter().filter(on).copied().collect();
        between.sort_by(|p, q| p.distance(a).total_cmp(&q.distance(a)));
        let mut from = a;
        for to in between.into_iter().chain([b]) {
            found.push((from, to));
            from = to;
        }
    }
    found
}

/// What lies between the two copies of a stretch after the panels beside it were moved.
fn opening(stretch: &Stretch) -> Option<Opening> {
    let Stretch {
        run,
        left,
        right,
        kind,
    } = stretch;
    let long = length(run);
    // Corners and the middle, so that what is parallel is measured in its middle.
    let middle = point_along(run, 0.5 * long)?.0;
    let apart = |p: Point| left.apply(p).distance(right.apply(p));
    let widest = run.iter().map(|p| apart(*p)).fold(0.0, f64::max);
    let at = if apart(middle) > 0.98 * widest {
        middle
    } else {
        let far = |a: &&Point, b: &&Point| apart(**a).total_cmp(&apart(**b));
        *run.iter().max_by(far)?
    };
    let ring: Vec<Point> = run
        .iter()
        .map(|p| left.apply(*p))
        .chain(run.iter().rev().map(|p| right.apply(*p)))
        .collect();
    if widest < LEAST || signed_area(&ring).abs() < 0.25 * LEAST * long {
        return None;
    }
    Some(Opening {
        kind: *kind,
        amount: width(run, (left, right)),
        ring,
        at: left.apply(at).midpoint(right.apply(at)),
    })
}

/// How wide it is: the distance of the two copies where it is greatest; square to the cut where the
/// panels stay parallel or slide along each other.
fn width(run: &[Point], (left, right): (&Rigid, &Rigid)) -> f64 {
    let turned = |way: Vec2| (left.apply_direction(way) - right.apply_direction(way)).hypot();
    let parallel = turned(Vec2::new(1.0, 0.0)) < 1e-9;
    let mut most: f64 = 0.0;
    for (a, b) in steps(run) {
        let way = left.apply_direction(perpendicular((b - a).normalize()));
        for p in [a, b] {
            let moved: Vec2 = right.apply(p) - left.apply(p);
            let across = moved.dot(way).abs();
            let sheared = parallel || across < 0.5 * moved.hypot();
            most = most.max(if sheared { across } else { moved.hypot() });
        }
    }
    most
}
