//! The armscye trued across the shoulder seam.

use super::one_way::softly_greater;
use super::upper_half::UpperHalf;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::elementary::exp;
use crate::geometry::{Curve, Point, Vec2};
use crate::piece::Pattern;
use std::f64::consts::PI;

/// Least turn that an armscye keeps between its direction at the shoulder point and the chord to
/// its width point, in radians: with less it would be straight, and then bend back.
const HOLLOW: f64 = 1.5 * PI / 180.0;

/// How an armscye that cannot be drawn with the lean that would do is sought: by so many radians more,
/// up to so many times.
const LEAN: f64 = 0.5 * PI / 180.0;
const LEANS: i32 = 24;

/// Inward and outward.
pub(in crate::alterations) const EITHER: [f64; 2] = [1.0, -1.0];

/// The pattern with its armscyes hollow on both sides of the shoulder seam.
///
/// Where the shoulder of one half got so flat, or its point juts out so far, that an armscye square
/// to it would bend back, it leaves the shoulder farther inward, and the other half's by as much
/// farther outward, as far as that one bears: sewn together the line runs on as before. Both keep
/// their lengths. Where neither bears it, that is refused.
pub(in crate::alterations) fn trued_across_shoulder(
    pattern: Pattern,
) -> Result<Pattern, AlterationError> {
    let (Ok(back), Ok(front)) = (UpperHalf::back(&pattern), UpperHalf::front(&pattern)) else {
        return Ok(pattern);
    };
    let (Some(behind), Some(before)) = (back.hollowness(), front.hollowness()) else {
        return Ok(pattern);
    };
    // What one lacks, as far as the other can have it; clockwise is inward.
    let lacks = |own: f64, other: f64| (HOLLOW - own).min(other - HOLLOW).max(0.0);
    let lean = lacks(behind.0, before.1) - lacks(before.0, behind.1);
    let mut trued = pattern.clone();
    for (half, turn) in [(&back, lean), (&front, -lean)] {
        if lean == 0.0 {
            break;
        }
        let mut sketch = Sketch::of(half.piece);
        let stay = (Vec2::ZERO, Vec2::ZERO);
        let drawn = half.armscye_kept(half.armscye.start(), turn, stay);
        let (armscye, width_point) = drawn.map_err(|_| juts(half))?;
        half.put_armscye(&mut sketch, armscye, width_point)?;
        trued = replaced(&trued, sketch.finish()?)?;
    }
    for half in [UpperHalf::back(&trued)?, UpperHalf::front(&trued)?] {
        if half.hollowness().is_some_and(|(hollow, _)| hollow < 0.0) {
            return Err(juts(&half));
        }
    }
    Ok(trued)
}

/// An armscye to be drawn at its old length: to another shoulder point, leaving it turned, its width
/// point and underarm shifted.
pub(in crate::alterations) struct Redrawn<'h> {
    half: &'h UpperHalf<'h>,
    tip: Point,
    turn: f64,
    shifts: (Vec2, Vec2),
}

impl<'h> Redrawn<'h> {
    /// Of one half: the shoulder point, the turn at it in radians, both shifts.
    pub fn of(half: &'h UpperHalf<'h>, (tip, turn, shifts): (Point, f64, (Vec2, Vec2))) -> Self {
        Self {
            half,
            tip,
            turn,
            shifts,
        }
    }

    fn rooms(&self) -> Option<(f64, f64)> {
        self.half.rooms_at(self.tip, self.turn, self.shifts)
    }

    fn leaning(&self, lean: f64) -> Result<(Curve, Point), AlterationError> {
        let turn = self.turn + lean;
        self.half.armscye_kept(self.tip, turn, self.shifts)
    }
}

/// Back and front armscye at their old lengths. Where one of them gets straight when it is drawn
/// square to its shoulder, it leaves the shoulder farther inward, as little as will do, and the other by as much
/// farther outward, so that sewn together the line runs on as before.
pub(in crate::alterations) fn kept_together(
    back: &Redrawn<'_>,
    front: &Redrawn<'_>,
) -> Result<[(Curve, Point); 2], AlterationError> {
    let lean = lean_between(back.rooms(), front.rooms());
    sought(lean, &EITHER, |lean| {
        Ok([back.leaning(lean)?, front.leaning(-lean)?])
    })
}

