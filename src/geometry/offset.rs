//! The line that runs beside a curve at a fixed distance, and a ring freed of its loops.

use super::{Curve, GeometryError, crossings, perpendicular, signed_area, tolerance};
use kurbo::{BezPath, Line, ParamCurve, ParamCurveDeriv, PathSeg, Point, Rect, Shape, Vec2};
use std::slice::from_ref;

/// Accuracy to which an offset is drawn, in millimetres: a quarter of the 0.02 mm that is
/// promised, the rest is for the joints.
const ACCURACY: f64 = 0.005;

/// Offset segments whose ends are closer than this belong to one smooth run, in millimetres.
const SMOOTH_GAP: f64 = tolerance::SEAM_DRAFTED;

/// The longest end on which the line beside a curve may run back to be left out, in distances: a
/// neckline that bends at a radius of 9 mm where it meets the shoulder has such an end of 1 mm beside
/// it at 10 mm.
const TURNED_TAIL: f64 = 0.2;

/// One smooth stretch of a curve, with the line that runs beside it.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct OffsetRun {
    /// Where the stretch starts and ends on the curve itself.
    pub ends: [Point; 2],
    /// The unit directions of the curve there.
    pub directions: [Vec2; 2],
    /// The line beside the stretch; where the curve bends more tightly than the distance, the
    /// loops of it are cut out.
    pub beside: Curve,
}

/// The smooth stretches of a curve with the lines beside them, `distance` millimetres to the
/// left as one walks along it (seen on the page), to 0.02 mm.
///
/// # Errors
/// When the distance is not finite or leads outside the coordinates a curve may have.
pub(crate) fn offset_runs(curve: &Curve, distance: f64) -> Result<Vec<OffsetRun>, GeometryError> {
    if !distance.is_finite() {
        return Err(GeometryError::NotFinite {
            x: distance,
            y: distance,
        });
    }
    let mut runs: Vec<OffsetRun> = Vec::new();
    for segment in curve.segments() {
        let alone = Curve::new(vec![*segment])?;
        let directions = [alone.start_direction(), alone.end_direction()];
        if directions[0] == Vec2::ZERO {
            continue; // a segment without extent has no side
        }
        let beside = offset_segment(segment, directions, distance)?;
        match runs.last_mut() {
            Some(run) if run.beside.end().distance(beside.start()) <= SMOOTH_GAP => {
                run.beside = run.beside.ending_at(beside.start())?.then(&beside)?;
                run.ends[1] = segment.end();
                run.directions[1] = directions[1];
            }
            _ => runs.push(OffsetRun {
                ends: [segment.start(), segment.end()],
                directions,
                beside,
            }),
        }
    }
    if runs.is_empty() {
        return Err(GeometryError::Empty);
    }
    for run in &mut runs {
        let beside = loops_cut_out(&run.beside)?;
        let most = TURNED_TAIL * distance.abs();
        let ahead = without_turned_tail(&beside, run.directions[1], most)?;
        let back = without_turned_tail(&ahead.reversed(), -run.directions[0], most)?;
        run.beside = back.reversed();
    }
    Ok(runs)
}

/// An open line without the loops in which it crosses itself.
///
/// The line beside a smooth curve turns back where the curve bends more tightly than the
/// distance: what lies between the two passes of a crossing is nearer to the curve than it.
fn loops_cut_out(line: &Curve) -> Result<Curve, GeometryError> {
    let mut segments = line.segments().to_vec();
    for _ in 0..segments.len() {
        let Some(crossed) = crossing_of(&segments, false) else {
            break;
        };
        let (Some(head), Some(tail)) = (segments.first(), segments.last()) else {
            break;
        };
        let (until, from, at) = (crossed.until, crossed.from, crossed.at);
        let mut kept = loop_between(until, 0.0, crossed.first, head.start(), at);
        kept.extend(loop_between(from, crossed.second, 1.0, at, tail.end()));
        segments = kept;
    }
    Curve::new(segments)
}

/// A line without the end on which it runs back: where a curve bends more tightly than the distance
/// up to its very end, the line beside it turns round shortly before. Carried on from there it goes
/// the wrong way. An end longer than `most` is part of the shape, and stays.
fn without_turned_tail(line: &Curve, ahead: Vec2, most: f64) -> Result<Curve, GeometryError> {
    let mut kept = line.segments().to_vec();
    while let Some(last) = kept.pop() {
        let runs_back = |t: f64| last.to_cubic().deriv().eval(t).to_vec2().dot(ahead) < 0.0;
        // At the very ends a cusp has no direction.
        if !runs_back(0.99) {
            kept.push(last);
            break;
        }
        if !runs_back(0.01) {
            let (mut forward, mut back) = (0.01, 0.99);
            for _ in 0..50 {
                let middle = f64::midpoint(forward, back);
                *(if runs_back(middle) {
                    &mut back
                } else {
                    &mut forward
                }) = middle;
            }
            kept.push(last.subsegment(0.0..forward));
            break;
        }
    }
    if kept.is_empty() {
        return Ok(line.clone());
    }
    let kept = Curve::new(kept)?;
    let tail = line.length() - kept.length();
    Ok(if tail > most { line.clone() } else { kept })
}

