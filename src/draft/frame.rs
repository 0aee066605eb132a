//! The frame of the upper body: widths and levels, before any curve is drawn.
//!
//! Back and front share their levels: the nape is at 0, the waist at the back waist length.

use super::armscye_form::Form;
use super::bounds::{Bound, Bounds};
use super::bust_dart::{Bust, Opens};
use super::error::within;
use super::neckline::Neckline;
use super::shaping::{Lower, Shaping, SideLine};
use super::shoulder::Shoulders;
use super::side_seam::{SideSpec, side_seam, straight_in};
use super::waist_edge::{WaistQuarter, front_dart_level, waist_edge};
use super::waist_plan::{Shares, WaistPlan};
use super::{DraftError, Ease, Figure};
use crate::alterations::{DartsPoint, WaistSpec, waistline};
use crate::geometry::{Curve, Point, Rigid, Vec2, perpendicular, root, tolerance};
use crate::piece::{Dart, Warning};

/// Where everything lies.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Frame {
    pub neck: Neckline,
    pub shoulders: Shoulders,
    /// Neck side point of the front.
    pub front_side: Point,
    /// Level of the underarm, bust dart closed.
    pub underarm: f64,
    pub waist: f64,
    /// Half the finished width of back and front at the width points.
    pub back_width: f64,
    pub front_width: f64,
    /// Widths on the underarm line, from the fold.
    pub back_chest: f64,
    pub front_chest: f64,
    /// The same of the front with the bust dart closed.
    pub front_chest_closed: f64,
    /// How far the open dart lifts the front's underarm point.
    pub lift: f64,
    /// The bust point, about which the bust dart is turned.
    pub bust_point: Point,
    /// How far the tip of the sewn bust dart may stop beside the bust point.
    pub tip_off: f64,
    /// Angle of the bust dart about the bust point, in radians; zero for none.
    pub bust_angle: f64,
    /// What is taken in between underarm and waist, and where.
    pub shares: Shares,
    /// Half the finished width at the hip less that at the underarm, for each quarter.
    pub hip_out: f64,
    /// The side seam, darts closed, from the underarm at the origin.
    pub side: Curve,
    pub plan: WaistPlan,
    pub warnings: Vec<Warning>,
    /// How the armscyes are drawn.
    pub form: Form,
    /// Bounds that the draft reached.
    pub bounds: Bounds,
}

/// An estimated front is at least so wide that the shoulder point juts out by no more than
/// this over it, in millimetres.
const MOST_JUT: f64 = 42.0;

/// An armscye is at least this share of the upper arm's girth wide, a quarter less than the arm is
/// thick (0.32). On close bodices of the survey 98 of 100 women have 0.27 to 0.60; for five of
/// 1,104 an estimated front gives way to the least.
const NARROWEST_SCYE: f64 = 0.24;

/// An estimated front moved by more than this on the half is reported, in millimetres.
const TOLD_FRONT: f64 = 1.0;

/// The share of the armscye's width that lies on the back: about half.
const BACK_SHARE: (f64, f64) = (0.34, 0.60);
/// The share where nothing else is asked: the side seam lies 5 mm toward the back (Aldrich,
/// value from memory).
const USUAL_SHARE: f64 = 0.46;

/// How far of the way to where the darts are balanced the side seam goes toward the back, and toward
/// the front: a back that reaches far under the arm would be scooped deeper than its front.
const SAY_BACKWARD: f64 = 0.5;
const SAY_FORWARD: f64 = 0.1;

/// How long the side seam of an upper body may be, in millimetres.
pub(super) const SIDE_SEAM: (f64, f64) = (70.0, 320.0);

/// The darts take less than this in on the underarm line, in millimetres.
const MOST_TAKEN: f64 = 90.0;

