//! A traced piece brought to where pieces lie: the fold at x = 0, the grain upright, levels shared.

use super::named_path::NamedPath;
use super::outline::is_mirrored;
use crate::geometry::kurbo::Affine;
use crate::geometry::{Curve, Point, Vec2, angle_between};
use crate::piece::{EdgeName, EdgeRole, Piece};

/// From the drawing to where the piece lies, levels left aside.
pub(super) fn upright(ring: &[Curve], paths: &[&NamedPath], model: &Piece) -> Affine {
    let mirror = if is_mirrored(ring, model) {
        Affine::scale_non_uniform(-1.0, 1.0)
    } else {
        Affine::IDENTITY
    };
    let edges = model.outline().edges().iter().zip(ring);
    let fold = edges
        .clone()
        .find(|(edge, _)| edge.role() == EdgeRole::Fold);
    let (at, along, wanted) = match fold {
        Some((_, fold)) => (
            fold.start(),
            fold.end() - fold.start(),
            Vec2::new(0.0, -1.0),
        ),
        None => {
            let cap = edges
                .clone()
                .find(|(edge, _)| *edge.name() == EdgeName::SLEEVE_CAP);
            let first = cap.or_else(|| edges.clone().next()).map(|(_, curve)| curve);
            let at = first.map_or(Point::ORIGIN, Curve::start);
            let across = first.map_or(Vec2::ZERO, |curve| curve.end() - curve.start());
            match grain(paths) {
                // Up is where the first edge lies beyond its ends.
                Some([low, high]) => {
                    let up = if (high - low).cross(across) > 0.0 {
                        high - low
                    } else {
                        low - high
                    };
                    (at, up, Vec2::new(0.0, -1.0))
                }
                None => (at, across, Vec2::new(1.0, 0.0)),
            }
        }
    };
    let (at, along) = (mirror * at, (mirror * along.to_point()).to_vec2());
    let turn = Affine::rotate(angle_between(along, wanted));
    let turned = turn * at;
    Affine::translate(-turned.to_vec2()) * turn * mirror
}

/// The ends of the drawn grain line.
pub(super) fn grain(paths: &[&NamedPath]) -> Option<[Point; 2]> {
    let line = paths.iter().find(|path| path.part == "grain")?;
    let strokes = line.strokes();
    let longest = strokes
        .iter()
        .max_by(|a, b| a.length().total_cmp(&b.length()))?;
    Some([longest.start(), longest.end()])
}

/// A level that pieces share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Level {
    Waist,
    Hip,
    Hem,
}

/// How far down a level of a placed piece lies.
pub(super) fn level(
    which: Level,
    ring: &[Curve],
    paths: &[&NamedPath],
    placed: Affine,
    model: &Piece,
) -> Option<f64> {
    let line = |name: &str| {
        let path = paths.iter().find(|path| path.part == name)?;
        let strokes = path.strokes();
        let ends = strokes.iter().flat_map(|s| [s.start(), s.end()]);
        // Where it meets the fold.
        let at = ends
            .map(|at| placed * at)
            .min_by(|a, b| a.x.abs().total_cmp(&b.x.abs()));
        at.map(|at| at.y)
    };
    let on_fold = |name: &EdgeName| {
        let mut edges = model.outline().edges().iter().zip(ring);
        let (_, curve) = edges.find(|(edge, _)| edge.name() == name)?;
        let ends = [placed * curve.start(), placed * curve.end()];
        let at = ends
            .into_iter()
            .min_by(|a, b| a.x.abs().total_cmp(&b.x.abs()));
        at.map(|at| at.y)
    };
    match which {
        Level::Waist => line("waist_line").or_else(|| on_fold(&EdgeName::WAIST)),
        Level::Hip => line("hip_line"),
        Level::Hem => on_fold(&EdgeName::HEM),
    }
}
