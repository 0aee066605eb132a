//! The centre seam of unlike halves, trued at the hem.
//!
//! An alteration of one half may give its centre length, as room for the bust does: the lower part of
//! the front comes down. Or it may take length, as the reduction of one half of the back. The other
//! half lacks it, and both are sewn together down the middle. A cutter trues that at the hem, or
//! at the waist seam of a bodice: raised or lowered at the centre, to nothing half way to the side seam.
//! Both halves meet half way: made on the other side too, it comes to what it is on both.

use crate::alterations::cutting::quarter::{centre, hem, quarters};
use crate::alterations::cutting::stations::{Station, move_edge};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::widths::waist_wedge::waist_wedge;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, Vec2, tolerance};
use crate::piece::{BodySide, EdgeRole, Pattern, Piece, Warning};

/// Both halves with their centres of one length: they meet half way.
pub(in crate::alterations) fn true_centres(
    halves: [Pattern; 2],
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
        if longer.abs() <= tolerance::POINT {
            continue;
        }
        let by = [-0.5 * longer, 0.5 * longer];
        for (side, (half, by)) in BodySide::BOTH
            .into_iter()
            .zip([&mut left, &mut right].into_iter().zip(by))
        {
            let Some(piece) = half.piece(&name) else {
                continue;
            };
            let at_hem = ends_at_hem(piece);
            let trued = if at_hem {
                lowered_at_centre(piece, by)?
            } else {
                waist_wedge(piece, -by)?
            };
            warnings.push(warning(
                &name,
                side,
                (if at_hem { "hem" } else { "waist" }, by),
            ));
            *half = replaced(half, trued)?;
        }
    }
    Ok(([left, right], warnings))
}

fn warning(piece: &str, side: BodySide, (edge, by): (&str, f64)) -> Warning {
    let how = if by > 0.0 { "lowered" } else { "raised" };
    let by = by.abs();
    Warning::new(
        "centre_trued",
        format!(
            "the {edge} of the {piece} {side} is {how} by {by:.1} mm at the centre, to nothing toward the side, so that both sides of the centre seam have one length"
        ),
    )
}

/// Length of the fold of a piece.
fn fold_length(piece: &Piece) -> Option<f64> {
    let fold = piece.outline().edge(&centre(piece)?.1)?;
    (fold.role() == EdgeRole::Fold).then(|| fold.curve().length())
}

/// Whether the fold of a piece goes down to a hem.
fn ends_at_hem(piece: &Piece) -> bool {
    let ends = || {
        let fold = piece.outline().edge(&centre(piece)?.1)?.curve();
        let hem = piece.outline().edge(hem(piece)?)?.curve();
        Some(hem.end().distance(fold.start()) <= tolerance::POINT)
    };
    ends().unwrap_or(false)
}

/// The piece with its hem lowered at the centre, to nothing half way to the side.
fn lowered_at_centre(piece: &Piece, by: f64) -> Result<Piece, AlterationError> {
    let (Some((_, fold_name)), Some(hem)) = (centre(piece), hem(piece)) else {
        return Ok(piece.clone());
    };
    let mut sketch = Sketch::of(piece);
    let fold = sketch.curve(&fold_name)?.clone();
    let down = Vec2::new(0.0, by);
    let length = sketch.curve(hem)?.length();
    let stations = [
        Station::new(0.5 * length, Vec2::ZERO),
        Station::new(length, down),
    ];
    move_edge(&mut sketch, piece, hem, &stations)?;
    sketch.replace(&fold_name, Curve::line(fold.start() + down, fold.end())?)?;
    sketch.finish()
}