fn offset_segment(
    segment: &PathSeg,
    directions: [Vec2; 2],
    distance: f64,
) -> Result<Curve, GeometryError> {
    let alone = Curve::new(vec![*segment])?;
    if distance == 0.0 {
        return Ok(alone);
    }
    let ends = [
        segment.start() - perpendicular(directions[0]) * distance,
        segment.end() - perpendicular(directions[1]) * distance,
    ];
    if matches!(segment, PathSeg::Line(_)) || alone.is_straight(tolerance::POINT) {
        return Curve::line(ends[0], ends[1]);
    }
    let mut path = BezPath::new();
    kurbo::offset::offset_cubic(segment.to_cubic(), -distance, ACCURACY, &mut path);
    let mut segments: Vec<PathSeg> = path
        .segments()
        .filter(|s| Shape::bounding_box(s).size().max_side() > tolerance::POINT)
        .collect();
    // The ends are known exactly; the offsets between them to their accuracy.
    if let Some(first) = segments.first_mut() {
        *first = starting_at(*first, ends[0]);
    }
    let Ok(curve) = chained(segments) else {
        return Curve::line(ends[0], ends[1]);
    };
    curve.ending_at(ends[1])
}

/// The segments as one chain, gaps of a rounding closed.
fn chained(mut segments: Vec<PathSeg>) -> Result<Curve, GeometryError> {
    let mut reached: Option<Point> = None;
    for segment in &mut segments {
        if let Some(end) = reached.filter(|end| segment.start().distance(*end) <= SMOOTH_GAP) {
            *segment = starting_at(*segment, end);
        }
        reached = Some(segment.end());
    }
    Curve::new(segments)
}

fn starting_at(mut segment: PathSeg, start: Point) -> PathSeg {
    match &mut segment {
        PathSeg::Line(l) => l.p0 = start,
        PathSeg::Quad(q) => q.p0 = start,
        PathSeg::Cubic(c) => c.p0 = start,
    }
    segment
}

/// A closed ring without the loops in which it crosses itself: at every crossing the side with
/// the greater area stays, so that of a clockwise ring the loops that run backwards go.
pub(crate) fn without_loops(mut ring: Vec<PathSeg>) -> Vec<PathSeg> {
    // Every step takes a loop away; the bound only guards against rounding.
    for _ in 0..4 * ring.len() {
        let Some(crossed) = crossing_of(&ring, true) else {
            break;
        };
        let (t, u, at) = (crossed.first, crossed.second, crossed.at);
        let within = loop_between(crossed.between, t, u, at, at);
        let outside = [crossed.from, crossed.until].concat();
        let outside = loop_between(&outside, u, t, at, at);
        ring = if signed_area(&within) > signed_area(&outside) {
            within
        } else {
            outside
        };
    }
    ring
}

/// From parameter `from` on the first segment to `to` on the last, which are put on `start` and
/// `finish`.
fn loop_between(
    segments: &[PathSeg],
    from: f64,
    to: f64,
    start: Point,
    finish: Point,
) -> Vec<PathSeg> {
    let last = segments.len() - 1;
    let mut out = Vec::with_capacity(segments.len());
    for (index, segment) in segments.iter().enumerate() {
        let low = if index == 0 { from } else { 0.0 };
        let high = if index == last { to } else { 1.0 };
        if high - low < 1e-12 && (index == 0 || index == last) {
            continue;
        }
        out.push(segment.subsegment(low..high));
    }
    if let Some(first) = out.first_mut() {
        *first = starting_at(*first, start);
    }
    if let Some(end) = out.last_mut() {
        *end = starting_at(end.reverse(), finish).reverse();
    }
    out
}

/// Where a line or ring crosses itself.
struct Crossed<'r> {
    /// Up to and with the segment that is there first.
    until: &'r [PathSeg],
    /// From that segment to the one that is there again, both included.
    between: &'r [PathSeg],
    /// From that segment on.
    from: &'r [PathSeg],
    /// The parameters on those two segments.
    first: f64,
    second: f64,
    at: Point,
}

