//! The shoulders: the back one with its dart, the front one plain, equally long when sewn.

use super::bounds::{Bound, Bounds};
use super::error::within;
use super::neckline::Neckline;
use super::shaping::ShoulderFullness;
use super::{DraftError, Figure};
use crate::geometry::elementary::{asin, cos};
use crate::geometry::{Curve, Point, Rigid, Vec2, root, unit};
use crate::piece::{Apexes, Dart, EdgeName, Pressed, Warning, shaped_mouth};

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
fn back_slope(body_slope: f64) -> f64 {
    body_slope - FLATTER - SPLIT
}

/// Slope of the front shoulder, in radians.
fn front_slope(body_slope: f64) -> f64 {
    body_slope - FLATTER + SPLIT
}

/// The slopes that a draft gives the shoulders of a pattern, back and front, for a body whose
/// shoulders slope so much; all in degrees, from neck side to shoulder point, the dart open.
///
/// Their mean is what the sewn shoulder has; the split between them only says where its seam
/// runs.
///
/// ```
/// use blockwright::draft::pattern_shoulder_slopes;
/// let (back, front) = pattern_shoulder_slopes(25.7);
/// assert!(back < front && 0.5 * (back + front) < 25.7);
/// ```
#[must_use]
pub fn pattern_shoulder_slopes(body_slope: f64) -> (f64, f64) {
    let body = body_slope.to_radians();
    (
        back_slope(body).to_degrees(),
        front_slope(body).to_degrees(),
    )
}

