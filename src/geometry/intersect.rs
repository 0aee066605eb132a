//! Where curves cross, and whether a ring crosses itself.

use super::{Curve, tolerance};
use kurbo::{ParamCurve, PathSeg, Point, Rect, Shape};

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
#[must_use]
pub fn crossings(first: &[PathSeg], second: &[PathSeg]) -> Vec<Crossing> {
    let mut found = Vec::new();
    for (i, a) in first.iter().enumerate() {
        let box_a = a.bounding_box();
        for (j, b) in second.iter().enumerate() {
            if !overlap(box_a, b.bounding_box()) {
                continue;
            }
            pair((a, 0.0, 1.0), (b, 0.0, 1.0), &mut |point, t, u| {
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
#[must_use]
pub fn ring_crossing(ring: &[PathSeg]) -> Option<Point> {
    self_crossing(ring, true)
}

/// The first place where an open curve crosses itself.
#[must_use]
pub fn first_self_crossing(curve: &Curve) -> Option<Point> {
    self_crossing(curve.segments(), false)
}

fn self_crossing(segments: &[PathSeg], closed: bool) -> Option<Point> {
    let boxes: Vec<Rect> = segments.iter().map(Shape::bounding_box).collect();
    let count = segments.len();
    for i in 0..count {
        if let Some(point) = loop_in(&segments[i]) {
            return Some(point);
        }
        for j in i + 1..count {
            if !overlap(boxes[i], boxes[j]) {
                continue;
            }
            let (a, b) = (&segments[i], &segments[j]);
            let mut joints = Vec::with_capacity(2);
            if j == i + 1 {
                joints.push(a.end());
            }
            if closed && i == 0 && j + 1 == count {
                joints.push(a.start());
            }
            let mut hit = None;
            pair((a, 0.0, 1.0), (b, 0.0, 1.0), &mut |point, _, _| {
                let joint = joints
                    .iter()
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

type Part<'a> = (&'a PathSeg, f64, f64);

/// Halves both parts until they are nearly straight, then crosses their chords.
fn pair(a: Part<'_>, b: Part<'_>, found: &mut impl FnMut(Point, f64, f64)) {
    let (box_a, box_b) = (part_box(a), part_box(b));
    if !overlap(box_a, box_b) {
        return;
    }
    let straight_a = is_flat(a, box_a);
    let straight_b = is_flat(b, box_b);
    if straight_a && straight_b {
        if let Some((point, t, u)) = cross_chords(a, b) {
            found(point, a.1 + t * (a.2 - a.1), b.1 + u * (b.2 - b.1));
        }
        return;
    }
    let middle = |p: Part<'_>| 0.5 * (p.1 + p.2);
    if straight_b || (!straight_a && longest(box_a) >= longest(box_b)) {
        let m = middle(a);
        pair((a.0, a.1, m), b, found);
        pair((a.0, m, a.2), b, found);
    } else {
        let m = middle(b);
        pair(a, (b.0, b.1, m), found);
        pair(a, (b.0, m, b.2), found);
    }
}

fn cross_chords(a: Part<'_>, b: Part<'_>) -> Option<(Point, f64, f64)> {
    let (p, q) = (a.0.eval(a.1), b.0.eval(b.1));
    let (u, v) = (a.0.eval(a.2) - p, b.0.eval(b.2) - q);
    let cross = u.cross(v);
    if cross.abs() <= tolerance::ANGLE * u.hypot() * v.hypot() {
        return None;
    }
    let t = (q - p).cross(v) / cross;
    let s = (q - p).cross(u) / cross;
    let within = -1e-12..=1.0 + 1e-12;
    (within.contains(&t) && within.contains(&s)).then(|| (p + u * t, t, s))
}

fn part_box(p: Part<'_>) -> Rect {
    if p.1 == 0.0 && p.2 == 1.0 {
        return p.0.bounding_box();
    }
    p.0.subsegment(p.1..p.2).bounding_box()
}

fn is_flat(p: Part<'_>, bounds: Rect) -> bool {
    matches!(p.0, PathSeg::Line(_)) || longest(bounds) < FLAT || (p.2 - p.1) < 1e-9
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
    use kurbo::CubicBez;

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
