//! The frame of the upper body with its armscye fitted to the arm.

use super::armscye_form::Form;
use super::armscye_length::predicted_armscye;
use super::bounds::{Bound, Bounds};
use super::frame::{Frame, SIDE_SEAM};
use super::shaping::Shaping;
use super::{DraftError, Ease, Figure, WaistPlan, armscye};
use crate::geometry::{root, tolerance};
use crate::piece::Warning;

/// How much longer the armscye gets for every millimetre its underarm is lowered: back and
/// front both go down, less what the corner saves (measured on drafts of the survey).
const LENGTH_PER_DEPTH: f64 = 1.83;

/// How far the armscye is brought from the length that scye depth and widths give it toward
/// the one that all measurements together predict: most of the way. Scye depth and slope are
/// uncertain by 12 mm and 4 degrees from woman to woman at equal build.
const FOLLOWED: f64 = 0.9;

/// The longer or shorter armscye is drawn deeper or flatter too, half so from here, in
/// millimetres of length.
const HALF_FORM: f64 = 15.0;

/// The underarm lies at least this far below the armpit, in millimetres: with the arm down the
/// armpit must not touch the seam; 15 on a standard block (teaching page on ease, read).
const BELOW_ARMPIT: f64 = 8.0;

/// The underarm is never lowered further than this below where the ease puts it, in millimetres.
const MOST_LOWER: f64 = 34.0;

/// Where only a deeper armscye takes a sleeve at all, it may go down this far, in millimetres.
const MOST_LOWERED: f64 = 60.0;

/// A shift of more than this is reported, in millimetres.
const TOLD_SHIFT: f64 = 20.0;

/// A shoulder is shortened by no more than this, in millimetres: a sewn one ends 10 to 25 mm inside
/// the bone by common practice.
const MOST_SHORTER: f64 = 25.0;

/// The ease of an armscye: lowering lengthens it on both sides, ease at the bust widens it, the
/// rest is what the drafts of the survey have at their scye depth on average and five more.
fn armscye_ease(ease: &Ease) -> f64 {
    1.5 + 1.4 * ease.armscye_depth + 0.17 * ease.bust
}

/// The least armscye that takes a sleeve: over the arm with the least ease for comfort, 38 mm
/// (Santa Rosa Junior College, FASH 60), it leaves a cap a sixth of its length high, and room
/// for what the sleeve of the block has more.
fn least_armscye(f: &Figure) -> f64 {
    (f.upper_arm_girth + 38.0) * 8.0 / 7.0 - 10.0
}

/// The frame for a figure.
///
/// The armscye follows the woman: its length goes most of the way from what scye depth
/// and widths make it to what her measurements predict, by the level of the underarm and, within
/// limits, by how deep the curve is drawn.
pub(super) fn upper_body(f: &Figure, ease: &Ease, shaping: &Shaping) -> Result<Frame, DraftError> {
    f.check()?;
    ease.check()?;
    let measured = f.scye_depth + ease.armscye_depth;
    let at = |shift: f64, form: Form| -> Result<(Frame, f64), DraftError> {
        let frame = with_room(f, ease, shaping, measured + shift, form)?;
        let length = armscye::length(&frame, &mut Bounds::default())?;
        Ok((frame, length))
    };
    // As low as leaves a side seam, with a hair for rounding.
    let lowest = f.back_waist_length - SIDE_SEAM.0 - tolerance::POINT - measured;
    let first = lowest.min(0.0);
    let length = at(first, Form::default())?.1 - first * LENGTH_PER_DEPTH;
    let longer = FOLLOWED * (predicted_armscye(f) + armscye_ease(ease) - length);
    let (wished, form) = (
        length + longer,
        Form::of(longer / (HALF_FORM + longer.abs())),
    );
    let (mut shift, mut bounds) = (first, Bounds::default());
    for _ in 0..4 {
        let (_, length) = at(shift, form)?;
        bounds = Bounds::default();
        shift += (wished - length) / LENGTH_PER_DEPTH;
        let most = MOST_LOWER.min(lowest);
        shift = bounds.hold(Bound::UnderarmLow, shift, (f64::MIN, most));
        let least = BELOW_ARMPIT - ease.armscye_depth;
        shift = bounds.hold(Bound::Armpit, shift, (least, f64::MAX));
    }
    let form = if bounds.has(Bound::Armpit) {
        // The underarm can go no higher: the corner under the arm is filled instead.
        let over = |depth: f64| at(shift, Form::of(depth)).map_or(f64::NAN, |(_, l)| l - wished);
        let filled = root("armscye", Form::FLATTEST, form.depth(), over);
        Form::of(filled.unwrap_or(Form::FLATTEST))
    } else {
        form
    };
    let (mut frame, mut length) = at(shift, form)?;
    for _ in 0..4 {
        let short = least_armscye(f) - length;
        if short <= tolerance::PRINT || shift >= MOST_LOWERED.min(lowest) {
            break;
        }
        shift = (shift + short / LENGTH_PER_DEPTH).min(MOST_LOWERED.min(lowest));
        (frame, length) = at(shift, form)?;
    }
    armscye::length(&frame, &mut bounds)?;
    frame.bounds.extend(&bounds);
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

/// The frame of a figure whose armscyes have room to bend one way.
///
/// Where a long, flat shoulder ends far outside a narrow back, no curve that leaves the shoulder
/// square comes to the back's width without bending back: then the shoulder is shortened.
fn with_room(
    f: &Figure,
    ease: &Ease,
    shaping: &Shaping,
    underarm: f64,
    form: Form,
) -> Result<Frame, DraftError> {
    let drafted = |shorter: f64| {
        let shoulder_length = f.shoulder_length - shorter;
        let figure = Figure {
            shoulder_length,
            ..*f
        };
        Frame::with_underarm(&figure, ease, shaping, underarm, form)
    };
    let frame = drafted(0.0)?;
    if armscye::room(&frame)? >= 0.0 {
        return Ok(frame);
    }
    let room = |shorter: f64| {
        let room = drafted(shorter).and_then(|frame| armscye::room(&frame));
        room.unwrap_or(f64::NAN)
    };
    // Where that is not enough, the width point lies lower, or the armscye says what it lacks.
    let shorter = root("length of the shoulder", 0.0, MOST_SHORTER, room).unwrap_or(MOST_SHORTER);
    let mut frame = drafted(shorter)?;
    frame.bounds.note(Bound::ShoulderShortened, true);
    frame.warnings.push(Warning::new(
        "shoulder_shortened",
        format!(
            "the shoulder was shortened by {shorter:.0} mm to {:.0} mm, so that the armscye comes from it to the narrow back in one bend: check shoulder_length, shoulder_slope and back_width",
            f.shoulder_length - shorter
        ),
    ));
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
