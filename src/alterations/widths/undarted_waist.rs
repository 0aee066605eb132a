//! A waist without darts, raised or lowered at the centre.

use super::redrawn_waist::from_fold;
use crate::alterations::cutting::quarter::line_on_side;
use crate::alterations::cutting::stations::{Station, move_edge};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{GeometryError, Vec2, tolerance};
use crate::piece::{EdgeName, Piece};

/// Rounds in which the end of the waist is found: each is far closer than the one before.
const ROUNDS: usize = 12;

/// By how much the end is moved to see what that changes, in millimetres.
const TRIAL: f64 = 0.01;

/// The waist of a piece of which no dart opens there, moved up or down at the centre, to nothing at
/// the side. No dart takes back what that makes it longer or shorter, so its end slides that little
/// in or out, blended into the side seam above the hip line: waist and side seam keep their lengths.
///
/// # Errors
/// When no such end is found.
pub(in crate::alterations) fn move_undarted_waist(
    sketch: &mut Sketch,
    piece: &Piece,
    centre: Vec2,
) -> Result<(), AlterationError> {
    let lengths = |sketch: &Sketch| -> Result<[f64; 2], AlterationError> {
        Ok([
            sketch.curve(&EdgeName::WAIST)?.length(),
            sketch.curve(&EdgeName::SIDE_SEAM)?.length(),
        ])
    };
    let wanted = lengths(sketch)?;
    let drawn = |end: Vec2| -> Result<Sketch, AlterationError> {
        let mut drawn = sketch.clone();
        move_ends(&mut drawn, piece, centre, end)?;
        Ok(drawn)
    };
    let miss = |end: Vec2| -> Result<Vec2, AlterationError> {
        let [waist, side] = lengths(&drawn(end)?)?;
        Ok(Vec2::new(waist - wanted[0], side - wanted[1]))
    };
    let mut end = Vec2::ZERO;
    for _ in 0..ROUNDS {
        let off = miss(end)?;
        if off.hypot() <= tolerance::SOLVE {
            *sketch = drawn(end)?;
            return Ok(());
        }
        // Newton's step, the slopes by differences.
        let along = (miss(end + Vec2::new(TRIAL, 0.0))? - off) / TRIAL;
        let down = (miss(end + Vec2::new(0.0, TRIAL))? - off) / TRIAL;
        let turn = along.cross(down);
        end -= Vec2::new(off.cross(down) / turn, along.cross(off) / turn);
    }
    Err(AlterationError::Construction {
        step: "waist without darts at its length",
        source: GeometryError::Parallel,
    })
}

fn move_ends(
    sketch: &mut Sketch,
    piece: &Piece,
    centre: Vec2,
    end: Vec2,
) -> Result<(), AlterationError> {
    let (waist, side) = (&EdgeName::WAIST, &EdgeName::SIDE_SEAM);
    let at_ends = |length: f64, [start, end]: [Vec2; 2]| {
        [Station::new(0.0, start), Station::new(length, end)]
    };
    let from_fold = from_fold(piece);
    let length = sketch.curve(waist)?.length();
    let ends = if from_fold {
        [centre, end]
    } else {
        [end, centre]
    };
    move_edge(sketch, piece, waist, &at_ends(length, ends))?;
    let length = sketch.curve(side)?.length();
    // A skirt's side seam starts at the waist, a bodice's ends there.
    let stations = if from_fold {
        let hip = line_on_side(piece, "hip").unwrap_or(length);
        at_ends(hip, [end, Vec2::ZERO])
    } else {
        at_ends(length, [Vec2::ZERO, end])
    };
    move_edge(sketch, piece, side, &stations)
}