impl Frame {
    /// The frame for a figure whose underarm lies at that level.
    ///
    /// Where the bust point lies above the open underarm line the darts cross that line, and the
    /// front is drafted wider by what they take in there.
    pub fn with_underarm(
        f: &Figure,
        ease: &Ease,
        shaping: &Shaping,
        underarm: f64,
        form: Form,
    ) -> Result<Self, DraftError> {
        let drafted = |taken: f64| Self::taken_in(f, ease, shaping, (underarm, taken), form);
        let frame = drafted(0.0)?;
        if frame.darts_at_underarm(shaping) <= tolerance::POINT {
            return Ok(frame);
        }
        let miss = |taken: f64| {
            drafted(taken).map_or(f64::NAN, |frame| frame.darts_at_underarm(shaping) - taken)
        };
        let taken = root("front beside its bust dart", 0.0, MOST_TAKEN, miss);
        drafted(taken.map_err(|source| DraftError::Construction {
            step: "front at the underarm",
            from: "neck_to_bust_point, front_waist_length, scye_depth",
            source,
        })?)
    }

    /// The frame whose front is that much wider on the underarm line than the bust asks for.
    fn taken_in(
        f: &Figure,
        ease: &Ease,
        shaping: &Shaping,
        (underarm, taken_in): (f64, f64),
        form: Form,
    ) -> Result<Self, DraftError> {
        let (mut warnings, mut bounds) = (Vec::new(), Bounds::default());
        let back_width = (f.back_width + ease.back_width) / 2.0;
        let message = (&mut warnings, &mut bounds);
        let shoulders = Shoulders::of(f, shaping.shoulder, ease.back_width / 2.0, message)?;
        let neck = shoulders.neck;
        let front_side = Point::new(neck.front_width, f.back_waist_length - f.front_waist_length);
        let waist = f.back_waist_length;
        within(
            "side seam length",
            waist - underarm,
            SIDE_SEAM,
            "mm",
            "Check scye_depth and back_waist_length: the armpit lies well above the waist",
        )?;

        let half = (f.bust_girth + ease.bust) / 2.0;
        // Half of the ease of the back goes to the front.
        let wished = (f.front_width + ease.back_width / 2.0) / 2.0;
        let mut front_width = wished;
        let narrowest = NARROWEST_SCYE * f.upper_arm_girth;
        if !f.front_width_taken {
            let least = shoulders.front_point(front_side).x - MOST_JUT;
            front_width = bounds.hold(Bound::ShoulderJuts, wished, (least, f64::MAX));
            let most = (half - back_width - narrowest).max(0.85 * wished);
            front_width = bounds.hold(Bound::ScyeWidth, front_width, (0.0, most));
        }
        if (front_width - wished).abs() > TOLD_FRONT {
            warnings.push(Warning::new(
                "front_width_moved",
                format!(
                    "front_width was estimated at {:.0} mm and drafted with {:.0} mm, to fit shoulder, back and arm: take front_width",
                    f.front_width,
                    f.front_width + 2.0 * (front_width - wished)
                ),
            ));
        }
        let scye_width = half - back_width - front_width;
        within(
            "width of the armscye",
            scye_width,
            // A front moved to the least reaches it but for rounding.
            (narrowest - tolerance::POINT, 0.85 * f.upper_arm_girth),
            "mm",
            "Check bust_girth, back_width and upper_arm_girth against each other",
        )?;

        let bust = Bust::of(f, waist, &neck, front_side, &mut bounds);
        let half_waist = (f.waist_girth + ease.waist) / 2.0;
        let half_hip = (f.hip_girth + ease.hip) / 2.0;
        let levels = (waist - underarm, f.waist_to_hip);
        let shares = |chest: f64| shares(shaping.lower, chest, half_waist, half_hip, levels);
        let mut back_chest = back_width + USUAL_SHARE * scye_width;
        let mut side_place = Bounds::default();
        // The side seam is placed between its usual place and that where back and front darts
        // come out balanced, midway toward the back and hardly toward the front, for the front
        // armscye is to be the deeper one; the bust dart's lift follows the front's width, so
        // this is repeated until it rests.
        for _ in 0..8 {
            let unheard = (&mut Vec::new(), &mut Bounds::default());
            let shape = bust.shape(f, half - back_chest + taken_in, underarm, unheard)?;
            let taken = shares(back_chest + shape.front_closed);
            if taken.back_dart <= 0.0 {
                break;
            }
            let balanced = half_waist / 2.0 - WaistPlan::FRONT_MORE + taken.side + taken.back_dart;
            let usual = back_width + USUAL_SHARE * scye_width;
            let say = if balanced < usual {
                SAY_BACKWARD
            } else {
                SAY_FORWARD
            };
            let wished = usual + say * (balanced - usual);
            let places = (
                back_width + BACK_SHARE.0 * scye_width,
                back_width + BACK_SHARE.1 * scye_width,
            );
            let mut reached = Bounds::default();
            back_chest = reached.hold(Bound::SidePlace, wished, places);
            side_place = reached;
        }
        bounds.extend(&side_place);
        let shape = bust.shape(
            f,
            half - back_chest + taken_in,
            underarm,
            (&mut warnings, &mut bounds),
        )?;
        let half_chest = back_chest + shape.front_closed;
        let mut shares = shares(half_chest);
        let mut plan = WaistPlan::new(f, [back_chest, shape.front_closed], &shares)?;
        if shaping.lower == Lower::Waist && shares.back_dart <= 0.0 {
            // Without darts the edges are as long as their curves make them: the side seams
            // are placed so that both together are the waist, and the plan follows.
            let edges = |side: f64| {
                let edge = |chest| undarted_waist(chest, side, waist, underarm);
                Ok::<_, DraftError>((edge(back_chest)?, edge(shape.front_closed)?))
            };
            shares.side = root(
                "side of the bodice",
                shares.side - 2.0,
                shares.side + 30.0,
                |side| edges(side).map_or(f64::NAN, |(b, f): (f64, f64)| b + f - half_waist),
            )
            .map_err(|source| DraftError::Construction {
                step: "waist",
                from: "waist_girth, bust_girth, back_waist_length",
                source,
            })?;
            let (back, front) = edges(shares.side)?;
            plan = WaistPlan {
                back,
                front,
                ..plan
            };
        }
        let hip_out = (half_hip - half_chest) / 2.0;
        let spec = SideSpec {
            waist_in: shares.side,
            waist_depth: waist - underarm,
            hip_out,
        };
        Ok(Self {
            side: side_seam(f, shaping.lower, &spec)?,
            plan,
            neck,
            shoulders,
            front_side,
            underarm,
            waist,
            back_width,
            front_width,
            back_chest,
            front_chest: half - back_chest + taken_in,
            front_chest_closed: shape.front_closed,
            lift: shape.lift,
            bust_point: bust.point,
            tip_off: bust.tip_off,
            bust_angle: shape.angle,
            shares,
            hip_out,
            warnings,
            form,
            bounds,
        })
    }

