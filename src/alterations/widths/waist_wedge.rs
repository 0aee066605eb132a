//! A wedge taken from the waist at the fold.

use super::redrawn_waist::{WaistMoves, from_fold, redraw_waist};
use super::undarted_waist::move_undarted_waist;
use crate::alterations::cutting::quarter;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, Vec2};
use crate::piece::{EdgeName, Piece};

/// On a bodice or skirt: a wedge from the waist at the fold, to nothing at the side seam. The
/// waist edge is redrawn from the moved centre, square to the fold, at its sewn length, each
/// dart at its old distance from the fold and with its old apex level.
pub(in crate::alterations) fn waist_wedge(
    piece: &Piece,
    amount: f64,
) -> Result<Piece, AlterationError> {
    let missing = || AlterationError::Missing {
        what: format!("a waist edge on the {} that ends on the fold", piece.name()),
        advice: "a centre is made shorter at the waist of a piece cut on the fold",
    };
    let centre = quarter::centre(piece).ok_or_else(missing)?.1;
    let edge = |name: &EdgeName| {
        let edge = piece.outline().edge(name).ok_or_else(missing)?;
        Ok::<_, AlterationError>(edge.curve())
    };
    let (waist, fold) = (edge(&EdgeName::WAIST)?, edge(&centre)?);
    let from_fold = from_fold(piece);
    // The centre comes up on a bodice, down on a skirt: either way its fold gets shorter.
    let step = Vec2::new(0.0, if from_fold { amount } else { -amount });
    let mut sketch = Sketch::of(piece);
    let moves = WaistMoves {
        centre: step,
        side: Vec2::ZERO,
        longer: 0.0,
        apex: &|_| 0.0,
    };
    if piece.mouths(&EdgeName::WAIST).is_empty() {
        move_undarted_waist(&mut sketch, piece, step)?;
    } else {
        redraw_waist(&mut sketch, piece, &moves)?;
    }
    let grain = &mut sketch.parts_mut().grain;
    let fold = if from_fold {
        let top = waist.start() + step;
        grain[1].y = grain[1].y.max(top.y + 18.0);
        Curve::line(fold.start(), top)?
    } else {
        let bottom = waist.end() + step;
        grain[0].y = grain[0].y.min(bottom.y - 12.0);
        Curve::line(bottom, fold.end())?
    };
    sketch.replace(&centre, fold)?;
    sketch.finish()
}
