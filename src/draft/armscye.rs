//! The armscye: one smooth curve from the shoulder point by the width of the back or front to
//! the underarm, bending one way only.
//!
//! Held against the armscye girth of 1,104 surveyed women, which no draft sees, the drafted
//! armscye (back and front, regular ease) is longer by 36 mm with a spread of 14 mm; the
//! correlation is 0.81. `tests/survey` measures and prints these figures.

use super::DraftError;
use super::frame::Frame;
use crate::geometry::elementary::atan2;
use crate::geometry::{
    Curve, Point, Span, Vec2, angle_between, intersect_lines, perpendicular, unit,
};

/// What an armscye runs through.
#[derive(Debug, Clone, Copy, PartialEq)]
struct ArmscyeSpec {
    /// The shoulder point.
    shoulder: Point,
    /// Unit direction of the shoulder toward its point.
    shoulder_direction: Vec2,
    /// The point at the width of the back or front.
    width_point: Point,
    /// The underarm point.
    underarm: Point,
    /// Unit direction of the side seam as it leaves the underarm.
    side_direction: Vec2,
    /// How far the curve reaches into the corner under the arm, 0 to 1: 0.55 is a quarter of an ellipse.
    scoop: f64,
}

/// The curve and where along it the width point lies, in millimetres.
pub(super) struct Armscye {
    pub curve: Curve,
    pub width_at: f64,
    pub width_point: Point,
}

/// Turn that the curve keeps in hand at the width point, in radians: without it the upper part
/// would be straight or bend back where the back is as wide as the shoulder.
const SPARE_TURN: f64 = 7.0 * std::f64::consts::PI / 180.0;

/// How far across the lower part its corner may lie, as a share.
const FURTHEST_CORNER: f64 = 0.75;

/// The corner that the lower part rounds stays this share of its chord away from both ends.
const LEAST_CORNER: f64 = 0.08;

/// Draws the armscye: square to the shoulder, through the width point, square to the side seam.
fn armscye(spec: &ArmscyeSpec) -> Result<Armscye, DraftError> {
    let down = Vec2::new(0.0, 1.0);
    let upper_chord = spec.width_point - spec.shoulder;
    // Inward is positive: how far the chord leans toward the fold on its way down.
    let lean = angle_between(down, upper_chord);
    // Never so far outward that the lower part would have no corner left to round.
    let lower_chord = spec.underarm - spec.width_point;
    let most = atan2(FURTHEST_CORNER * lower_chord.x, lower_chord.y).max(0.0);
    let tilt = Span::from_low(0.0, most).nearest(SPARE_TURN - lean);
    let at_width = unit(std::f64::consts::FRAC_PI_2 - tilt);
    let square = perpendicular(spec.shoulder_direction);
    let reach = upper_chord.hypot();
    let upper = Curve::hermite(
        spec.shoulder,
        square * (0.24 * reach),
        spec.width_point,
        at_width * (0.42 * reach),
    )?;
    let arrive = -perpendicular(spec.side_direction);
    let corner = intersect_lines(spec.width_point, at_width, spec.underarm, arrive)?;
    let (drop, run) = (
        (corner - spec.width_point).dot(at_width),
        (spec.underarm - corner).dot(arrive),
    );
    let least = LEAST_CORNER * lower_chord.hypot();
    if drop < least || run < least {
        return Err(DraftError::OutOfReach {
            what: "room for the armscye below the width line",
            found: drop.min(run),
            low: least,
            high: lower_chord.hypot(),
            unit: "mm",
            advice: "The width at this level nearly reaches the underarm, or the side seam slants too much: check back_width or front_width against bust_girth, and bust_girth against waist_girth",
        });
    }
    let lower = Curve::hermite(
        spec.width_point,
        at_width * (spec.scoop * drop),
        spec.underarm,
        arrive * (spec.scoop * run),
    )?;
    let width_at = upper.length();
    Ok(Armscye {
        curve: upper.then(&lower)?,
        width_at,
        width_point: spec.width_point,
    })
}

/// Level of the width point between shoulder point and underarm, from the shoulder.
const WIDTH_LEVEL: f64 = 0.54;
/// How far the armscye reaches into the corner under the arm: the back is filled, the front
/// scooped. The corner stays 22 to 25 mm (back) and 17 to 20 mm (front) clear (values from memory).
const BACK_SCOOP: f64 = 0.64;
const FRONT_SCOOP: f64 = 0.70;

/// From the shoulder point and its shoulder's direction by a width to the underarm point and
/// its side seam's direction.
fn spec(
    (shoulder, shoulder_direction): (Point, Vec2),
    width: f64,
    (underarm, side_direction): (Point, Vec2),
    scoop: f64,
) -> ArmscyeSpec {
    let level = shoulder.y + WIDTH_LEVEL * (underarm.y - shoulder.y);
    let width_point = Point::new(width, level);
    ArmscyeSpec {
        shoulder,
        shoulder_direction,
        width_point,
        underarm,
        side_direction,
        scoop,
    }
}

/// The back armscye of a frame.
pub(super) fn back(frame: &Frame) -> Result<Armscye, DraftError> {
    let shoulder = frame.shoulders.back()?;
    let spec = spec(
        (shoulder.edge.end(), shoulder.outward),
        frame.back_width,
        (frame.back_underarm(), frame.side_direction()),
        BACK_SCOOP,
    );
    armscye(&spec)
}

/// The front armscye of a frame, the bust dart open.
pub(super) fn front(frame: &Frame) -> Result<Armscye, DraftError> {
    let tip = frame.shoulders.front_point(frame.front_side);
    let side = frame.opening().apply_direction(frame.side_direction());
    let spec = spec(
        (tip, unit(frame.shoulders.front_slope)),
        frame.front_width,
        (frame.front_underarm(), side),
        FRONT_SCOOP,
    );
    armscye(&spec)
}
