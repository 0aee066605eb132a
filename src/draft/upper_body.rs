//! The frame of the upper body with its armscye fitted to the arm.

use super::frame::Frame;
use super::shaping::Shaping;
use super::{DraftError, Ease, Figure, WaistPlan, armscye};
use crate::geometry::{Span, tolerance};
use crate::piece::Warning;

/// How much longer the armscye gets for every millimetre its underarm is lowered: back and
/// front both go down, less what the corner saves (measured on drafts of the survey).
const LENGTH_PER_DEPTH: f64 = 1.83;

/// How far the underarm is moved from where the scye depth puts it to where the armscye fits
/// the arm: about halfway.
const ARM_SHARE: f64 = 0.5;

/// The underarm is never shifted further than this, in millimetres.
const MOST_SHIFT: f64 = 30.0;

/// Where only a deeper armscye takes a sleeve at all, it may go down this far, in millimetres.
const MOST_LOWERED: f64 = 60.0;

/// A shift of more than this is told, in millimetres.
const TOLD_SHIFT: f64 = 15.0;

/// Length of an armscye that fits the arm.
///
/// The armscye girth of the body is 144.4 + 0.7782 of the upper arm girth, with a spread of
/// 13 mm (computed from the 1988 U.S. Army survey, 2,208 women); ease below the arm lengthens
/// it on both sides, ease at the bust widens it.
fn armscye_for_arm(f: &Figure, ease: &Ease) -> f64 {
    144.4 + 0.7782 * f.upper_arm_girth + 1.15 * ease.armscye_depth + 0.17 * ease.bust
}

/// The least armscye that takes a sleeve: with 10 mm of ease its cap is a seventh longer than
/// the biceps line, which leaves a cap some 75 mm high on a mean arm.
fn least_armscye(f: &Figure, ease: &Ease) -> f64 {
    (f.upper_arm_girth + ease.upper_arm) * 8.0 / 7.0 - 10.0
}

/// The frame for a figure.
///
/// The underarm lies about midway between two levels: where the scye depth puts it, and where an
/// armscye that fits the arm closes. Either alone is uncertain: the scye depth by 12 mm from
/// woman to woman at equal build, and armscyes follow the arm more than the depth.
pub(super) fn upper_body(f: &Figure, ease: &Ease, shaping: &Shaping) -> Result<Frame, DraftError> {
    f.check()?;
    ease.check()?;
    let measured = f.scye_depth + ease.armscye_depth;
    let at = |shift: f64| -> Result<(Frame, f64), DraftError> {
        let frame = Frame::with_underarm(f, ease, shaping, measured + shift)?;
        let length = armscye::back(&frame)?.curve.length() + armscye::front(&frame)?.curve.length();
        Ok((frame, length))
    };
    let (_, length) = at(0.0)?;
    let wished = ARM_SHARE * (armscye_for_arm(f, ease) - length) / LENGTH_PER_DEPTH;
    let mut shift = Span::about_zero(MOST_SHIFT).nearest(wished);
    let (mut frame, mut length) = at(shift)?;
    for _ in 0..4 {
        let short = least_armscye(f, ease) - length;
        if short <= tolerance::PRINT || shift >= MOST_LOWERED {
            break;
        }
        shift = (shift + short / LENGTH_PER_DEPTH).min(MOST_LOWERED);
        (frame, length) = at(shift)?;
    }
    if shift.abs() > TOLD_SHIFT {
        frame.warnings.push(Warning::new(
            "armscye_depth_shifted",
            format!(
                "the underarm was drafted {:.0} mm {} than scye_depth says, so that the armscye fits the arm: check scye_depth and upper_arm_girth",
                shift.abs(),
                if shift > 0.0 { "lower" } else { "higher" }
            ),
        ));
    }
    Ok(frame)
}

/// The plan of the waist that bodice and skirt of a figure share.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, waist_plan};
/// let ease = Ease::of(Fit::Regular);
/// let plan = waist_plan(&Figure::cylinder(900.0), &ease)?;
/// assert!((plan.back + plan.front - (900.0 + ease.waist) / 2.0).abs() < 1e-9);
/// # Ok::<(), blockwright::draft::DraftError>(())
/// ```
///
/// # Errors
/// When the figure's bodice cannot be drafted.
pub fn waist_plan(figure: &Figure, ease: &Ease) -> Result<WaistPlan, DraftError> {
    Ok(upper_body(figure, ease, &Shaping::BODICE)?.plan)
}