    /// How much of the open underarm line lies inside bust dart and waist dart, sewn to the bust
    /// point.
    fn darts_at_underarm(&self, shaping: &Shaping) -> f64 {
        let level = self.front_underarm().y;
        if self.bust_point.y >= level {
            return 0.0;
        }
        let closed = self.closed_front_side();
        let bust = self.opens(&closed).front().ok().and_then(|f| f.dart);
        let waist = (shaping.lower == Lower::Waist)
            .then(|| waist_edge("front waist", &self.front_waist(closed.end())).ok())
            .flatten();
        let waist = waist.into_iter().flat_map(|edge| edge.darts);
        let inside = |dart: Dart| {
            let (middle, apex) = (dart.legs[0].midpoint(dart.legs[1]), dart.apex());
            let axis = (apex - middle).normalize();
            let full = apex + axis * (self.bust_point - apex).dot(axis);
            let at = |leg: Point| (leg.x - full.x) * (level - full.y) / (leg.y - full.y);
            let [one, other] = dart.legs.map(at);
            if level > full.y {
                (one - other).abs()
            } else {
                0.0
            }
        };
        // The double-pointed dart of a one-piece block is sewn to its own apex.
        let apex = front_dart_level(self.bust_point.y, self.waist);
        let double = match shaping.lower {
            Lower::Hem { darts: true, .. } if level > apex => {
                self.shares.front_dart * (level - apex) / (self.waist - apex)
            }
            _ => 0.0,
        };
        double + bust.into_iter().chain(waist).map(inside).sum::<f64>()
    }

