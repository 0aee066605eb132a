//! An armscye whose middle slides down with the shoulder point.

use super::true_up::carried;
use crate::geometry::{Curve, GeometryError, Point, Rigid, Span, Vec2, intersect_lines, root};
use kurbo::PathSeg;

/// The armscye from `tip`, leaving along `leave`, to its old end, which it reaches as before.
///
/// Its middle, `over` millimetres along the old one, slides along its own direction there, so
/// that the width across the back stays, until the whole is as long as wanted or the middle has
/// dropped as far as the shoulder point: farther down the armscye would get boxy. The part above
/// goes with it, the handle below is drawn in so that the curve stays hollow. Gives the place of
/// the middle, too.
///
/// # Errors
/// When the part below the middle is not one curve, or it is too long without a slide.
pub(super) fn lowered_armscye(
    armscye: &Curve,
    (tip, leave): (Point, Vec2),
    over: f64,
    length: f64,
) -> Result<(Curve, Point), GeometryError> {
    let (upper, below) = armscye.split_at(over)?;
    let [PathSeg::Cubic(old)] = below.segments() else {
        return Err(GeometryError::Empty);
    };
    let down = upper.end_direction();
    // Where the tangents of the lower part meet: the handle above may not reach beyond.
    let corner = intersect_lines(old.p0, down, old.p3, below.end_direction())?;
    let room = (corner - old.p0).dot(down);
    let drawn = |slide: f64| -> Result<(Curve, Point), GeometryError> {
        let by = down * slide;
        let middle = old.p0 + by;
        // The upper part as it was, slid along, its start then laid on the new shoulder point.
        let slid = upper.moved(&Rigid::shift(by));
        let swing = Rigid::lay(slid.start(), slid.start_direction(), tip, leave);
        let top = carried(&slid, &swing)?;
        let handle = (old.p1 - old.p0) * ((room - slide) / room);
        let bottom = Curve::cubic(middle, middle + handle, old.p2, old.p3)?;
        Ok((top.then(&bottom)?, middle))
    };
    let most = Span::from_low(0.0, 0.4 * room).nearest(tip.y - armscye.start().y);
    let farthest = drawn(most)?;
    if farthest.0.length() <= length {
        return Ok(farthest);
    }
    let slide = root("slide of the middle of an armscye", 0.0, most, |slide| {
        drawn(slide).map_or(f64::NAN, |(curve, _)| curve.length() - length)
    })?;
    drawn(slide)
}
