//! One leg of a dart as a part of a panel seam, and a sweep that bends one way.

use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, along, angle_between, intersect_lines, tolerance,
};

/// Handles of a rounding, as a share of its length.
const HANDLE: f64 = 0.4;

/// An end of a leg: where the seam is, where the leg points, direction of the seam.
type LegEnd = (Point, Point, Option<Vec2>);

/// Handles of a leg that is drawn in one, as a share of its length.
const SMOOTH: f64 = 0.36;

/// One leg whose directions are given at both ends, in one curve: it turns back once at most.
pub(in crate::alterations) fn smooth_leg(
    (from, leave): (Point, Vec2),
    (to, arrive): (Point, Vec2),
    fullness: f64,
) -> Result<Curve, GeometryError> {
    let handle = SMOOTH * fullness * from.distance(to);
    Curve::hermite(from, leave * handle, to, arrive * handle)
}

/// One leg: straight, rounded into the seam's direction at its ends.
pub(in crate::alterations) fn leg(
    (from, aims_from, leave): LegEnd,
    (to, aims_to, arrive): LegEnd,
    over: [f64; 2],
    fullness: f64,
) -> Result<Curve, GeometryError> {
    let straight = (aims_to - aims_from).normalize();
    let handle = |a: Point, b: Point| a.distance(b) * HANDLE * fullness;
    let start = leave.map_or(from, |_| along(aims_from, aims_to, over[0]));
    let end = arrive.map_or(to, |_| along(aims_to, aims_from, over[1]));
    let mut whole = Curve::line(start, end)?;
    if let Some(direction) = leave {
        let h = handle(from, start);
        whole = Curve::hermite(from, direction * h, start, straight * h)?.then(&whole)?;
    }
    if let Some(direction) = arrive {
        let h = handle(end, to);
        whole = whole.then(&Curve::hermite(end, straight * h, to, direction * h)?)?;
    }
    Ok(whole)
}

/// Handles of a sweep reach this share of the way to the corner of its tangents.
pub(in crate::alterations) const SWEPT: f64 = 2.0 / 3.0;

/// A direction turned by an angle in radians, clockwise on the page.
pub(in crate::alterations) fn turned(way: Vec2, angle: f64) -> Vec2 {
    Rigid::turn_about(Point::ORIGIN, angle).apply_direction(way)
}

/// A curve from one place and direction to another that bends one way only.
///
/// # Errors
/// When the two directions ask for a bend to and fro.
pub(in crate::alterations) fn swept(
    (from, leave): (Point, Vec2),
    (to, arrive): (Point, Vec2),
) -> Result<Curve, GeometryError> {
    let chord = to - from;
    let (off, onto) = (angle_between(leave, chord), angle_between(chord, arrive));
    if off.abs().max(onto.abs()) <= tolerance::ANGLE {
        return Curve::line(from, to);
    }
    if off * onto <= 0.0 {
        return Err(GeometryError::Parallel);
    }
    let corner = intersect_lines(from, leave, to, arrive)?;
    let (before, after) = (corner - from, to - corner);
    if before.dot(leave) <= 0.0 || after.dot(arrive) <= 0.0 {
        return Err(GeometryError::Parallel);
    }
    Curve::cubic(from, from.lerp(corner, SWEPT), to.lerp(corner, SWEPT), to)
}