/// Refuses slopes that no block has.
fn check_slope(body_slope: f64) -> Result<(), DraftError> {
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
    /// The dart, if the fullness goes into one.
    pub dart: Option<Dart>,
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
/// The middle between them, from 8 to 20 (16 to 20: Russian drafting text, read; less for
/// flat backs, value from memory).
fn dart_intake(bust: f64, bounds: &mut Bounds) -> f64 {
    bounds.hold(Bound::ShoulderDart, bust / 32.0 - 13.0, (8.0, 20.0))
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
    let turn = 2.0 * asin(intake / 2.0 / DART_LENGTH);
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
fn sewn_back_slope(length: f64, intake: f64, open_slope: f64) -> Result<f64, DraftError> {
    root(
        "slope of the sewn shoulder",
        open_slope - 0.35,
        open_slope + 0.1,
        |slope| {
            let o = open(Point::ORIGIN, length, slope, intake);
            o.end.to_vec2().atan2() - open_slope
        },
    )
    .map_err(|source| DraftError::Construction {
        step: "back shoulder",
        from: "shoulder_length, shoulder_slope",
        source,
    })
}

/// The back shoulder from the neck side point, `length` long when sewn.
pub(super) fn with_dart(
    side: Point,
    length: f64,
    sewn_slope: f64,
    intake: f64,
) -> Result<BackShoulder, DraftError> {
    let o = open(side, length, sewn_slope, intake);
    let (before, after) = (Curve::line(side, o.inner)?, Curve::line(o.outer, o.end)?);
    let legs = [o.inner, o.outer];
    let mouth = shaped_mouth(o.tip, legs, &before, Pressed::TowardFirstLeg)?;
    Ok(BackShoulder {
        edge: before.then(&mouth)?.then(&after)?,
        dart: Some(Dart {
            name: "shoulder".to_owned(),
            edge: Some(EdgeName::SHOULDER),
            legs,
            apexes: Apexes::One(o.tip),
            pressed: Pressed::TowardFirstLeg,
        }),
        slope_at_neck: o.slope,
        outward: unit(o.slope + o.turn),
    })
}

/// How far a shoulder may be lengthened, in millimetres: a sewn shoulder ends 10 to 25 mm
/// inside the acromion by common practice, so this much bone is there.
const MOST_LONGER: f64 = 20.0;

/// A shoulder lengthened by less is not worth a word, in millimetres.
const LEAST_REMARKED: f64 = 1.0;

/// How far the back, without its ease, may lie outside the shoulder point before the shoulder
/// is lengthened, and before the draft is refused. Above a bust of about 970 mm shoulder points
/// lie inside the back's width on bodies too (1988 U.S. Army survey, computed).
const OUTWARD: f64 = 10.0;
const OUTWARD_REFUSED: f64 = 26.0;

/// Both shoulders and the neckline between them.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Shoulders {
    pub neck: Neckline,
    /// Length of the front shoulder.
    pub length: f64,
    /// By how much the back shoulder is longer, sewn: eased onto the front.
    pub eased: f64,
    pub front_slope: f64,
    back_slope: f64,
    dart: f64,
}

impl Shoulders {
    /// The shoulders of a figure whose half back is given so much ease. Where the back is wider
    /// much wider than the shoulder is long, the shoulder is lengthened toward the bone; an easy
    /// garment's shoulder may drop over it by the ease.
    pub fn of(
        f: &Figure,
        fullness: ShoulderFullness,
        back_ease: f64,
        (warnings, bounds): (&mut Vec<Warning>, &mut Bounds),
    ) -> Result<Self, DraftError> {
        check_slope(f.shoulder_slope)?;
        let intake = dart_intake(f.bust_girth, bounds);
        let as_long_as = |length: f64| -> Result<(Self, Point), DraftError> {
            let (dart, eased) = match fullness {
                ShoulderFullness::Dart => (intake, 0.0),
                ShoulderFullness::Eased(eased) => (0.0, eased),
            };
            let front_slope = front_slope(f.shoulder_slope);
            let open_slope = back_slope(f.shoulder_slope);
            let back_slope = sewn_back_slope(length + eased, dart, open_slope)?;
            let neck = Neckline::of_girth(
                f.neck_base_girth,
                f.front_neck_depth,
                (back_slope, front_slope),
            )?;
            let shoulders = Self {
                neck,
                length,
                eased,
                front_slope,
                back_slope,
                dart,
            };
            let tip = open(neck.back_side(), length + eased, back_slope, dart).end;
            Ok((shoulders, tip))
        };
        let (shoulders, tip) = as_long_as(f.shoulder_length)?;
        let short = (f.back_width / 2.0 - OUTWARD - tip.x) / cos(back_slope(f.shoulder_slope));
        if short <= 0.0 {
            return Ok(shoulders);
        }
        bounds.note(Bound::ShoulderLengthened, true);
        let longer = short.min(MOST_LONGER + back_ease);
        let (shoulders, tip) = as_long_as(f.shoulder_length + longer)?;
        within(
            "back width beyond the shoulder point",
            f.back_width / 2.0 - tip.x,
            (-200.0, OUTWARD_REFUSED),
            "mm",
            "Check back_width and shoulder_length: the back is measured between the arms, the shoulder to the bone",
        )?;
        if longer >= LEAST_REMARKED {
            warnings.push(Warning::new(
                "shoulder_lengthened",
                format!(
                    "the shoulder was lengthened by {longer:.0} mm to {:.0} mm, so that the armscye reaches the width of the back: check shoulder_length and back_width",
                    shoulders.length
                ),
            ));
        }
        Ok(shoulders)
    }

    /// The back shoulder, its dart open.
    pub fn back(&self) -> Result<BackShoulder, DraftError> {
        let side = self.neck.back_side();
        if self.dart > 0.0 {
            return with_dart(side, self.length, self.back_slope, self.dart);
        }
        let along = unit(self.back_slope);
        Ok(BackShoulder {
            edge: Curve::line(side, side + along * (self.length + self.eased))?,
            dart: None,
            slope_at_neck: self.back_slope,
            outward: along,
        })
    }

    /// The front's shoulder point, given its neck side point.
    pub fn front_point(&self, side: Point) -> Point {
        side + unit(self.front_slope) * self.length
    }
}
