//! The bust point, and the bust dart that is opened by a turn about it.

use super::bounds::{Bound, Bounds};
use super::error::within;
use super::neckline::Neckline;
use super::{DraftError, Figure};
use crate::geometry::elementary::{atan2, cos, sin};
use crate::geometry::{Curve, GeometryError, Point, Rigid, along, crossings, tolerance};
use crate::piece::{AimedEdge, Apexes, Dart, EdgeName, Pressed, Warning, aim_edge, shaped_mouth};
use crate::units::rounded;

/// Angle of the bust dart for every millimetre of cup, in radians: 16 degrees for 158 mm, the
/// mean of the survey. The cup is bust less underbust and bust less upper chest together (137
/// and 21 on average). A dart of 70 mm at the shoulder, 250 mm from the bust
/// point, is 16 degrees (Aldrich bust 88 as transcribed); 18.5 at bust 84 (Bunka, computed
/// from its formula); the range 12 to 25 is a value from memory.
const ANGLE_PER_CUP: f64 = 16.0 / 158.0 * std::f64::consts::PI / 180.0;

/// By how much the front's underarm lies higher below its neck side point than the back's, in
/// millimetres: 26 on the Bunka draft with its dart laid in the side seam (computed).
const FRONT_SHALLOWER: f64 = 26.0;
/// The least and the most that it may.
const FRONT_SHALLOWER_RANGE: (f64, f64) = (0.0, 64.0);
/// The most where there is no dart at all, with a millimetre for rounding.
const FRONT_SHALLOWER_REFUSED: f64 = FRONT_SHALLOWER_RANGE.1 + 1.0;

/// From this lift on the lengths have their full say in the bust dart, in millimetres.
const FULL_SAY: f64 = 20.0;

/// The bust point is drafted at least this far above the waist, in millimetres: no lower than the
/// bust dart (see [`ABOVE_WAIST`]). One woman of a hundred in the survey has it lower.
const BUST_ABOVE_WAIST: f64 = ABOVE_WAIST;

/// It is drafted at most this far above the armpit, in millimetres: of 1,104 women the highest has
/// it 5 mm above (computed from the survey).
const BUST_ABOVE_ARMPIT: f64 = 12.0;

/// A bust dart whose lift differs by more than this from what the cup asks for is reported, in
/// millimetres.
const REPORTED_LIFT: f64 = 18.0;

/// The tip of the sewn dart stops 25 mm beside the bust point for a small bust, up to twice that
/// for a full one (S. Veblen, *Threads* 181: 1 in for a small cup, 2 1/2 in or more for a large
/// one; at the side a dart has less room).
const TIP_OFF: (f64, f64) = (25.0, 50.0);
/// Bust less underbust of a bust that is not yet full, in millimetres: a B cup is 14 to 16 cm
/// (EN 13402-3, value from memory).
const SMALL_CUP: f64 = 150.0;
/// For so many millimetres more the tip stops one farther off (an assumption).
const CUP_PER_TIP: f64 = 1.5;
/// Of the way from the bust point to the side seam, the share that the tip stops short at most.
const TIP_OF_WAY: f64 = 0.4;

/// A dart that takes in less than this is not sewn: the fullness is eased in, in millimetres
/// (about 5 mm ease into a side seam, a value from memory).
const SEWN: f64 = 6.0;
/// Over so many millimetres on either side fullness without a dart is rounded into the seam.
const EASED_OVER: f64 = 14.0;

/// The dart meets the side seam at least so far below the underarm and above the waist, in
/// millimetres (1 1/2 and 2 1/2 in: a mid-century US drafting course, as transcribed).
const BELOW_UNDERARM: f64 = 38.0;
const ABOVE_WAIST: f64 = 64.0;
/// It runs down by about so much from the bust point to its lower leg, in millimetres.
const RUNS_DOWN: f64 = 22.0;

