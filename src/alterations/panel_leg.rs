//! One leg of a dart as a part of a panel seam.

use crate::geometry::{Curve, GeometryError, Point, Vec2, along};

/// Handles of a rounding, as a share of its length.
const HANDLE: f64 = 0.4;

/// An end of a leg: where the seam is, where the leg points, direction of the seam.
type LegEnd = (Point, Point, Option<Vec2>);

/// One leg: straight, rounded into the seam's direction at its ends.
pub(super) fn leg(
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