    /// The waist edge of the front of a bodice whose side seam ends there.
    pub fn front_waist(&self, side: Point) -> WaistQuarter {
        WaistQuarter {
            level: self.waist,
            side: (side, self.side.end_direction()),
            length: self.plan.front,
            dart_at: self.plan.front_dart_at,
            apex_level: front_dart_level(self.bust_point.y, self.waist),
            intake: self.shares.front_dart,
        }
    }

    /// The underarm point of the back.
    pub fn back_underarm(&self) -> Point {
        Point::new(self.back_chest, self.underarm)
    }

    /// Direction of the sewn side seam as it leaves the underarm.
    pub fn side_direction(&self) -> Vec2 {
        self.side.start_direction()
    }

    /// The turn about the bust point that opens the bust dart.
    pub fn opening(&self) -> Rigid {
        Rigid::turn_about(self.bust_point, -self.bust_angle)
    }

    /// The front's side seam with the bust dart closed.
    pub fn closed_front_side(&self) -> Curve {
        let underarm = Vec2::new(self.front_chest_closed, self.underarm);
        self.side.moved(&Rigid::shift(underarm))
    }

    /// Where the bust dart opens on that seam.
    pub fn opens<'a>(&self, closed: &'a Curve) -> Opens<'a> {
        Opens {
            closed,
            bust: (self.bust_point, self.tip_off),
            opening: self.opening(),
            levels: (self.underarm, self.waist),
        }
    }

    /// The front's underarm point with the dart open.
    pub fn front_underarm(&self) -> Point {
        self.opening()
            .apply(Point::new(self.front_chest_closed, self.underarm))
    }
}

/// Length of a waist edge without darts, for a quarter `chest` wide at the underarm whose side
/// seam comes in by `side`.
fn undarted_waist(chest: f64, side: f64, waist: f64, underarm: f64) -> Result<f64, DraftError> {
    let seam = Vec2::new(-side, waist - underarm).normalize();
    let spec = WaistSpec {
        centre: Point::new(0.0, waist),
        side: Point::new(chest - side, waist),
        arrive: -perpendicular(seam),
        length: 0.0,
        darts: Vec::new(),
        point: DartsPoint::Up,
    };
    Ok(waistline(&spec)?.edge.length())
}

/// What is taken in at the waist of a block whose half chest is `chest` wide.
fn shares(lower: Lower, chest: f64, half_waist: f64, half_hip: f64, levels: (f64, f64)) -> Shares {
    let spare = chest - half_waist;
    match lower {
        Lower::Waist
        | Lower::Hem {
            darts: true,
            side: SideLine::Shaped,
            ..
        } => Shares::of(spare),
        Lower::Hem {
            darts: false,
            side: SideLine::Shaped,
            ..
        } => Shares::at_sides(spare),
        Lower::Hem {
            darts,
            side: SideLine::Straight,
            ..
        } => {
            let side = straight_in(levels.0, levels.1, (half_hip - chest) / 2.0);
            let beside = Shares::beside(spare, side);
            if darts {
                beside
            } else {
                Shares {
                    back_dart: 0.0,
                    front_dart: 0.0,
                    ..beside
                }
            }
        }
    }
}