/// What the bust dart follows from.
pub(super) struct Bust {
    /// The bust point on paper.
    pub point: Point,
    /// How far the tip of the sewn dart may stop beside it.
    pub tip_off: f64,
    /// By how much the front is longer than the back, each from its neck side point.
    longer: f64,
}

/// How far the bust dart opens the front.
pub(super) struct BustShape {
    pub lift: f64,
    pub angle: f64,
    pub front_closed: f64,
}

impl Bust {
    pub fn of(
        f: &Figure,
        waist: f64,
        neck: &Neckline,
        front_side: Point,
        bounds: &mut Bounds,
    ) -> Self {
        let half_width = f.bust_point_width / 2.0;
        let across = half_width - neck.front_width;
        let down = (f.neck_to_bust_point * f.neck_to_bust_point - across * across)
            .max(0.0)
            .sqrt();
        let levels = (f.scye_depth - BUST_ABOVE_ARMPIT, waist - BUST_ABOVE_WAIST);
        let level = bounds.hold(Bound::BustLevel, front_side.y + down, levels);
        let full = (f.bust_girth - f.underbust_girth - SMALL_CUP) / CUP_PER_TIP;
        Self {
            point: Point::new(half_width, level),
            tip_off: (TIP_OFF.0 + full.max(0.0)).min(TIP_OFF.1),
            longer: f.front_waist_length - f.back_waist_length - neck.back_rise,
        }
    }

    /// The dart for a front `front` wide on the underarm line.
    ///
    /// Its angle grows from nothing without a jump, whatever is measured.
    pub fn shape(
        &self,
        f: &Figure,
        front: f64,
        underarm: f64,
        (warnings, bounds): (&mut Vec<Warning>, &mut Bounds),
    ) -> Result<BustShape, DraftError> {
        let (run, above) = (front - self.point.x, underarm - self.point.y);
        let cup = (2.0 * f.bust_girth - f.underbust_girth - f.upper_chest_girth).max(0.0);
        let wished = lift_for((ANGLE_PER_CUP * cup).min(0.5), run, above);
        // The cup asks for one dart, the lengths of front and back for another; each is as
        // uncertain as the other, so the dart lies midway. Without a cup there is no dart,
        // whatever the lengths: their say grows with it.
        let say = 0.5 * (wished / FULL_SAY).min(1.0);
        let between = wished + say * (self.longer + FRONT_SHALLOWER - wished);
        let range = FRONT_SHALLOWER_RANGE;
        let reach = (self.longer + range.0, self.longer + range.1);
        let lift = bounds.hold(Bound::BustDart, between, reach).max(0.0);
        within(
            "front length against the back",
            lift - self.longer,
            (-1.0, FRONT_SHALLOWER_REFUSED),
            "mm",
            "Check front_waist_length, from the neck side point over the bust point to the waist, against back_waist_length",
        )?;
        if (lift - wished).abs() > REPORTED_LIFT {
            warnings.push(Warning::new(
                "bust_dart_from_lengths",
                format!(
                    "bust less underbust asks for a bust dart lifting the side by {wished:.0} mm, front and back length for {:.0} mm; drafted with {lift:.0} mm: look at this dart first on the toile",
                    rounded(self.longer + FRONT_SHALLOWER, 0)
                ),
            ));
        }
        within(
            "front width beside the bust point",
            run,
            (60.0, 600.0),
            "mm",
            "Check bust_point_width against bust_girth",
        )?;
        let radius_squared = run * run + (above - lift) * (above - lift);
        let closed_run = (radius_squared - above * above).max(0.0).sqrt();
        let angle = atan2(above, closed_run) - atan2(above - lift, run);
        Ok(BustShape {
            lift,
            angle,
            front_closed: self.point.x + closed_run,
        })
    }
}

/// Lift of the underarm point for a dart angle, `run` beside and `above` below (+) the bust point.
fn lift_for(angle: f64, run: f64, above: f64) -> f64 {
    above - (above - run * sin(angle)) / cos(angle)
}

