//! The armscye: one smooth curve from the shoulder point by the width of the back or front to
//! the underarm, bending one way only.
//!
//! Two cubics meet at the width point with the same direction and the same curvature. Each has
//! its handles inside the corner that its end tangents make, so neither can bend back: the
//! control polygon is convex, and so is a cubic drawn on it.

use super::DraftError;
use super::bounds::{Bound, Bounds};
use super::frame::Frame;
use crate::geometry::elementary::{atan2, cos, sin, tan};
use crate::geometry::{Curve, Point, Span, Vec2, perpendicular, unit};
use std::f64::consts::PI;

const BACK_SCOOP: f64 = 0.59;
const FRONT_SCOOP: f64 = 0.70;

/// What an armscye runs through.
#[derive(Debug, Clone, Copy, PartialEq)]
struct ArmscyeSpec {
    /// The shoulder point.
    shoulder: Point,
    /// Unit direction of the shoulder toward its point.
    shoulder_direction: Vec2,
    /// Width of the back or front at the width point, from the fold.
    width: f64,
    /// Wished level of the width point between shoulder point and underarm, from the shoulder.
    level: f64,
    /// The underarm point.
    underarm: Point,
    /// Unit direction of the side seam as it leaves the underarm.
    side_direction: Vec2,
    /// How far the curve reaches into the corner under the arm.
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
const SPARE_TURN: f64 = 7.0 * PI / 180.0;

/// Of the turn between the two chords the upper part takes at most this share.
const UPPER_SHARE: f64 = 0.4;

/// Least turn from square to the shoulder to the chord down to the width point, in radians. A
/// shoulder that juts far over its width gets a lower width point until it has that.
const LEAST_TURN: f64 = 4.0 * PI / 180.0;

/// Before the width point would lie lower than this, as a share from shoulder point to underarm, the
/// shoulder is shortened: an armscye to a lower one runs straight in and turns sharply out.
const LOW_WIDTH: f64 = 0.62;

/// The width point never lies lower than this.
const LOWEST_WIDTH: f64 = 0.76;

/// The corner that a part rounds stays this share of its chord away from both ends.
const LEAST_CORNER: f64 = 0.03;

/// Angle of a direction from straight down, outward positive, in radians.
fn outward(direction: Vec2) -> f64 {
    atan2(direction.x, direction.y)
}

/// One part of an armscye: between two points with their directions, a corner to round.
struct Part {
    from: Point,
    to: Point,
    leave: f64,
    arrive: f64,
    /// Distances of the corner of the two tangents from both ends.
    legs: (f64, f64),
}

impl Part {
    fn new(from: Point, leave: f64, to: Point, arrive: f64) -> Result<Self, DraftError> {
        let chord = to - from;
        let (length, along, turn) = (chord.hypot(), outward(chord), sin(arrive - leave));
        let legs = (
            length * sin(arrive - along) / turn,
            length * sin(along - leave) / turn,
        );
        let least = LEAST_CORNER * length;
        let found = legs.0.min(legs.1);
        if arrive > leave && found >= least {
            return Ok(Self {
                from,
                to,
                leave,
                arrive,
                legs,
            });
        }
        Err(DraftError::OutOfReach {
            what: "room for the armscye",
            found: if found.is_finite() { found } else { 0.0 },
            low: least,
            high: length,
            unit: "mm",
            advice: "The width at this level lies too far inside the shoulder point, nearly reaches the underarm, or the side seam slants too much: check shoulder_length, back_width and front_width against each other and against bust_girth",
        })
    }

    /// The cubic whose handles are these shares of the way to the corner.
    fn curve(&self, shares: (f64, f64)) -> Result<Curve, DraftError> {
        let direction = |angle: f64| Vec2::new(sin(angle), cos(angle));
        Ok(Curve::hermite(
            self.from,
            direction(self.leave) * (shares.0 * self.legs.0),
            self.to,
            direction(self.arrive) * (shares.1 * self.legs.1),
        )?)
    }

    /// Curvature at the start, for handles of a share of the way to the corner.
    fn curvature_at_start(&self, share: f64) -> f64 {
        let rise = (1.0 - share) * self.legs.1 * sin(self.arrive - self.leave);
        let handle = share * self.legs.0;
        2.0 / 3.0 * rise / (handle * handle)
    }

    /// The share at which the curvature at the end is as given: the root of
    /// `(1 - s) / s² = g`, which lies between 0 and 1 for every curvature.
    fn share_for_end(&self, curvature: f64) -> f64 {
        let rise = self.legs.0 * sin(self.arrive - self.leave);
        let g = 1.5 * curvature * self.legs.1 * self.legs.1 / rise;
        2.0 / (1.0 + (1.0 + 4.0 * g).sqrt())
    }
}

/// Most that the corner between shoulder and armscye is turned out of square, in radians; the
/// other half turns back by as much, so that the sewn armscye runs on over the shoulder.
const MOST_LEAN: f64 = 9.0 * PI / 180.0;

impl ArmscyeSpec {
    /// Direction in which the armscye leaves the shoulder square to it.
    fn square(&self) -> f64 {
        outward(perpendicular(self.shoulder_direction))
    }

    fn width_point(&self, level: f64) -> Point {
        let height = self.underarm.y - self.shoulder.y;
        Point::new(self.width, self.shoulder.y + level * height)
    }

