//! The armscye trued across the shoulder seam.

use super::sleeve::replaced;
use super::upper_half::UpperHalf;
use super::{AlterationError, Sketch};
use crate::geometry::Vec2;
use crate::piece::Pattern;
use std::f64::consts::PI;

/// Least turn that an armscye keeps between its direction at the shoulder point and the chord to
/// its width point, in radians: with less it would be straight, and then bend back.
const HOLLOW: f64 = 1.5 * PI / 180.0;

/// The pattern with its armscyes hollow on both sides of the shoulder seam.
///
/// Where the shoulder of one half got so flat, or its point juts out so far, that an armscye square
/// to it would bend back, it leaves the shoulder farther inward, and the other half's by as much
/// farther outward, as far as that one bears: sewn together the line runs on as before. Both keep
/// their lengths. Where neither bears it, that is refused.
pub(super) fn trued_across_shoulder(pattern: Pattern) -> Result<Pattern, AlterationError> {
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
