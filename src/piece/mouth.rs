//! The shaped mouth of a dart: what makes the folded dart lie flush with the seam.

use super::Pressed;
use crate::geometry::{Curve, GeometryError, Point, Rigid, crossings};

/// The mouth between two leg ends: from the first leg to the second.
///
/// `beside` is the edge next to the leg on which the fold lies, walked in the outline's
/// direction: it ends at the first leg or starts at the second. The fold covers it, so the
/// part of the mouth next to that leg is its mirror in the leg, up to the middle of the dart;
/// the rest is that part mirrored in the middle.
///
/// ```
/// use blockwright::geometry::{Curve, Point};
/// use blockwright::piece::{Pressed, shaped_mouth};
/// let (apex, legs) = (Point::new(0.0, -100.0), [Point::new(10.0, 0.0), Point::new(-10.0, 0.0)]);
/// let before = Curve::line(Point::new(60.0, 5.0), legs[0])?;
/// let mouth = shaped_mouth(apex, legs, &before, Pressed::TowardFirstLeg)?;
/// assert!(mouth.bounds().y1 > 0.5, "it stands out below the edge");
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When the edge beside the leg, mirrored and carried on, never reaches the middle of the dart.
pub fn shaped_mouth(
    apex: Point,
    legs: [Point; 2],
    beside: &Curve,
    pressed: Pressed,
) -> Result<Curve, GeometryError> {
    let first = pressed == Pressed::TowardFirstLeg;
    let (leg, away) = if first {
        (legs[0], beside.reversed())
    } else {
        (legs[1], beside.clone())
    };
    let middle = (legs[0] - apex).normalize() + (legs[1] - apex).normalize();
    let near = away.moved(&Rigid::mirror(apex, leg - apex));
    // The mirrored edge carried straight on, in case it ends before the middle.
    let reach = legs[0].distance(legs[1]);
    let near = near.clone().then(&Curve::line(
        near.end(),
        near.end() + near.end_direction() * reach,
    )?)?;
    let far = apex + middle.normalize() * (2.0 * leg.distance(apex));
    let centre = Curve::line(apex, far)?;
    let tip = crossings(near.segments(), centre.segments())
        .first()
        .map(|c| near.nearest(c.point).1)
        .ok_or(GeometryError::Parallel)?;
    let near = near.part(0.0, tip)?;
    // Put the tip exactly on the middle, so that both halves meet there.
    let back = near.reversed().moved(&Rigid::mirror(apex, middle));
    let gap = back.start() - near.end();
    let back = back.moved(&Rigid::shift(-gap));
    let other = if first { legs[1] } else { legs[0] };
    let back = back.ending_at(other)?;
    let mouth = near.then(&back)?;
    Ok(if first { mouth } else { mouth.reversed() })
}
