//! The shoulders: the back one with its dart, the front one plain, equally long when sewn.

use super::DraftError;
use super::error::within;
use super::frame::Frame;
use super::mouth::{FoldLies, shaped_mouth};
use crate::geometry::{Curve, Point, Rigid, Vec2, root, unit};
use crate::piece::{Apexes, Dart, EdgeName, Pressed};

/// How much flatter the pattern's shoulder is than the body's, in radians.
///
/// The body's line from neck side to shoulder point falls by 25.7 degrees on average in the
/// survey; drafts have 18 to 23 at the back and 20 to 27 at the front, 21.7 on average
/// (Bunka 18 and 22 as transcribed; the other values from memory), for the paper follows the
/// slant of the muscle which the tape measures level.
const FLATTER: f64 = 4.0 * std::f64::consts::PI / 180.0;

/// Front shoulder steeper, back shoulder flatter than their mean, in radians: 22 and 18
/// degrees (Bunka, as transcribed in student notes).
const SPLIT: f64 = 2.0 * std::f64::consts::PI / 180.0;

/// Mean slopes that can be drafted, in degrees.
const SLOPES: (f64, f64) = (4.0, 36.0);

/// Slope of the open back shoulder, from neck side to shoulder point, in radians.
pub(super) fn back_slope(body_slope: f64) -> f64 {
    body_slope - FLATTER - SPLIT
}

/// Slope of the front shoulder, in radians.
pub(super) fn front_slope(body_slope: f64) -> f64 {
    body_slope - FLATTER + SPLIT
}

/// Refuses slopes that no block has.
pub(super) fn check_slope(body_slope: f64) -> Result<(), DraftError> {
    within(
        "shoulder slope",
        body_slope.to_degrees(),
        (
            SLOPES.0 + FLATTER.to_degrees(),
            SLOPES.1 + FLATTER.to_degrees(),
        ),
        "degrees",
        "Measure it again from the neck side point to the shoulder point, arms hanging",
    )
}

/// The back shoulder with its dart open.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct BackShoulder {
    /// From the neck side point round the dart's mouth to the shoulder point.
    pub edge: Curve,
    /// The dart.
    pub dart: Dart,
    /// Slope at the neck, in radians.
    pub slope_at_neck: f64,
    /// Unit direction of the part beside the armscye.
    pub outward: Vec2,
}

/// Length of the shoulder dart's legs: 70 to 90 mm (value from memory).
const DART_LENGTH: f64 = 80.0;

/// Where the dart opens along the sewn shoulder.
const DART_PLACE: f64 = 0.45;

/// Intake of the back shoulder dart for a bust: bust / 32 - 8 mm on one draft (Bunka, as
/// transcribed: 18 at bust 840), 10 at bust 880 on another (Aldrich, as transcribed).
/// The middle between them.
pub(super) fn dart_intake(bust: f64) -> f64 {
    (bust / 32.0 - 13.0).clamp(10.0, 18.0)
}

struct OpenShoulder {
    inner: Point,
    outer: Point,
    tip: Point,
    end: Point,
    slope: f64,
    turn: f64,
}

/// The shoulder of slope `slope` when sewn, its dart opened by turning the outer part about
/// the tip.
fn open(side: Point, length: f64, slope: f64, intake: f64) -> OpenShoulder {
    let along = unit(slope);
    let inner = side + along * (DART_PLACE * length);
    // The tip lies toward the centre: the dart points at the shoulder blade.
    let tip = inner + Vec2::new(-0.10, 1.0).normalize() * DART_LENGTH;
    let turn = 2.0 * (intake / 2.0 / DART_LENGTH).asin();
    let opening = Rigid::turn_about(tip, turn);
    OpenShoulder {
        inner,
        outer: opening.apply(inner),
        tip,
        end: opening.apply(side + along * length),
        slope,
        turn,
    }
}

/// The slope of the sewn back shoulder at which the *open* one falls by `open_slope` from
/// neck side to shoulder point.
pub(super) fn sewn_back_slope(
    length: f64,
    intake: f64,
    open_slope: f64,
) -> Result<f64, DraftError> {
    root(
        "slope of the sewn shoulder",
        open_slope - 0.35,
        open_slope + 0.1,
        |slope| {
            let o = open(Point::ORIGIN, length, slope, intake);
            o.end.y.atan2(o.end.x) - open_slope
        },
    )
    .map_err(|source| DraftError::Construction {
        step: "back shoulder",
        from: "shoulder_length, shoulder_slope",
        source,
    })
}

/// The back shoulder from the neck side point, `length` long when sewn.
pub(super) fn back(
    side: Point,
    length: f64,
    sewn_slope: f64,
    intake: f64,
) -> Result<BackShoulder, DraftError> {
    let o = open(side, length, sewn_slope, intake);
    let (before, after) = (Curve::line(side, o.inner)?, Curve::line(o.outer, o.end)?);
    let legs = [o.inner, o.outer];
    let mouth = shaped_mouth(o.tip, legs, &before, FoldLies::BeforeFirstLeg)?;
    Ok(BackShoulder {
        edge: before.then(&mouth)?.then(&after)?,
        dart: Dart {
            name: "shoulder".to_owned(),
            edge: Some(EdgeName::SHOULDER),
            legs,
            apexes: Apexes::One(o.tip),
            pressed: Pressed::TowardFirstLeg,
        },
        slope_at_neck: o.slope,
        outward: unit(o.slope + o.turn),
    })
}

/// The back shoulder of a frame.
pub(super) fn back_of(frame: &Frame) -> Result<BackShoulder, DraftError> {
    back(
        frame.neck.back_side(),
        frame.shoulder_length,
        frame.back_sewn_slope,
        frame.shoulder_dart,
    )
}
