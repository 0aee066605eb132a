//! The side seam, darts closed: from the underarm at the origin down to waist or hem.

use super::error::within;
use super::shaping::{Lower, SideLine};
use super::{DraftError, Figure};
use crate::geometry::elementary::atan;
use crate::geometry::{Curve, Point, Span, Vec2};

/// What a side seam runs through, measured from the underarm: x outward, y down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SideSpec {
    /// How far it comes in at the waist; negative when it goes out.
    pub waist_in: f64,
    /// Depth of the waist below the underarm.
    pub waist_depth: f64,
    /// How far out it lies at the hip; negative when in.
    pub hip_out: f64,
}

/// Steepest side seam that hangs without dragging, in degrees from the plumb line.
const STEEPEST: f64 = 34.0;

/// Most that a shaped side seam slants at the underarm, as a slope (12 degrees).
const MOST_SLANT: f64 = 0.21;

/// How far a straight side seam comes in at the waist when it ends `hip_out` out at the hip.
pub(super) fn straight_in(spec_waist_depth: f64, hip_depth: f64, hip_out: f64) -> f64 {
    -hip_out * spec_waist_depth / (spec_waist_depth + hip_depth)
}

/// The seam for a block.
pub(super) fn side_seam(f: &Figure, lower: Lower, spec: &SideSpec) -> Result<Curve, DraftError> {
    let waist = Point::new(-spec.waist_in, spec.waist_depth);
    let Lower::Hem { side, length, .. } = lower else {
        return Ok(Curve::line(Point::ORIGIN, waist)?);
    };
    let hip = Point::new(spec.hip_out, spec.waist_depth + f.waist_to_hip);
    let hem = Point::new(hip.x, spec.waist_depth + length);
    let upper = match side {
        SideLine::Straight => eased_into_plumb(hip)?,
        SideLine::Shaped => shaped(waist, hip)?,
    };
    let steep = |from: Point, to: Point| atan((to.x - from.x) / (to.y - from.y)).to_degrees().abs();
    let steepest = match side {
        SideLine::Straight => steep(Point::ORIGIN, hip),
        SideLine::Shaped => steep(Point::ORIGIN, waist).max(steep(waist, hip)),
    };
    within(
        "slant of the side seam",
        steepest,
        (0.0, STEEPEST),
        "degrees",
        "Bust, waist and hip differ too much for one straight fall of cloth: draft bodice and skirt instead",
    )?;
    if hem.y > hip.y + 1.0 {
        return Ok(upper.then(&Curve::line(hip, hem)?)?);
    }
    cut_at_level(&upper, hem.y)
}

/// Straight from the underarm, easing into the plumb line just above the hip.
fn eased_into_plumb(hip: Point) -> Result<Curve, DraftError> {
    let bend = Point::ORIGIN.lerp(hip, 0.72);
    let along = (hip - Point::ORIGIN).normalize();
    let reach = bend.distance(hip);
    let foot = Curve::hermite(
        bend,
        along * (0.4 * reach),
        hip,
        Vec2::new(0.0, 0.4 * reach),
    )?;
    Ok(Curve::line(Point::ORIGIN, bend)?.then(&foot)?)
}

/// In at the waist, out to the hip, plumb there: one curve without a corner.
///
/// The slopes are those of a monotone cubic (Fritsch and Carlson 1980): none at the waist
/// where it is the narrowest place, between those of the two chords where it is not, so that
/// the seam never swings past what the body asks.
fn shaped(waist: Point, hip: Point) -> Result<Curve, DraftError> {
    let (over, under) = (waist.y, hip.y - waist.y);
    let (a, b) = (waist.x / over, (hip.x - waist.x) / under);
    let at_waist = if a * b <= 0.0 {
        0.0
    } else {
        let (w1, w2) = (2.0 * under + over, under + 2.0 * over);
        (w1 + w2) / (w1 / a + w2 / b)
    };
    // At the underarm the seam starts about along its chord, but never so slanted that an
    // armscye square to it would have to climb.
    let wished = if at_waist == 0.0 {
        1.2 * a
    } else {
        (3.0 * a - at_waist) / 2.0
    };
    let at_underarm = Span::about_zero(MOST_SLANT).nearest(wished);
    let slope = |s: f64, reach: f64| Vec2::new(s, 1.0) * (reach / 3.0);
    let upper = Curve::hermite(
        Point::ORIGIN,
        slope(at_underarm, over),
        waist,
        slope(at_waist, over),
    )?;
    let lower = Curve::hermite(waist, slope(at_waist, under), hip, slope(0.0, under))?;
    Ok(upper.then(&lower)?)
}

/// The curve down to a level it crosses once.
fn cut_at_level(curve: &Curve, level: f64) -> Result<Curve, DraftError> {
    let reach = 2000.0;
    let line = Curve::line(Point::new(-reach, level), Point::new(reach, level))?;
    let crossing = crate::geometry::crossings(curve.segments(), line.segments());
    match crossing.first() {
        Some(c) => Ok(curve.split_at(curve.nearest(c.point).1)?.0),
        None => Ok(curve.clone()),
    }
}
