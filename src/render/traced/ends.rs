//! Strokes joined end to end, and the ends of edges brought together.

use super::CLOSED_WITHIN;
use super::TracedError;
use crate::geometry::kurbo::PathSeg;
use crate::geometry::{Curve, GeometryError, Point};

/// One chain of strokes that are drawn in any order and direction; what is left over if they do not
/// meet.
pub(super) fn chained(mut strokes: Vec<Curve>) -> Result<Option<Curve>, (Point, f64)> {
    if strokes.is_empty() {
        return Ok(None);
    }
    let mut chain = strokes.remove(0);
    while !strokes.is_empty() {
        let mut best: Option<(f64, usize, bool, bool)> = None;
        for (index, stroke) in strokes.iter().enumerate() {
            for (at_start, end) in [(false, chain.end()), (true, chain.start())] {
                for (turned, other) in [(false, stroke.start()), (true, stroke.end())] {
                    let gap = end.distance(other);
                    if best.is_none_or(|(least, ..)| gap < least) {
                        best = Some((gap, index, at_start, turned));
                    }
                }
            }
        }
        let Some((gap, index, at_start, turned)) = best else {
            break;
        };
        if gap > CLOSED_WITHIN {
            return Err((chain.end(), gap));
        }
        let stroke = strokes.remove(index);
        let stroke = if turned { stroke.reversed() } else { stroke };
        let base = if at_start {
            chain.reversed()
        } else {
            chain.clone()
        };
        let joined = move_end(&base, stroke.start()).and_then(|base| base.then(&stroke));
        let Ok(joined) = joined else {
            return Err((chain.end(), gap));
        };
        chain = if at_start { joined.reversed() } else { joined };
    }
    Ok(Some(chain))
}

/// The curve with its end carried to a point nearby, the handle there going along.
pub(super) fn move_end(curve: &Curve, to: Point) -> Result<Curve, GeometryError> {
    let by = to - curve.end();
    let mut segments = curve.segments().to_vec();
    match segments.last_mut() {
        Some(PathSeg::Line(line)) => line.p1 = to,
        Some(PathSeg::Quad(quad)) => quad.p2 = to,
        Some(PathSeg::Cubic(cubic)) => {
            cubic.p2 += by;
            cubic.p3 = to;
        }
        None => {}
    }
    Curve::new(segments)
}

/// The curve with both ends carried to points nearby.
pub(super) fn move_ends(curve: &Curve, [from, to]: [Point; 2]) -> Result<Curve, GeometryError> {
    let curve = move_end(curve, to)?;
    Ok(move_end(&curve.reversed(), from)?.reversed())
}

/// The gap between two edges, if it is too wide to be closed.
pub(super) fn open(before: &str, after: &str, at: Point, gap: f64) -> TracedError {
    TracedError::Open {
        before: before.to_owned(),
        after: after.to_owned(),
        gap,
        at,
    }
}