    /// By how much the curve turns, at least, before it reaches a width point at that level, in
    /// radians beyond [`LEAST_TURN`]; negative where it would have to bend back.
    fn spare(&self, level: f64) -> f64 {
        let chord = outward(self.width_point(level) - self.shoulder);
        chord - self.square() - LEAST_TURN
    }
}

/// What back and front armscye have in hand, in radians, with their width points as low as they look
/// right and each half leaning as far as it may; negative where a shoulder juts out further.
pub(super) fn room(frame: &Frame) -> Result<f64, DraftError> {
    let (back, front) = specs(frame)?;
    let (back, front) = (back.spare(LOW_WIDTH), front.spare(LOW_WIDTH));
    Ok((back + front).min(back.min(front) + MOST_LEAN))
}

/// By how much the front leaves the shoulder further inward than square, and the back further
/// outward: where one shoulder point juts out over its width, the other half gives way.
fn lean(back: &ArmscyeSpec, front: &ArmscyeSpec) -> f64 {
    let (spare_back, spare_front) = (back.spare(back.level), front.spare(front.level));
    let give = |short: f64, other: f64| (-short).min(other.max(0.0));
    let wished = if spare_front < 0.0 {
        give(spare_front, spare_back)
    } else if spare_back < 0.0 {
        -give(spare_back, spare_front)
    } else {
        0.0
    };
    // Where both give way, neither does so further than its lowest width point allows.
    let (most, least) = (back.spare(LOW_WIDTH), -front.spare(LOW_WIDTH));
    let held = if least > most {
        0.5 * (least + most)
    } else {
        wished.max(least).min(most)
    };
    Span::about_zero(MOST_LEAN).nearest(held)
}

/// Draws the armscye: square to the shoulder but for the lean, through the width point, square
/// to the side seam.
fn armscye(spec: &ArmscyeSpec, lean: f64, bounds: &mut Bounds) -> Result<Armscye, DraftError> {
    let leave = spec.square() - lean;
    let arrive = outward(-perpendicular(spec.side_direction));
    let height = spec.underarm.y - spec.shoulder.y;
    // The chord from a shoulder point that juts out must still lie outside the first direction.
    let jut = spec.shoulder.x - spec.width;
    let steepest = tan(-leave - LEAST_TURN);
    let needed = if jut > 0.0 && steepest > 0.0 {
        jut / steepest / height
    } else {
        0.0
    };
    bounds.note(Bound::ShoulderJuts, needed > spec.level + 1e-9);
    let width_point = spec.width_point(spec.level.max(needed).min(LOWEST_WIDTH));
    let upper_chord = outward(width_point - spec.shoulder);
    let between = outward(spec.underarm - width_point) - upper_chord;
    // Plumb at the width point wherever the shoulder point lies outside it.
    let at_width = (upper_chord + SPARE_TURN.min(UPPER_SHARE * between)).max(0.0);
    let lower = Part::new(width_point, at_width, spec.underarm, arrive)?;
    let upper = Part::new(spec.shoulder, leave, width_point, at_width)?;
    let share = upper.share_for_end(lower.curvature_at_start(spec.scoop));
    let upper = upper.curve((share, share))?;
    let width_at = upper.length();
    Ok(Armscye {
        curve: upper.then(&lower.curve((spec.scoop, spec.scoop))?)?,
        width_at,
        width_point,
    })
}

/// The back armscye of a frame.
pub(super) fn back(frame: &Frame) -> Result<Armscye, DraftError> {
    let (back, front) = specs(frame)?;
    armscye(&back, -lean(&back, &front), &mut Bounds::default())
}

/// The front armscye of a frame, the bust dart open.
pub(super) fn front(frame: &Frame) -> Result<Armscye, DraftError> {
    let (back, front) = specs(frame)?;
    armscye(&front, lean(&back, &front), &mut Bounds::default())
}

/// Length of both armscyes of a frame, and the bounds that they reach.
pub(super) fn length(frame: &Frame, bounds: &mut Bounds) -> Result<f64, DraftError> {
    let (back, front) = specs(frame)?;
    let lean = lean(&back, &front);
    let back = armscye(&back, -lean, bounds)?;
    let front = armscye(&front, lean, bounds)?;
    Ok(back.curve.length() + front.curve.length())
}

/// What the back and the front armscye of a frame run through.
fn specs(frame: &Frame) -> Result<(ArmscyeSpec, ArmscyeSpec), DraftError> {
    let shoulder = frame.shoulders.back()?;
    let back = ArmscyeSpec {
        shoulder: shoulder.edge.end(),
        shoulder_direction: shoulder.outward,
        width: frame.back_width,
        level: frame.form.width_level(),
        underarm: frame.back_underarm(),
        side_direction: frame.side_direction(),
        scoop: frame.form.scoop(BACK_SCOOP),
    };
    let front = ArmscyeSpec {
        shoulder: frame.shoulders.front_point(frame.front_side),
        shoulder_direction: unit(frame.shoulders.front_slope),
        width: frame.front_width,
        level: frame.form.width_level(),
        underarm: frame.front_underarm(),
        side_direction: frame.opening().apply_direction(frame.side_direction()),
        scoop: frame.form.scoop(FRONT_SCOOP),
    };
    Ok((back, front))
}
