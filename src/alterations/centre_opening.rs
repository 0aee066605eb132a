//! A slash from the centre to a hinge at the side seam, opened at the centre.

use super::quarter::{centre, hem, upper};
use super::redrawn_waist::{WaistMoves, redraw_waist};
use super::stations::{Station, move_edge};
use super::{AlterationError, Sketch};
use crate::geometry::{Curve, Vec2};
use crate::piece::Piece;

/// Least distance of the grain line's ends from waist and hem, in millimetres.
const GRAIN_INSIDE: f64 = 18.0;

/// Opens a piece (or closes it) at its centre along a slash to a hinge at the side seam, and
/// trues it.
///
/// The turned panel leans away from the fold by as much as it leans over the side seam. The fold
/// is drawn straight again, which gives that width, and the side seam is drawn back to where it
/// was, which takes it: what remains is the centre's gain. On a skirt the upper panel turns: the
/// waist rises at the centre, to nothing at the side seam, its darts' apexes with it, and the
/// darts take in what keeps its length. In one piece from neck to hem the lower panel
/// turns: the hem drops at the centre.
pub(super) fn open_centre(piece: &Piece, amount: f64) -> Result<Piece, AlterationError> {
    let Some((_, fold_name)) = centre(piece) else {
        return Err(AlterationError::Missing {
            what: format!("a centre edge on the {}", piece.name()),
            advice: "seat and abdomen are altered on pieces with a centre",
        });
    };
    let mut sketch = Sketch::of(piece);
    let fold = sketch.curve(&fold_name)?.clone();
    // Walked up from the hem, as every block with a hem is.
    let (low, high) = (fold.start(), fold.end());
    if upper(piece) {
        let down = Vec2::new(0.0, amount);
        let edge = hem(piece).ok_or_else(|| AlterationError::Missing {
            what: format!("a hem on the {}", piece.name()),
            advice: "seat and abdomen are altered on a skirt, or on a block in one piece to the hem",
        })?;
        let length = sketch.curve(edge)?.length();
        let stations = [Station::new(0.0, Vec2::ZERO), Station::new(length, down)];
        move_edge(&mut sketch, piece, edge, &stations)?;
        sketch.replace(&fold_name, Curve::line(low + down, high)?)?;
        let grain = &mut sketch.parts_mut().grain;
        grain[0].y = grain[0].y.min(low.y + amount - GRAIN_INSIDE);
    } else {
        let up = Vec2::new(0.0, -amount);
        let moves = WaistMoves {
            centre: up,
            side: Vec2::ZERO,
            longer: 0.0,
            apex: &|along| -amount * (1.0 - along),
        };
        redraw_waist(&mut sketch, piece, &moves)?;
        sketch.replace(&fold_name, Curve::line(low, high + up)?)?;
        let grain = &mut sketch.parts_mut().grain;
        grain[1].y = grain[1].y.max(high.y - amount + GRAIN_INSIDE);
    }
    sketch.finish()
}