/// The front's side seam, and its dart when there is one to sew.
pub(super) struct FrontSide {
    pub seam: Curve,
    pub dart: Option<Dart>,
    /// How much longer the seam is than that of the back: fullness too small for a dart, eased
    /// in at that place along the seam.
    pub eased: Option<(f64, f64)>,
}

/// Where the bust dart opens.
pub(super) struct Opens<'a> {
    /// The side seam with the dart closed.
    pub closed: &'a Curve,
    /// The bust point, and how far the sewn tip may stop beside it.
    pub bust: (Point, f64),
    /// The turn about the bust point that opens the dart.
    pub opening: Rigid,
    /// Levels of underarm and waist.
    pub levels: (f64, f64),
}

impl Opens<'_> {
    /// How far along the closed seam the dart opens.
    pub fn place(&self) -> Result<f64, GeometryError> {
        let (underarm, waist) = self.levels;
        let low = (waist - ABOVE_WAIST).max(underarm + BELOW_UNDERARM);
        let level = (self.bust.0.y + RUNS_DOWN)
            .max(underarm + BELOW_UNDERARM)
            .min(low);
        let reach = 4000.0;
        let across = Curve::line(Point::new(-reach, level), Point::new(reach, level))?;
        let met = crossings(self.closed.segments(), across.segments());
        let at = met.first().ok_or(GeometryError::Parallel)?.point;
        Ok(self.closed.nearest(at).1)
    }

    /// The seam with the dart open: the part above it is turned about the bust point, then the
    /// tip of the sewn dart is backed off from there along its centre line, and the seam drawn
    /// to close without a corner. It stays as long as the closed one.
    pub fn front(&self) -> Result<FrontSide, GeometryError> {
        let (bust, tip_off) = self.bust;
        let (above, below) = self.closed.split_at(self.place()?)?;
        let above = above.moved(&self.opening);
        let [first, second] = [above.end(), below.start()];
        if first.distance(second) < SEWN {
            return eased(self.closed, &above, &below);
        }
        let mouth = first.midpoint(second);
        let off = tip_off.min(TIP_OF_WAY * bust.distance(mouth));
        let tip = along(bust, mouth, off);
        let room = [above.length(), below.length()];
        let AimedEdge {
            before,
            legs,
            after,
        } = aim_edge(&above, &below, (bust, tip), room)?;
        // A side dart is pressed down (common practice): it lies on the part below.
        let pressed = Pressed::TowardSecondLeg;
        let mouth = shaped_mouth(tip, legs, &after, pressed)?;
        Ok(FrontSide {
            seam: before.then(&mouth)?.then(&after)?,
            dart: Some(Dart {
                name: "bust".to_owned(),
                edge: Some(EdgeName::SIDE_SEAM),
                legs,
                apexes: Apexes::One(tip),
                pressed,
            }),
            eased: None,
        })
    }
}

/// The seam drawn on over the gap between two parts, smoothly.
fn eased(closed: &Curve, above: &Curve, below: &Curve) -> Result<FrontSide, GeometryError> {
    let opens = above.length();
    if above.end().distance(below.start()) <= tolerance::POINT {
        return Ok(FrontSide {
            seam: closed.clone(),
            dart: None,
            eased: None,
        });
    }
    let upper = above.part(0.0, opens - EASED_OVER)?;
    let lower = below.part(EASED_OVER, below.length())?;
    let third = upper.end().distance(lower.start()) / 3.0;
    let over = Curve::hermite(
        upper.end(),
        upper.end_direction() * third,
        lower.start(),
        lower.start_direction() * third,
    )?;
    let seam = upper.then(&over)?.then(&lower)?;
    let longer = seam.length() - closed.length();
    Ok(FrontSide {
        seam,
        dart: None,
        eased: Some((opens, longer)),
    })
}
