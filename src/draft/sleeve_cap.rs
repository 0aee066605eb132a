//! The sleeve cap: its height and the place of its top, solved so that each half is as long as
//! its half of the armscye with its ease.

use crate::geometry::{Curve, GeometryError, Point, Vec2, arc_length, intersect_lines, root, unit};
use kurbo::{CubicBez, PathSeg};

/// A cap asked for. The biceps line runs along y = 0 from the back underarm at x = 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct CapSpec {
    /// Width of the biceps line.
    pub biceps: f64,
    /// Lengths of the back and front half.
    pub back: f64,
    pub front: f64,
    /// Unit directions in which the halves leave the underarm, inward.
    pub back_leave: Vec2,
    pub front_leave: Vec2,
}

/// A cap: both halves in the outline's direction, from the back underarm over the top.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Cap {
    pub back: Curve,
    pub front: Curve,
    pub height: f64,
}

/// Where a half turns from hollow to round, as a share of its chord from the underarm, and how
/// much steeper than the chord it is there: a share of what lies between the chord and its
/// level on one side, the plumb line on the other, so that a low cap is flatter all over.
struct Half {
    turn_at: f64,
    steeper: f64,
}

/// The back half is full: it turns early and is hollowed little.
const BACK: Half = Half {
    turn_at: 0.33,
    steeper: 0.68,
};
/// The front half is flat: it turns late and is hollowed more, for the arm moves forward.
const FRONT: Half = Half {
    turn_at: 0.42,
    steeper: 0.78,
};

/// A half cap from the underarm to the top at `top`; inward is the sign of x.
///
/// Two cubics that meet with no curvature where hollow turns to round, so that nothing is
/// seen there: each has its inner control points on the tangent at that place.
fn half(from: Point, leave: Vec2, top: Point, shape: &Half) -> Result<Curve, GeometryError> {
    Curve::new(cubics(from, leave, top, shape)?.to_vec())
}

fn cubics(
    from: Point,
    leave: Vec2,
    top: Point,
    shape: &Half,
) -> Result<[PathSeg; 2], GeometryError> {
    let chord = top - from;
    let inward = chord.x.signum();
    let turn = from + chord * shape.turn_at;
    let rise = Vec2::new(chord.x.abs(), -chord.y).atan2();
    let rise = rise + shape.steeper * rise * (1.0 - rise / std::f64::consts::FRAC_PI_2);
    let steep = unit(-rise);
    let tangent = Vec2::new(steep.x * inward, steep.y);
    let low = intersect_lines(from, leave, turn, tangent)?;
    let high = intersect_lines(turn, tangent, top, Vec2::new(1.0, 0.0))?;
    let lower = CubicBez::new(from, low, low.lerp(turn, 0.45), turn);
    let upper = CubicBez::new(turn, turn.lerp(high, 0.62), high, top);
    Ok([lower.into(), upper.into()])
}

/// Width of a half of that height and length.
fn width_of(length: f64, height: f64, leave: Vec2, shape: &Half) -> Result<f64, GeometryError> {
    let inward = leave.x.signum();
    // The curve is longer than its chord, so its width is less than this.
    let most = (length * length - height * height).max(1.0).sqrt();
    root("width of half the sleeve cap", 0.5 * most, most, |width| {
        let top = Point::new(inward * width, -height);
        cubics(Point::ORIGIN, leave, top, shape).map_or(f64::NAN, |[lower, upper]| {
            arc_length(&lower) + arc_length(&upper) - length
        })
    })
}

/// Heights between which a cap is sought, as shares of its shorter half.
const HEIGHTS: (f64, f64) = (0.18, 0.88);

/// The biceps line that gives the cap that height, if there is one.
pub(super) fn width_at_height(spec: &CapSpec, height: f64) -> Option<f64> {
    let back = width_of(spec.back, height, spec.back_leave, &BACK).ok()?;
    let front = width_of(spec.front, height, spec.front_leave, &FRONT).ok()?;
    Some(back + front)
}

/// The narrowest and the widest biceps line that a cap of these lengths can have.
pub(super) fn cap_widths(spec: &CapSpec) -> (f64, f64) {
    let shorter = spec.back.min(spec.front);
    let width = |share: f64| width_at_height(spec, share * shorter);
    // A tall cap may have no width at all: then nothing is too narrow.
    (
        width(HEIGHTS.1).unwrap_or(0.0),
        width(HEIGHTS.0).unwrap_or(f64::MAX),
    )
}

/// Solves the cap.
pub(super) fn cap(spec: &CapSpec) -> Result<Cap, GeometryError> {
    let widths = |height: f64| -> Result<(f64, f64), GeometryError> {
        Ok((
            width_of(spec.back, height, spec.back_leave, &BACK)?,
            width_of(spec.front, height, spec.front_leave, &FRONT)?,
        ))
    };
    let shorter = spec.back.min(spec.front);
    let height = root(
        "height of the sleeve cap",
        HEIGHTS.0 * shorter,
        HEIGHTS.1 * shorter,
        |height| widths(height).map_or(f64::NAN, |(back, front)| back + front - spec.biceps),
    )?;
    let top = Point::new(widths(height)?.0, -height);
    let end = Point::new(spec.biceps, 0.0);
    Ok(Cap {
        back: half(Point::ORIGIN, spec.back_leave, top, &BACK)?,
        front: half(end, spec.front_leave, top, &FRONT)?.reversed(),
        height,
    })
}
