//! Where curves cross, and whether a ring crosses itself.

use super::curve::{arriving, control_points, leaving};
use super::measure::hull;
use super::{Curve, tolerance};
use kurbo::common::solve_cubic;
use kurbo::{CubicBez, Line, ParamCurve, PathSeg, Point, Rect};

/// A place where two curves cross: the point and how far along each as (segment, parameter).
///
/// ```
/// use blockwright::geometry::{crossings, Curve, Point};
/// let a = Curve::line(Point::new(0.0, 0.0), Point::new(10.0, 10.0))?;
/// let b = Curve::line(Point::new(0.0, 10.0), Point::new(10.0, 0.0))?;
/// let found = crossings(a.segments(), b.segments());
/// assert!(found[0].point.distance(Point::new(5.0, 5.0)) < 1e-4);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Crossing {
    /// Where the curves cross.
    pub point: Point,
    /// Segment and parameter on the first curve.
    pub first: (usize, f64),
    /// Segment and parameter on the second curve.
    pub second: (usize, f64),
}

/// Pieces shorter than this are taken as straight when crossings are sought, in millimetres.
const FLAT: f64 = tolerance::PRINT * 5.0;

/// All crossings of two chains of segments, in order along the first.
///
/// ```
/// use blockwright::geometry::{Curve, Point, crossings};
/// let falling = Curve::line(Point::new(0.0, 0.0), Point::new(40.0, 40.0))?;
/// let rising = Curve::line(Point::new(0.0, 40.0), Point::new(40.0, 0.0))?;
/// let found = crossings(falling.segments(), rising.segments());
/// assert_eq!(found.len(), 1);
/// assert!(found[0].point.distance(Point::new(20.0, 20.0)) < 1e-9);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[must_use]
pub fn crossings(first: &[PathSeg], second: &[PathSeg]) -> Vec<Crossing> {
    let mut found = Vec::new();
    for (i, a) in first.iter().enumerate() {
        let box_a = hull(a);
        for (j, b) in second.iter().enumerate() {
            if !overlap(box_a, hull(b)) {
                continue;
            }
            pair(a, b, &mut |point, t, u| {
                found.push(Crossing {
                    point,
                    first: (i, t),
                    second: (j, u),
                });
            });
        }
    }
    found.sort_by(|a, b| {
        a.first
            .0
            .cmp(&b.first.0)
            .then(a.first.1.total_cmp(&b.first.1))
    });
    found.dedup_by(|a, b| a.point.distance(b.point) < tolerance::SEAM_DRAFTED);
    found
}

/// The first place where a closed ring of segments crosses itself, neighbours' joints apart.
pub(crate) fn ring_crossing(ring: &[PathSeg]) -> Option<Point> {
    self_crossing(ring, true)
}

/// The first place where an open curve crosses itself.
///
/// ```
/// use blockwright::geometry::{Curve, Point, first_self_crossing};
/// let bow = [(0.0, 0.0), (40.0, 40.0), (40.0, 0.0), (0.0, 40.0)].map(Point::from);
/// let place = first_self_crossing(&Curve::polyline(&bow)?);
/// assert!(place.is_some_and(|place| place.distance(Point::new(20.0, 20.0)) < 1e-6));
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[must_use]
pub fn first_self_crossing(curve: &Curve) -> Option<Point> {
    self_crossing(curve.segments(), false)
}

fn self_crossing(segments: &[PathSeg], closed: bool) -> Option<Point> {
    let boxed: Vec<(&PathSeg, Rect)> = segments.iter().map(|s| (s, hull(s))).collect();
    let count = segments.len();
    for (i, &(a, around_a)) in boxed.iter().enumerate() {
        if let Some(point) = loop_in(a) {
            return Some(point);
        }
        for (j, &(b, around_b)) in boxed.iter().enumerate().skip(i + 1) {
            if !overlap(around_a, around_b) {
                continue;
            }
            if j == i + 1 && count > 2 && part_at_joint(a, b) {
                continue;
            }
            let joints = [
                (j == i + 1).then(|| a.end()),
                (closed && i == 0 && j + 1 == count).then(|| a.start()),
            ];
            let mut hit = None;
            pair(a, b, &mut |point, _, _| {
                let joint = joints
                    .iter()
                    .flatten()
                    .any(|q| q.distance(point) < tolerance::SEAM_DRAFTED);
                if !joint && hit.is_none() {
                    hit = Some(point);
                }
            });
            if hit.is_some() {
                return hit;
            }
        }
    }
    None
}