/// The first place where a line or ring crosses itself, apart from neighbours' joints.
fn crossing_of(ring: &[PathSeg], closed: bool) -> Option<Crossed<'_>> {
    let boxed: Vec<(&PathSeg, Rect)> = ring.iter().map(|s| (s, s.bounding_box())).collect();
    let count = ring.len();
    for (i, &(first, a)) in boxed.iter().enumerate() {
        for (j, &(second, b)) in boxed.iter().enumerate().skip(i + 1) {
            if a.x0 > b.x1 || b.x0 > a.x1 || a.y0 > b.y1 || b.y0 > a.y1 {
                continue;
            }
            let joints = [
                (j == i + 1).then(|| first.end()),
                (closed && i == 0 && j + 1 == count).then(|| first.start()),
            ];
            let met = crossings(from_ref(first), from_ref(second));
            let found = met.into_iter().find(|c| {
                !joints
                    .iter()
                    .flatten()
                    .any(|q| q.distance(c.point) < tolerance::SEAM_DRAFTED)
            });
            if let Some(c) = found {
                return Some(Crossed {
                    until: ring.get(..=i)?,
                    between: ring.get(i..=j)?,
                    from: ring.get(j..)?,
                    first: c.first.1,
                    second: c.second.1,
                    at: c.point,
                });
            }
        }
    }
    None
}

/// The curve carried straight on beyond its end.
///
/// # Errors
/// When that leads outside the coordinates a curve may have.
pub(crate) fn carried_on(curve: &Curve, by: f64) -> Result<Curve, GeometryError> {
    let mut segments = curve.segments().to_vec();
    let end = curve.end();
    segments.push(PathSeg::Line(Line::new(
        end,
        end + curve.end_direction() * by,
    )));
    Curve::new(segments)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Half a circle about the origin, clockwise on the page from the left over the top.
    fn half_circle(radius: f64) -> Curve {
        let arc = kurbo::Arc::new(
            Point::ORIGIN,
            (radius, radius),
            std::f64::consts::PI,
            std::f64::consts::PI,
            0.0,
        );
        let segments = arc.to_path(1e-6).segments().collect();
        Curve::new(segments).unwrap()
    }

    fn farthest_from_circle(curve: &Curve, radius: f64) -> f64 {
        let length = curve.length();
        (0..=200)
            .map(|k| {
                curve
                    .point_at(length * f64::from(k) / 200.0)
                    .unwrap()
                    .0
                    .to_vec2()
            })
            .map(|p| (p.hypot() - radius).abs())
            .fold(0.0, f64::max)
    }

    #[test]
    fn a_circle_has_circles_beside_it() {
        for (radius, distance) in [(50.0, 15.0), (50.0, -15.0), (20.0, 40.0), (500.0, 100.0)] {
            let runs = offset_runs(&half_circle(radius), distance).unwrap();
            assert_eq!(runs.len(), 1, "smooth");
            let miss = farthest_from_circle(&runs[0].beside, radius + distance);
            assert!(miss < 0.02, "{radius} {distance}: {miss}");
        }
    }

    #[test]
    fn a_bow_tighter_than_the_distance_is_freed_of_its_loops() {
        // A slot with a round bottom of radius 10, seen from above: its sides are 20 apart.
        let at = Point::new;
        let k = 10.0 * 0.552_284_749_830_793_6;
        let slot = Curve::new(vec![
            PathSeg::Line(Line::new(at(-60.0, -20.0), at(-30.0, -20.0))),
            PathSeg::Cubic(kurbo::CubicBez::new(
                at(-30.0, -20.0),
                at(-10.0 - k, -20.0),
                at(-10.0, 0.0),
                at(0.0, 0.0),
            )),
            PathSeg::Cubic(kurbo::CubicBez::new(
                at(0.0, 0.0),
                at(10.0, 0.0),
                at(10.0 + k, -20.0),
                at(30.0, -20.0),
            )),
            PathSeg::Line(Line::new(at(30.0, -20.0), at(60.0, -20.0))),
        ])
        .unwrap();
        let mut ring: Vec<PathSeg> = offset_runs(&slot, 30.0)
            .unwrap()
            .iter()
            .flat_map(|run| run.beside.segments().to_vec())
            .collect();
        let (first, last) = (ring[0].start(), ring[ring.len() - 1].end());
        for (from, to) in [
            (last, at(60.0, 40.0)),
            (at(60.0, 40.0), at(-60.0, 40.0)),
            (at(-60.0, 40.0), first),
        ] {
            ring.push(PathSeg::Line(Line::new(from, to)));
        }
        let freed = without_loops(ring);
        assert_eq!(super::super::ring_crossing(&freed), None);
        for segment in &freed {
            for k in 0..=20 {
                let p = segment.eval(f64::from(k) / 20.0);
                if p.x.abs() < 59.9 && p.y < -20.0 {
                    assert!(slot.nearest(p).0 > 29.97, "{p:?}");
                }
            }
        }
    }

    #[test]
    fn refuses_a_distance_that_is_none() {
        let edge = Curve::line(Point::ORIGIN, Point::new(30.0, 0.0)).unwrap();
        assert!(offset_runs(&edge, f64::NAN).is_err());
        assert!(offset_runs(&edge, 1e9).is_err());
    }
}
