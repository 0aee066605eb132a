//! Notches, points and the grain from what is drawn.

use super::named_path::NamedPath;
use super::place::grain;
use super::{CLOSED_WITHIN, TracedError};
use crate::geometry::kurbo::{Affine, Rect, Shape as _};
use crate::geometry::{Curve, Point, arc_length, intersect_lines};
use crate::piece::{NamedPoint, Notch, NotchKind, Piece};

/// An end that lies nearer to the outline than this lies on it, in millimetres.
const ON: f64 = 0.01;

/// A notch that lies nearer than this to a joint of its edge lies on it, in millimetres: alterations divide
/// edges at notches, and a sliver of an edge has no direction.
const NEAR_JOINT: f64 = 0.05;

/// A place along an edge, or that of the joint that lies there.
pub(super) fn on_joint(edge: &Curve, at: f64, within: f64) -> f64 {
    let mut walked = 0.0;
    for segment in edge.segments() {
        walked += arc_length(segment);
        if (walked - at).abs() < within {
            return walked;
        }
    }
    at
}

/// The place on the outline that an end just misses, or the end as it is.
pub(super) fn onto(end: Point, ring: &[Curve]) -> Point {
    let nearest = ring.iter().map(|edge| (edge, edge.nearest(end)));
    let Some((edge, (far, at))) = nearest.min_by(|a, b| a.1.0.total_cmp(&b.1.0)) else {
        return end;
    };
    if far <= ON || far > CLOSED_WITHIN {
        return end;
    }
    edge.point_at(at).map_or(end, |(on, _)| on)
}

/// The notches: their cuts begin or end on the edge.
pub(super) fn notches(
    paths: &[&NamedPath],
    placed: Affine,
    model: &Piece,
    ring: &[Curve],
) -> Result<Vec<Notch>, TracedError> {
    let mut notches: Vec<(Notch, Vec<f64>)> = Vec::new();
    for path in paths {
        let Some(name) = path.part.strip_suffix("_notch") else {
            continue;
        };
        let usual = model.notches().iter().find(|notch| notch.name == name);
        let ends: Vec<Point> = path.corners().into_iter().map(|at| placed * at).collect();
        let edges = model.outline().edges().iter().zip(ring);
        let mine = edges.filter(|(edge, _)| usual.is_none_or(|notch| notch.edge == *edge.name()));
        let met = mine.flat_map(|(edge, curve)| {
            let ends = ends.iter();
            ends.map(move |end| (edge, curve.nearest(*end)))
        });
        let Some((edge, (far, at))) = met.min_by(|a, b| a.1.0.total_cmp(&b.1.0)) else {
            return Err(path.fault("it has no edge", "draw it from the edge inward"));
        };
        if far > CLOSED_WITHIN {
            let problem = format!("it begins {far:.1} mm from the edge");
            return Err(path.fault(problem, "draw it from the edge inward"));
        }
        if let Some((_, cuts)) = notches.iter_mut().find(|(notch, _)| notch.name == name) {
            cuts.push(at);
            continue;
        }
        let notch = Notch {
            name: name.to_owned(),
            edge: edge.name().clone(),
            at,
            kind: NotchKind::Single,
        };
        notches.push((notch, vec![at]));
    }
    let whole = notches.into_iter().map(|(mut notch, cuts)| {
        let middle = cuts.iter().sum::<f64>() / cuts.len() as f64;
        let edges = model.outline().edges().iter().zip(ring);
        let mut edges = edges.filter(|(edge, _)| *edge.name() == notch.edge);
        let edge = edges.next().map(|(_, curve)| curve);
        notch.at = edge.map_or(middle, |edge| on_joint(edge, middle, NEAR_JOINT));
        if cuts.len() > 1 {
            notch.kind = NotchKind::Double;
        }
        notch
    });
    Ok(whole.collect())
}

/// The named points: where two strokes cross, where a single one starts, or the middle of a ring.
pub(super) fn points(paths: &[&NamedPath], placed: Affine, model: &Piece) -> Vec<NamedPoint> {
    let marked = paths.iter().filter_map(|path| {
        let short = path.part.strip_suffix("_point")?;
        let known = |name: &str| model.points().iter().any(|point| point.name == name);
        let name = if known(&path.part) || short == "bust" {
            &path.part
        } else {
            short
        };
        let strokes = path.strokes();
        let at = match &strokes[..] {
            [one, other] => intersect_lines(
                one.start(),
                one.end() - one.start(),
                other.start(),
                other.end() - other.start(),
            )
            .ok()?,
            [one] if one.start().distance(one.end()) > ON => one.start(),
            _ => path.path.bounding_box().center(),
        };
        Some(NamedPoint {
            name: name.to_owned(),
            at: placed * at,
        })
    });
    marked.collect()
}

/// The grain line as drawn, from low to high; else upright through the middle of the piece.
pub(super) fn grain_line(paths: &[&NamedPath], placed: Affine, ring: &[Curve]) -> [Point; 2] {
    if let Some(ends) = grain(paths) {
        let [a, b] = ends.map(|at| placed * at);
        return if a.y >= b.y { [a, b] } else { [b, a] };
    }
    let bounds = ring.iter().map(Curve::bounds).reduce(|a, b| a.union(b));
    let bounds = bounds.unwrap_or(Rect::ZERO);
    let (x, quarter) = (bounds.center().x, 0.25 * bounds.height());
    [
        Point::new(x, bounds.y1 - quarter),
        Point::new(x, bounds.y0 + quarter),
    ]
}
