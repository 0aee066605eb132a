//! The centre seam of unlike halves, trued at the hem.
//!
//! An alteration of one half may give its centre a little length on the way, as room for the bust
//! does: the lower part of the front comes down. The other half has not got it, and both are sewn
//! together down the middle. A cutter trues that at the hem: raised or lowered at the centre, to
//! nothing at the side seam.

use super::quarter::{centre, hem, quarters};
use super::sleeve::replaced;
use super::stations::{Station, move_edge};
use super::{AlterationError, Sketch};
use crate::geometry::{Curve, Vec2, tolerance};
use crate::piece::{BodySide, EdgeRole, Pattern, Piece, Warning};

/// The most by which the hem is trued, in millimetres: more is length that was meant, and a hem
/// that would hang visibly uneven (common practice).
const MOST: f64 = 6.0;

/// Both halves with their centres of one length. On the side that stays nothing is moved; where
/// none stays, both meet half way.
pub(super) fn true_centres(
    halves: [Pattern; 2],
    stays: Option<BodySide>,
) -> Result<([Pattern; 2], Vec<Warning>), AlterationError> {
    let [mut left, mut right] = halves;
    let mut warnings = Vec::new();
    let names: Vec<String> = quarters(&left).map(|p| p.name().to_owned()).collect();
    for name in names {
        let lengths = [&left, &right].map(|half| fold_length(half.piece(&name)?));
        let [Some(on_left), Some(on_right)] = lengths else {
            continue;
        };
        let longer = on_left - on_right;
        if longer.abs() <= tolerance::POINT || longer.abs() > MOST {
            continue;
        }
        let by = match stays {
            Some(BodySide::Left) => [0.0, longer],
            Some(BodySide::Right) => [-longer, 0.0],
            None => [-0.5 * longer, 0.5 * longer],
        };
        for (side, (half, by)) in BodySide::BOTH
            .into_iter()
            .zip([&mut left, &mut right].into_iter().zip(by))
        {
            let Some(piece) = half.piece(&name).filter(|_| by != 0.0) else {
                continue;
            };
            let trued = lowered_at_centre(piece, by)?;
            *half = replaced(half, trued)?;
            warnings.push(warning(&name, side, by));
        }
    }
    Ok(([left, right], warnings))
}

fn warning(piece: &str, side: BodySide, by: f64) -> Warning {
    let how = if by > 0.0 { "lowered" } else { "raised" };
    let by = by.abs();
    Warning::new(
        "centre_trued",
        format!(
            "the hem of the {piece} {side} is {how} by {by:.1} mm at the centre, to nothing at the side, so that both sides of the centre seam have one length"
        ),
    )
}

/// Length of the fold of a piece that goes down to a hem.
fn fold_length(piece: &Piece) -> Option<f64> {
    let (_, name) = centre(piece)?;
    let (fold, hem) = (
        piece.outline().edge(&name)?,
        piece.outline().edge(hem(piece)?)?,
    );
    let meet = hem.curve().end().distance(fold.curve().start()) <= tolerance::POINT;
    (meet && fold.role() == EdgeRole::Fold).then(|| fold.curve().length())
}

/// The piece with its hem lowered at the centre, to nothing at the side.
fn lowered_at_centre(piece: &Piece, by: f64) -> Result<Piece, AlterationError> {
    let (Some((_, fold_name)), Some(hem)) = (centre(piece), hem(piece)) else {
        return Ok(piece.clone());
    };
    let mut sketch = Sketch::of(piece);
    let fold = sketch.curve(&fold_name)?.clone();
    let down = Vec2::new(0.0, by);
    let length = sketch.curve(hem)?.length();
    let stations = [Station::new(0.0, Vec2::ZERO), Station::new(length, down)];
    move_edge(&mut sketch, piece, hem, &stations)?;
    sketch.replace(&fold_name, Curve::line(fold.start() + down, fold.end())?)?;
    sketch.finish()
}
