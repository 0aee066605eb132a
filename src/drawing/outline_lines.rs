//! Stitching and cutting lines of a piece.

use kurbo::{BezPath, ParamCurve, PathSeg};

use super::pens::{CUTTING, FOLD_DASHES, STITCHING, STITCHING_WITHIN};
use super::piece_layers::PieceLayers;
use super::strokes::{chain, closed, stroke};
use super::{DrawnPath, Pen, path_names};
use crate::geometry::{Curve, tolerance, with_next};
use crate::piece::{EdgeRole, Piece};

/// Draws the stitching line, and the cut line if there is one.
pub(super) fn draw(out: &mut PieceLayers, piece: &Piece, cut: Option<&Curve>) {
    if let Some(cut) = cut {
        cut_line(out, piece, cut);
    }
    for edge in piece.outline().edges() {
        let pen = match (edge.role(), cut) {
            (EdgeRole::Fold, _) => Pen::solid(STITCHING).dashed(&FOLD_DASHES),
            (_, None) => Pen::solid(STITCHING),
            (_, Some(_)) => Pen::solid(STITCHING_WITHIN).dashed(&[4.0, 2.0]),
        };
        let name = path_names::edge(piece.name(), edge.name());
        out.stitching
            .push(DrawnPath::stroked(edge.curve().to_path(), pen).named(name));
    }
}

/// The cut line: bold where the cloth is cut. Where it is laid on a fold it is dashed like one, on
/// either side of the fold itself, which bears its own name as every edge does.
fn cut_line(out: &mut PieceLayers, piece: &Piece, cut: &Curve) {
    let folds: Vec<&Curve> = piece
        .outline()
        .edges()
        .iter()
        .filter(|e| e.role() == EdgeRole::Fold)
        .map(crate::piece::Edge::curve)
        .collect();
    let on_fold = |s: &PathSeg| folds.iter().any(|fold| lies_on(s, fold));
    let segments = cut.segments();
    if !segments.iter().any(on_fold) {
        out.cutting
            .push(DrawnPath::stroked(closed(segments), Pen::solid(CUTTING)));
        return;
    }
    // From where a fold ends once round, so that no stretch is broken in two.
    let from = with_next(segments)
        .position(|(this, next)| on_fold(this) && !on_fold(next))
        .map_or(0, |k| k + 1);
    let mut round: Vec<PathSeg> = segments.to_vec();
    round.rotate_left(from);
    for stretch in round.chunk_by(|a, b| on_fold(a) == on_fold(b)) {
        if stretch.first().is_some_and(on_fold) {
            let pen = Pen::solid(STITCHING).dashed(&FOLD_DASHES);
            for beyond in beyond_fold(stretch, &folds) {
                out.stitching.push(DrawnPath::stroked(beyond, pen.clone()));
            }
        } else {
            out.cutting
                .push(DrawnPath::stroked(chain(stretch), Pen::solid(CUTTING)));
        }
    }
}

/// Whether a part of a line lies on a fold, which is straight, or on the same line beyond its ends.
fn lies_on(part: &PathSeg, fold: &Curve) -> bool {
    let along = (fold.end() - fold.start()).normalize();
    let off = |t: f64| (part.eval(t) - fold.start()).cross(along).abs();
    [0.0, 0.5, 1.0].iter().all(|t| off(*t) < tolerance::PRINT)
}

/// What of a stretch of the cut line on a fold runs on beyond the fold's ends, across allowances.
fn beyond_fold(stretch: &[PathSeg], folds: &[&Curve]) -> Vec<BezPath> {
    let (Some(first), Some(last)) = (stretch.first(), stretch.last()) else {
        return Vec::new();
    };
    let Some(fold) = folds.iter().find(|fold| lies_on(first, fold)) else {
        return vec![chain(stretch)];
    };
    [[first.start(), fold.start()], [fold.end(), last.end()]]
        .into_iter()
        .filter(|[from, to]| from.distance(*to) >= tolerance::PRINT)
        .map(|ends| stroke(&ends))
        .collect()
}
