//! The ring of a piece from its drawn edges.

use super::ends::{chained, move_ends, open};
use super::named_path::NamedPath;
use super::{CLOSED_WITHIN, TracedError};
use crate::geometry::kurbo::Affine;
use crate::geometry::{Curve, Point, signed_area, with_next};
use crate::piece::{EdgeRole, Piece};

/// The edges of a piece in the order of its model, each walked in the direction of the outline.
/// The places are those of the drawing, where gaps are no wider than [`CLOSED_WITHIN`].
pub(super) fn ring(paths: &[&NamedPath], model: &Piece) -> Result<Vec<Curve>, TracedError> {
    let edges = model.outline().edges();
    let name = |index: usize| {
        let edge = edges.get(index % edges.len().max(1));
        let edge = edge.map_or("", |edge| edge.name().as_str());
        format!("{}.{edge}", model.name()).replace(' ', "-")
    };
    let mut curves = Vec::with_capacity(edges.len());
    for (index, edge) in edges.iter().enumerate() {
        let mine = paths
            .iter()
            .filter(|path| path.part == edge.name().as_str());
        let strokes: Vec<Curve> = mine.flat_map(|path| path.strokes()).collect();
        let curve = chained(strokes)
            .map_err(|(at, gap)| open(&name(index), &name(index), at, gap))?
            .ok_or_else(|| TracedError::Missing {
                name: name(index),
                place: format!(
                    "it is the {} between `{}` and `{}`",
                    if edge.role() == EdgeRole::Fold {
                        "fold"
                    } else {
                        "edge"
                    },
                    name(index + edges.len() - 1),
                    name(index + 1)
                ),
            })?;
        curves.push(curve);
    }
    let curves = directed(&curves);
    for (index, (this, next)) in with_next(&curves).enumerate() {
        let (at, gap) = (this.end(), this.end().distance(next.start()));
        if gap > CLOSED_WITHIN {
            return Err(open(&name(index), &name(index + 1), at, gap));
        }
    }
    Ok(curves)
}

/// Every edge in the direction in which it goes on to the next.
fn directed(curves: &[Curve]) -> Vec<Curve> {
    let near = |at: Point, of: &Curve| at.distance(of.start()).min(at.distance(of.end()));
    let count = curves.len();
    let turned = curves.iter().enumerate().map(|(index, curve)| {
        let before = curves.get((index + count - 1) % count).unwrap_or(curve);
        let after = curves.get((index + 1) % count).unwrap_or(curve);
        let forward = near(curve.end(), after) + near(curve.start(), before);
        let backward = near(curve.start(), after) + near(curve.end(), before);
        if backward < forward {
            curve.reversed()
        } else {
            curve.clone()
        }
    });
    turned.collect()
}

/// Whether a ring is drawn as the mirror of the model's.
pub(super) fn is_mirrored(ring: &[Curve], model: &Piece) -> bool {
    let area: f64 = ring.iter().map(|curve| signed_area(curve.segments())).sum();
    area * model.outline().area() < 0.0
}

/// The ring carried along, its joints closed, its folds straight and at x = 0.
pub(super) fn closed(
    ring: &[Curve],
    placed: Affine,
    model: &Piece,
) -> Result<Vec<Curve>, TracedError> {
    let carried: Vec<Curve> = ring
        .iter()
        .map(|curve| {
            let segments = curve.segments().iter().map(|segment| placed * *segment);
            Curve::new(segments.collect())
        })
        .collect::<Result<_, _>>()
        .map_err(|_| too_far(model))?;
    let folds: Vec<bool> = model
        .outline()
        .edges()
        .iter()
        .map(|edge| edge.role() == EdgeRole::Fold)
        .collect();
    let is_fold = |index: usize| {
        folds
            .get(index % folds.len().max(1))
            .copied()
            .unwrap_or(false)
    };
    let joints: Vec<Point> = with_next(&carried)
        .enumerate()
        .map(|(index, (this, next))| {
            let joint = this.end().midpoint(next.start());
            let x = if is_fold(index) || is_fold(index + 1) {
                0.0
            } else {
                joint.x
            };
            Point::new(x, joint.y)
        })
        .collect();
    let count = joints.len();
    let closed = carried.iter().enumerate().map(|(index, curve)| {
        let from = joints.get((index + count - 1) % count).copied();
        let to = joints.get(index).copied();
        let ends = [from.unwrap_or(curve.start()), to.unwrap_or(curve.end())];
        if is_fold(index) && curve.is_straight(CLOSED_WITHIN) {
            Curve::line(ends[0], ends[1])
        } else {
            move_ends(curve, ends)
        }
    });
    closed.collect::<Result<_, _>>().map_err(|_| too_far(model))
}

pub(super) fn too_far(model: &Piece) -> TracedError {
    TracedError::Missing {
        name: model.name().to_owned(),
        place: "it is drawn farther off than any paper reaches".to_owned(),
    }
}