/// Whether two neighbours have nothing in common but their joint: some line through it has all
/// other control points of the one on one side and all of the other on the other. Tried is the
/// line square to the mean of both directions, which parts all neighbours but sharp or strongly
/// bent ones.
fn part_at_joint(a: &PathSeg, b: &PathSeg) -> bool {
    let (joint, onward) = (a.end(), arriving(a) + leaving(b));
    let ahead = |p: Point| (p - joint).dot(onward);
    let [a0, a1, a2, _] = control_points(a);
    let [_, b1, b2, b3] = control_points(b);
    let line = |s: &PathSeg| matches!(s, PathSeg::Line(_));
    let before = ahead(a0) < 0.0 && (line(a) || (ahead(a1) < 0.0 && ahead(a2) < 0.0));
    let after = ahead(b3) > 0.0 && (line(b) || (ahead(b1) > 0.0 && ahead(b2) > 0.0));
    before && after && a.end() == b.start()
}

/// The point where one cubic crosses itself, if it does.
fn loop_in(segment: &PathSeg) -> Option<Point> {
    let PathSeg::Cubic(c) = segment else {
        return None;
    };
    // A loop needs the control polygon to turn through more than half a turn.
    let (a, b, d) = (c.p1 - c.p0, c.p2 - c.p1, c.p3 - c.p2);
    let turn = super::angle_between(a, b).abs() + super::angle_between(b, d).abs();
    if turn <= std::f64::consts::PI || (a.cross(b) < 0.0) != (b.cross(d) < 0.0) {
        return None;
    }
    // Solve B(t) = B(u), t != u, in s = t + u and p = t u: both coordinates divided by (t - u)
    // are linear in p once s is known.
    let (p3, p2, p1) = (
        (c.p3 - c.p0) - (c.p2 - c.p1) * 3.0,
        (c.p2 - c.p1) * 3.0 - (c.p1 - c.p0) * 3.0,
        (c.p1 - c.p0) * 3.0,
    );
    let cross32 = p3.cross(p2);
    if cross32.abs() < f64::EPSILON {
        return None;
    }
    // p3 (s² - p) + p2 s + p1 = 0: crossing with p3 gives s, crossing with p2 gives p.
    let s = -p3.cross(p1) / cross32;
    let p = s * s - p2.cross(p1) / cross32;
    let disc = s * s - 4.0 * p;
    if disc <= 0.0 {
        return None;
    }
    let (t, u) = ((s - disc.sqrt()) / 2.0, (s + disc.sqrt()) / 2.0);
    (t > 1e-9 && u < 1.0 - 1e-9).then(|| c.eval(t))
}

/// All crossings of two segments, each with its parameters on both.
fn pair(a: &PathSeg, b: &PathSeg, found: &mut impl FnMut(Point, f64, f64)) {
    match (a, b) {
        (PathSeg::Line(p), PathSeg::Line(q)) => {
            if let Some((point, t, u)) = cross_lines(*p, *q) {
                found(point, t, u);
            }
        }
        (curve, PathSeg::Line(line)) => cross_curve(curve, *line, found),
        (PathSeg::Line(line), curve) => {
            cross_curve(curve, *line, |point, t, u| found(point, u, t));
        }
        _ => halve(Part::whole(a), Part::whole(b), found),
    }
}

/// A part of a curve between two parameters.
#[derive(Clone, Copy)]
struct Part {
    curve: CubicBez,
    from: f64,
    to: f64,
}

impl Part {
    fn whole(segment: &PathSeg) -> Self {
        let (curve, from, to) = (segment.to_cubic(), 0.0, 1.0);
        Self { curve, from, to }
    }

    fn halves(&self) -> (Self, Self) {
        let (a, b) = self.curve.subdivide();
        let middle = 0.5 * (self.from + self.to);
        let part = |curve, from, to| Self { curve, from, to };
        (part(a, self.from, middle), part(b, middle, self.to))
    }
}

