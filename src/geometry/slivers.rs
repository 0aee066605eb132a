//! Segments too short to have a direction, taken out of a curve.

use super::{Curve, GeometryError, Point, arc_length, tolerance};
use kurbo::{ParamCurve, PathSeg};

/// A segment shorter than this is a rounding left by a cut beside a joint, in millimetres: its
/// direction is noise, and a blend over it would make a corner.
const SLIVER: f64 = 1e-2;

/// The curve without slivers: its neighbours meet instead, at the end of it that is one of `fixed`,
/// where something must not move.
pub(crate) fn without_slivers(curve: &Curve, fixed: &[Point]) -> Result<Curve, GeometryError> {
    let segments = curve.segments();
    let is_sliver = |s: &PathSeg| arc_length(s) < SLIVER;
    if !segments.iter().any(is_sliver) {
        return Ok(curve.clone());
    }
    let is_fixed = |p: Point| {
        let near = |f: &Point| f.distance(p) <= tolerance::POINT;
        fixed.iter().any(near)
    };
    let mut kept: Vec<PathSeg> = Vec::with_capacity(segments.len());
    let mut start: Option<Point> = None;
    for (index, segment) in segments.iter().enumerate() {
        if is_sliver(segment) && segments.len() > 1 {
            let ends_it = index + 1 == segments.len();
            let stays = is_fixed(segment.start()) && !ends_it || index == 0;
            match kept.last_mut() {
                Some(before) if !stays => {
                    *before = ending(before, segment.end());
                    start = None;
                }
                _ => start = Some(start.unwrap_or(segment.start())),
            }
            continue;
        }
        let segment = match start.take() {
            Some(from) => starting(segment, from),
            None => *segment,
        };
        kept.push(segment);
    }
    if kept.is_empty() {
        return Ok(curve.clone());
    }
    Curve::new(kept)
}

fn ending(segment: &PathSeg, at: Point) -> PathSeg {
    starting(&segment.reverse(), at).reverse()
}

fn starting(segment: &PathSeg, at: Point) -> PathSeg {
    let mut moved = *segment;
    match &mut moved {
        PathSeg::Line(l) => l.p0 = at,
        PathSeg::Quad(q) => q.p0 = at,
        PathSeg::Cubic(c) => {
            // Its direction stays.
            c.p1 += at - c.p0;
            c.p0 = at;
        }
    }
    moved
}

/// A length along the curve, or that of the joint of two segments beside it.
pub(crate) fn at_joint(curve: &Curve, at: f64) -> f64 {
    let mut walked = 0.0;
    let joints = curve.segments().iter().map(|segment| {
        walked += arc_length(segment);
        walked
    });
    let nearest = joints.min_by(|a, b| (a - at).abs().total_cmp(&(b - at).abs()));
    nearest
        .filter(|joint| (joint - at).abs() < SLIVER)
        .unwrap_or(at)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn neighbours_meet_where_a_leg_ends() {
        let points = [(0.0, 0.0), (10.0, 0.0), (10.001, 0.0), (20.0, 0.0)].map(Point::from);
        let curve = Curve::polyline(&points).unwrap();
        for fixed in [points[1], points[2]] {
            let clean = without_slivers(&curve, &[fixed]).unwrap();
            assert_eq!(clean.segments().len(), 2);
            assert_eq!(clean.segments()[1].start(), fixed);
            assert_eq!((clean.start(), clean.end()), (points[0], points[3]));
        }
    }

    #[test]
    fn ends_stay() {
        let points = [(0.0, 0.0), (0.001, 0.0), (10.0, 0.0), (10.001, 0.0)].map(Point::from);
        let curve = Curve::polyline(&points).unwrap();
        let clean = without_slivers(&curve, &[]).unwrap();
        assert_eq!(clean.segments().len(), 1);
        assert_eq!((clean.start(), clean.end()), (points[0], points[3]));
        assert_eq!(at_joint(&curve, 9.9985), 10.0);
        assert_eq!(at_joint(&curve, 5.0), 5.0);
    }
}
