//! Stitching and cutting lines of a piece.

use kurbo::{ParamCurve, PathSeg};

use super::pens::{CUTTING, FOLD_DASHES, STITCHING, STITCHING_WITHIN};
use super::piece_layers::PieceLayers;
use super::strokes::{chain, closed};
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
            // Across its allowances the fold is drawn with the cut line, which runs along it.
            (EdgeRole::Fold, Some(_)) => continue,
            (EdgeRole::Fold, None) => Pen::solid(STITCHING).dashed(&FOLD_DASHES),
            (_, None) => Pen::solid(STITCHING),
            (_, Some(_)) => Pen::solid(STITCHING_WITHIN).dashed(&[4.0, 2.0]),
        };
        let name = path_names::edge(piece.name(), edge.name());
        out.stitching
            .push(DrawnPath::stroked(edge.curve().to_path(), pen).named(name));
    }
}

/// The cut line: bold where the cloth is cut, dashed like a fold where it is laid on one.
fn cut_line(out: &mut PieceLayers, piece: &Piece, cut: &Curve) {
    let folds: Vec<&Curve> = piece
        .outline()
        .edges()
        .iter()
        .filter(|e| e.role() == EdgeRole::Fold)
        .map(crate::piece::Edge::curve)
        .collect();
    // The fold is straight, and so is what lies on it, carried on across the allowances.
    let on_fold = |s: &PathSeg| {
        folds.iter().any(|fold| {
            let along = (fold.end() - fold.start()).normalize();
            let off = |t: f64| (s.eval(t) - fold.start()).cross(along).abs();
            [0.0, 0.5, 1.0].iter().all(|t| off(*t) < tolerance::PRINT)
        })
    };
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
            out.stitching.push(DrawnPath::stroked(chain(stretch), pen));
        } else {
            out.cutting
                .push(DrawnPath::stroked(chain(stretch), Pen::solid(CUTTING)));
        }
    }
}
