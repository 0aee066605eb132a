//! An edge from which a dart has gone, drawn in one again.
//!
//! Where a dart closed, an edge is a chain of parts with a blend on either side of where it was. What
//! works on whole edges wants the one or two curves that were drafted.

use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Vec2, root, tolerance, without_slivers};
use crate::piece::{EdgeName, Piece};

/// The edge drawn in one strays from what it was by at most this, in millimetres: what the blends
/// beside a dart add to it.
const STRAYS: f64 = 0.4;

/// Handles to start from, as shares of the straight way.
const STARTS: [[f64; 2]; 3] = [[0.33, 0.33], [0.2, 0.5], [0.5, 0.2]];

/// How often a correction of the handles is halved at most.
const HALVINGS: usize = 6;

/// So many places are compared, so often are the handles corrected, at steps of so many millimetres.
const SAMPLES: u32 = 11;
const ROUNDS: usize = 20;
const STEP: f64 = 1e-3;

/// A handle is at least and at most so many times as long as the straight way.
const HANDLES: (f64, f64) = (0.01, 1.1);

/// The piece with an edge that has no dart drawn in one curve: an armscye in two, which meet at its
/// notch. An edge that no such curve follows stays.
pub(in crate::alterations) fn redrawn(
    piece: Piece,
    name: &EdgeName,
) -> Result<Piece, AlterationError> {
    let Some(curve) = piece.outline().edge(name).map(|edge| edge.curve()) else {
        return Ok(piece);
    };
    if !piece.mouths(name).is_empty() || curve.segments().len() == 1 {
        return Ok(piece);
    }
    let curve = &without_slivers(curve, &[])?;
    let parted = match piece.notches().iter().find(|n| n.edge == *name) {
        Some(notch) if *name == EdgeName::ARMSCYE => curve.split_at(notch.at).map(Some)?,
        _ => None,
    };
    let drawn = match &parted {
        Some((upper, lower)) => smooth_pair(upper, lower),
        None => smooth(curve, [curve.start_direction(), curve.end_direction()]),
    };
    let Some(drawn) = drawn else {
        return Ok(piece);
    };
    let mut sketch = Sketch::of(&piece);
    sketch.replace(name, drawn)?;
    sketch.finish_sewn(&piece)
}

/// Two curves that meet without a corner.
fn smooth_pair(upper: &Curve, lower: &Curve) -> Option<Curve> {
    let across = (upper.end_direction() + lower.start_direction()).normalize();
    let one = smooth(upper, [upper.start_direction(), across])?;
    let other = smooth(lower, [across, lower.end_direction()])?;
    one.then(&other).ok()
}

/// The cubic, or the straight line, that follows a curve best and is as long; nothing where it strays.
fn smooth(curve: &Curve, ways: [Vec2; 2]) -> Option<Curve> {
    let (from, to) = (curve.start(), curve.end());
    let line = Curve::line(from, to).ok()?;
    if strays(&line, curve) <= tolerance::SEAM_ALTERED {
        return Some(line);
    }
    let [leave, arrive] = ways;
    let drawn = |handles: [f64; 2]| {
        let [first, second] = handles;
        Curve::hermite(from, leave * first, to, arrive * second)
    };
    let chord = from.distance(to);
    let handles = STARTS
        .into_iter()
        .filter_map(|start| settled(&drawn, start.map(|share| share * chord), curve))
        .min_by(|a, b| a.0.total_cmp(&b.0))?
        .1;
    let length = curve.length();
    let scaled = |by: f64| drawn(handles.map(|h| h * by));
    let by = root("handles of an edge in one", 0.8, 1.2, |by| {
        scaled(by).map_or(f64::NAN, |c| c.length() - length)
    });
    let whole = scaled(by.ok()?).ok()?;
    (strays(&whole, curve) <= STRAYS).then_some(whole)
}

/// The handles that follow the curve best from where they start, and how well: each correction is
/// halved until it helps.
fn settled(
    drawn: &impl Fn([f64; 2]) -> Result<Curve, GeometryError>,
    start: [f64; 2],
    curve: &Curve,
) -> Option<(f64, [f64; 2])> {
    let chord = curve.start().distance(curve.end());
    let missed = |handles: [f64; 2]| {
        let usual = handles
            .iter()
            .all(|h| (HANDLES.0 * chord..=HANDLES.1 * chord).contains(h));
        let beside = usual
            .then(|| beside(&drawn(handles).ok()?, curve).ok())
            .flatten();
        beside.map_or(f64::INFINITY, |all| all.iter().map(|b| b * b).sum())
    };
    let (mut handles, mut least) = (start, missed(start));
    for _ in 0..ROUNDS {
        let [first, second] = correction(drawn, handles, curve)?;
        let tried = std::iter::successors(Some(1.0), |share| Some(0.5 * share))
            .take(HALVINGS)
            .map(|share| {
                let [old, other] = handles;
                let tried = [old + share * first, other + share * second];
                (missed(tried), tried)
            });
        let Some((misses, better)) = tried.into_iter().find(|(misses, _)| *misses < least) else {
            break;
        };
        let gained = least - misses;
        (handles, least) = (better, misses);
        if gained <= 1e-12 {
            break;
        }
    }
    Some((least, handles))
}

/// Places evenly along a curve, and how far each lies beside another, with its side.
fn beside(curve: &Curve, other: &Curve) -> Result<Vec<f64>, GeometryError> {
    let places = (1..SAMPLES).map(|step| f64::from(step) / f64::from(SAMPLES));
    places
        .map(|share| {
            let (point, _) = curve.point_at(share * curve.length())?;
            let (near, way): (Point, Vec2) = other.point_at(other.nearest(point).1)?;
            Ok(way.cross(point - near))
        })
        .collect()
}

fn strays(curve: &Curve, other: &Curve) -> f64 {
    let beside = beside(curve, other);
    beside.map_or(f64::INFINITY, |all| {
        all.into_iter().fold(0.0, |most, by| by.abs().max(most))
    })
}

/// By how much the two handles are to change, to first order: least squares (Gauss and Newton).
fn correction(
    drawn: &impl Fn([f64; 2]) -> Result<Curve, GeometryError>,
    [first, second]: [f64; 2],
    curve: &Curve,
) -> Option<[f64; 2]> {
    let misses = |handles| beside(&drawn(handles).ok()?, curve).ok();
    let now = misses([first, second])?;
    let by_first = misses([first + STEP, second])?;
    let by_second = misses([first, second + STEP])?;
    let (mut aa, mut ab, mut bb, mut am, mut bm) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for ((now, first), second) in now.iter().zip(by_first).zip(by_second) {
        let (a, b) = ((first - now) / STEP, (second - now) / STEP);
        (aa, ab, bb) = (aa + a * a, ab + a * b, bb + b * b);
        (am, bm) = (am + a * now, bm + b * now);
    }
    let det = aa * bb - ab * ab;
    if det.abs() < 1e-12 {
        return None;
    }
    Some([(ab * bm - bb * am) / det, (ab * am - aa * bm) / det])
}