/// Halves both parts until they are nearly straight, then crosses their chords.
fn halve(a: Part, b: Part, found: &mut impl FnMut(Point, f64, f64)) {
    let (box_a, box_b) = (
        hull(&PathSeg::Cubic(a.curve)),
        hull(&PathSeg::Cubic(b.curve)),
    );
    if !overlap(box_a, box_b) {
        return;
    }
    let straight_a = is_flat(&a, box_a);
    let straight_b = is_flat(&b, box_b);
    if straight_a && straight_b {
        let chord = |p: &Part| Line::new(p.curve.p0, p.curve.p3);
        if let Some((point, t, u)) = cross_lines(chord(&a), chord(&b)) {
            let along = |p: &Part, t: f64| p.from + t * (p.to - p.from);
            found(point, along(&a, t), along(&b, u));
        }
    } else if straight_b || (!straight_a && longest(box_a) >= longest(box_b)) {
        let (head, tail) = a.halves();
        halve(head, b, found);
        halve(tail, b, found);
    } else {
        let (head, tail) = b.halves();
        halve(a, head, found);
        halve(a, tail, found);
    }
}

/// How far a line is carried on beyond its ends, as a part of its length, so that rounding does
/// not lose a crossing at an end.
const CARRIED_ON: f64 = 1e-12;

/// Where a curve meets a line, from the roots of its distance to the line.
///
/// An end of the curve that lies on the line always counts: a root there may come out just
/// beyond it, and would be lost to this curve and to its neighbour.
fn cross_curve(segment: &PathSeg, line: Line, mut found: impl FnMut(Point, f64, f64)) {
    let curve = segment.to_cubic();
    let along = line.p1 - line.p0;
    let length = along.hypot();
    if length == 0.0 {
        return;
    }
    let off = |p: Point| along.cross(p - line.p0) / length;
    let [d0, d1, d2, d3] = [curve.p0, curve.p1, curve.p2, curve.p3].map(off);
    if d0.max(d1).max(d2).max(d3) < -tolerance::POINT
        || d0.min(d1).min(d2).min(d3) > tolerance::POINT
    {
        return;
    }
    let mut meets = |t: f64| {
        let point = curve.eval(t);
        let u = (point - line.p0).dot(along) / (length * length);
        if (-CARRIED_ON..=1.0 + CARRIED_ON).contains(&u) {
            found(point, t, u);
        }
    };
    let on_line = |d: f64| d.abs() <= tolerance::POINT * 1e-3;
    if [d0, d1, d2, d3].into_iter().all(on_line) {
        return; // it runs along the line
    }
    let ends = [d0, d3].map(on_line);
    if ends[0] {
        meets(0.0);
    }
    let (c1, c2, c3) = (
        3.0 * (d1 - d0),
        3.0 * (d2 - 2.0 * d1 + d0),
        d3 - 3.0 * d2 + 3.0 * d1 - d0,
    );
    let value = |t: f64| ((c3 * t + c2) * t + c1) * t + d0;
    let slope = |t: f64| (3.0 * c3 * t + 2.0 * c2) * t + c1;
    let mut roots: Vec<f64> = solve_cubic(d0, c1, c2, c3).to_vec();
    let size = d0.abs().max(c1.abs()).max(c2.abs());
    if c3.abs() < 1e-6 * size {
        // The solver loses digits over a leading coefficient that is a rounding, up to all of them:
        // what it finds without it is put right by Newton's steps.
        roots.extend(solve_cubic(d0, c1, c2, 0.0));
        for root in &mut roots {
            for _ in 0..4 {
                let step = value(*root) / slope(*root);
                *root -= if step.abs() < 0.1 { step } else { 0.0 };
            }
        }
        roots.retain(|root| value(*root).abs() <= tolerance::POINT);
        roots.sort_by(f64::total_cmp);
        roots.dedup_by(|a, b| (*a - *b).abs() < NEAR_END);
    }
    let mut any = false;
    for root in roots {
        let step = value(root) / slope(root);
        let t = if step.abs() < 1e-3 { root - step } else { root };
        let apart = (!ends[0] || t > NEAR_END) && (!ends[1] || t < 1.0 - NEAR_END);
        if (0.0..=1.0).contains(&t) && apart {
            any = true;
            meets(t);
        }
    }
    if !any && !ends[0] && !ends[1] && (d0 < 0.0) != (d3 < 0.0) {
        // It passes from one side to the other: rounding lost the root, halving does not.
        halve(
            Part::whole(segment),
            Part::whole(&PathSeg::Line(line)),
            &mut |_, t, _| {
                meets(t);
            },
        );
    }
    if ends[1] {
        meets(1.0);
    }
}