/// The armscye of one half at its old length, and how much farther inward than square it has to leave
/// the shoulder for that.
pub(in crate::alterations) fn kept_leaning(
    redrawn: &Redrawn<'_>,
    front: Option<&UpperHalf<'_>>,
) -> Result<(Curve, Point, f64), AlterationError> {
    // What it leans, a front gives.
    let sides: &[f64] = if front.is_some() { &EITHER } else { &[] };
    let front = front.and_then(UpperHalf::room);
    let lean = lean_between(redrawn.rooms(), front.map(|now| (now, now)));
    sought(lean, sides, |lean| {
        let (armscye, width_point) = redrawn.leaning(lean)?;
        Ok((armscye, width_point, lean))
    })
}

/// How much farther inward than square the back's armscye leaves the shoulder, and the front's farther
/// outward, in radians, so that both stay hollow: each with its room as it was and as it would be.
/// Nothing where one of them is in several parts, or is not there.
pub(in crate::alterations) fn lean_between(
    back: Option<(f64, f64)>,
    front: Option<(f64, f64)>,
) -> f64 {
    match (back, front) {
        (Some(back), Some(front)) => leaning(back.1, front.1) - leaning(back.0, front.0),
        _ => 0.0,
    }
}

/// How much room the back is given by the front, in radians: none where both have enough, and where
/// both together have none they are made equal. It follows from how both are now, whatever they
/// were: there and back is nothing, and in any order it is the same.
fn leaning(back: f64, front: f64) -> f64 {
    let apart = back - front;
    let most = softly_greater(back + front, 0.0, NOTHING);
    let near = FLAT.min(most);
    let free = most - near;
    let left = if apart.abs() <= free {
        apart.abs()
    } else {
        most - near * exp((free - apart.abs()) / near)
    };
    0.5 * (left.copysign(apart) - apart)
}

/// How far apart the rooms of back and front slow down before one of them has none, in radians.
const FLAT: f64 = 12.0 * PI / 180.0;

/// What both together are taken to have at least, softly, in radians.
const NOTHING: f64 = 1.0 * PI / 180.0;

/// What is drawn with a lean, or with the one nearest to it on either side that can be drawn.
pub(in crate::alterations) fn sought<T>(
    lean: f64,
    sides: &[f64],
    drawn: impl Fn(f64) -> Result<T, AlterationError>,
) -> Result<T, AlterationError> {
    let plain = drawn(lean);
    if plain.is_ok() {
        return plain;
    }
    let more = (1..=LEANS).map(|step| f64::from(step) * LEAN);
    let mut leans = more.flat_map(|more| sides.iter().map(move |side| lean + side * more));
    leans.find_map(|lean| drawn(lean).ok()).map_or(plain, Ok)
}

/// The pattern with its front armscye leaving the shoulder farther outward, at its old length: what
/// the back's leaves farther inward.
pub(in crate::alterations) fn front_leaned(
    pattern: Pattern,
    lean: f64,
) -> Result<Pattern, AlterationError> {
    if lean == 0.0 {
        return Ok(pattern);
    }
    let Ok(front) = UpperHalf::front(&pattern) else {
        return Ok(pattern);
    };
    let (tip, stay) = (front.armscye.start(), (Vec2::ZERO, Vec2::ZERO));
    let (armscye, width_point) = front.armscye_kept(tip, -lean, stay)?;
    let mut sketch = Sketch::of(front.piece);
    front.put_armscye(&mut sketch, armscye, width_point)?;
    replaced(&pattern, sketch.finish()?)
}

/// The refusal where neither half can give what one lacks.
fn juts(half: &UpperHalf<'_>) -> AlterationError {
    let (name, jut) = (half.piece.name(), half.jut());
    AlterationError::First {
        why: format!(
            "the shoulder point of the {name}, {jut:.0} mm outside the width line, leaves no hollow armscye on a shoulder as flat as this"
        ),
        advice: "alter by less, or give the width first (back_width or front_width)".to_owned(),
    }
}
