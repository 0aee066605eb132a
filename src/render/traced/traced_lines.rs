//! Balance lines from what is drawn. They are drawn broken at open darts: a gap across a dart is
//! bridged, and a line that stops at a dart goes on to the edge that the dart opens on.

use super::ends::move_ends;
use super::named_path::NamedPath;
use super::traced_marks::onto;
use super::{CLOSED_WITHIN, TracedError};
use crate::geometry::kurbo::Affine;
use crate::geometry::{Curve, Point, Vec2, crossings};
use crate::piece::{BalanceLine, Dart};

/// Farther than across any piece, in millimetres.
const FAR: f64 = 3000.0;

/// The balance lines, from the fold outward; ends that miss the outline by a little are carried there.
pub(super) fn lines(
    paths: &[&NamedPath],
    placed: Affine,
    ring: &[Curve],
    darts: &[Dart],
) -> Result<Vec<BalanceLine>, TracedError> {
    let mut lines = Vec::new();
    for path in paths {
        let Some(name) = path.part.strip_suffix("_line") else {
            continue;
        };
        let off = || path.fault("it lies off the paper", "draw it in true size");
        let outward = |stroke: &Curve| {
            let segments = stroke.segments().iter().map(|segment| placed * *segment);
            let curve = Curve::new(segments.collect()).map_err(|_| off())?;
            let inward = curve.end().x < curve.start().x;
            Ok(if inward { curve.reversed() } else { curve })
        };
        let strokes: Result<Vec<Curve>, TracedError> = path.strokes().iter().map(outward).collect();
        let mut strokes = strokes?;
        strokes.sort_by(|a, b| a.start().x.total_cmp(&b.start().x));
        let mut strokes = strokes.into_iter();
        let one = || path.fault("a balance line is one stroke", "draw it as one line");
        let mut curve = strokes.next().ok_or_else(one)?;
        for next in strokes {
            let (from, to) = (curve.end(), next.start());
            if !darts
                .iter()
                .any(|dart| meets(dart, from) && meets(dart, to))
            {
                return Err(one());
            }
            let joined = if from.distance(to) > CLOSED_WITHIN {
                Curve::line(from, to).and_then(|gap| curve.then(&gap)?.then(&next))
            } else {
                move_ends(&curve, [curve.start(), to]).and_then(|curve| curve.then(&next))
            };
            curve = joined.map_err(|_| off())?;
        }
        let curve = carried_on(curve, ring, darts);
        let curve = carried_on(curve.reversed(), ring, darts).reversed();
        let ends = [curve.start(), curve.end()].map(|end| onto(end, ring));
        let curve = move_ends(&curve, ends).map_err(|_| off())?;
        lines.push(BalanceLine {
            name: name.to_owned(),
            curve,
        });
    }
    Ok(lines)
}

/// Whether a place lies on a leg or at the point of a dart.
fn meets(dart: &Dart, at: Point) -> bool {
    let drawn = Curve::polyline(&dart.to_polyline());
    drawn.is_ok_and(|drawn| drawn.nearest(at).0 < CLOSED_WITHIN)
}

/// The line carried on to the edge, as it goes, if it stops at a dart and not at an edge.
fn carried_on(curve: Curve, ring: &[Curve], darts: &[Dart]) -> Curve {
    let (end, along): (Point, Vec2) = (curve.end(), curve.end_direction());
    let on_edge = ring.iter().any(|edge| edge.nearest(end).0 < CLOSED_WITHIN);
    if on_edge
        || !darts
            .iter()
            .any(|dart| dart.edge.is_some() && meets(dart, end))
    {
        return curve;
    }
    let met = Curve::line(end, end + along * FAR).ok().and_then(|ray| {
        let met = ring
            .iter()
            .flat_map(|edge| crossings(ray.segments(), edge.segments()));
        met.map(|crossing| crossing.point)
            .min_by(|a, b| a.distance(end).total_cmp(&b.distance(end)))
    });
    let on = met.and_then(|met| curve.clone().then(&Curve::line(end, met).ok()?).ok());
    on.unwrap_or(curve)
}