/// A root so near an end that lies on the line is that end.
const NEAR_END: f64 = 1e-6;

fn cross_lines(a: Line, b: Line) -> Option<(Point, f64, f64)> {
    let (u, v) = (a.p1 - a.p0, b.p1 - b.p0);
    let cross = u.cross(v);
    if cross.abs() <= tolerance::ANGLE * u.hypot() * v.hypot() {
        return None;
    }
    let t = (b.p0 - a.p0).cross(v) / cross;
    let s = (b.p0 - a.p0).cross(u) / cross;
    let within = -CARRIED_ON..=1.0 + CARRIED_ON;
    (within.contains(&t) && within.contains(&s)).then(|| (a.p0 + u * t, t, s))
}

fn is_flat(p: &Part, bounds: Rect) -> bool {
    longest(bounds) < FLAT || (p.to - p.from) < 1e-9
}

fn longest(r: Rect) -> f64 {
    r.width().max(r.height())
}

fn overlap(a: Rect, b: Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cubic(p: [(f64, f64); 4]) -> PathSeg {
        let [a, b, c, d] = p.map(Point::from);
        PathSeg::Cubic(CubicBez::new(a, b, c, d))
    }

    #[test]
    fn finds_both_crossings_of_a_bow_and_a_line() {
        let bow = [cubic([
            (0.0, 10.0),
            (0.0, -40.0),
            (100.0, -40.0),
            (100.0, 10.0),
        ])];
        let line = [PathSeg::Line(kurbo::Line::new((-10.0, 0.0), (110.0, 0.0)))];
        let found = crossings(&bow, &line);
        assert_eq!(found.len(), 2, "{found:?}");
        assert!((found[0].point.x + found[1].point.x - 100.0).abs() < 0.01);
    }

    /// A curve whose height is a parabola but for a rounding.
    #[test]
    fn finds_the_crossing_of_a_curve_that_is_hardly_a_cubic() {
        let curve = cubic([
            (94.59026615400941, 106.04760175559989),
            (85.74881502403058, 137.9777109686209),
            (81.32808945904117, 172.08338177362643),
            (81.32808945904117, 208.36461417061648),
        ]);
        let y = 119.04657871761293;
        let line = [PathSeg::Line(kurbo::Line::new((0.0, y), (167.0, y)))];
        let found = crossings(&line, &[curve]);
        assert_eq!(found.len(), 1, "{found:?}");
        let on = curve.eval(found[0].second.1);
        assert!((on.y - y).abs() < 1e-6, "{found:?}");
        assert!(found[0].point.distance(on) < 1e-6, "{found:?}");
    }

    #[test]
    fn sees_a_loop_inside_one_cubic_and_none_in_a_plain_one() {
        let looped = Curve::new(vec![cubic([
            (0.0, 0.0),
            (140.0, 60.0),
            (-40.0, 60.0),
            (100.0, 0.0),
        ])])
        .unwrap();
        let point = first_self_crossing(&looped).unwrap();
        assert!((point.x - 50.0).abs() < 1e-6, "{point:?}");
        let plain = Curve::new(vec![cubic([
            (0.0, 0.0),
            (30.0, 60.0),
            (70.0, 60.0),
            (100.0, 0.0),
        ])])
        .unwrap();
        assert_eq!(first_self_crossing(&plain), None);
    }

    #[test]
    fn a_ring_touching_only_at_joints_is_simple() {
        let square = Curve::polyline(
            &[(0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0), (0.0, 0.0)].map(Point::from),
        )
        .unwrap();
        assert_eq!(ring_crossing(square.segments()), None);
        let bowtie = Curve::polyline(
            &[(0.0, 0.0), (9.0, 9.0), (9.0, 0.0), (0.0, 9.0), (0.0, 0.0)].map(Point::from),
        )
        .unwrap();
        assert!(
            ring_crossing(bowtie.segments())
                .unwrap()
                .distance(Point::new(4.5, 4.5))
                < 0.01
        );
    }
}
