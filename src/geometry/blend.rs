//! An end of a curve led elsewhere, the rest kept.

use super::{Curve, GeometryError, Point, Rigid, Vec2, arc_length};
use kurbo::{CubicBez, PathSeg};

/// The curve with its start moved and turned, blended into the rest.
///
/// The first `over` millimetres are redrawn as one smooth piece from `start`, leaving along
/// `direction`, to where the old curve goes on; everything beyond stays.
///
/// ```
/// use blockwright::geometry::{Curve, Point, Vec2, blend_start};
/// let edge = Curve::line(Point::ORIGIN, Point::new(200.0, 0.0))?;
/// let blended = blend_start(&edge, Point::new(0.0, 10.0), Vec2::new(1.0, 0.0), 80.0)?;
/// assert_eq!(blended.start(), Point::new(0.0, 10.0));
/// assert_eq!(blended.end(), edge.end());
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When the curve is shorter than `over`.
pub fn blend_start(
    curve: &Curve,
    start: Point,
    direction: Vec2,
    over: f64,
) -> Result<Curve, GeometryError> {
    let (old, rest) = curve.split_at(over)?;
    let motion = Rigid::lay(old.start(), old.start_direction(), start, direction);
    let fresh = carried(&old, &motion)?;
    fresh.then(&rest)
}

/// A curve whose start goes with a motion while its end stays, directions included: every
/// control point goes with a share of the motion that falls along the curve.
pub(crate) fn carried(curve: &Curve, motion: &Rigid) -> Result<Curve, GeometryError> {
    let count = curve.segments().len();
    let moved = |p: Point, share: f64| p.lerp(motion.apply(p), share);
    let mut segments = Vec::with_capacity(count);
    // By length along the curve: a short part between two long ones is not torn.
    let whole = curve.length();
    let mut walked = 0.0;
    for (index, segment) in curve.segments().iter().enumerate() {
        let from = walked;
        walked += arc_length(segment);
        let share = |t: f64| 1.0 - (from + t * (walked - from)) / whole;
        let c = as_cubic(segment);
        // The first handle goes with the start, the last stays with the end.
        let first = if index == 0 { 1.0 } else { share(0.0) };
        let last = if index + 1 == count { 0.0 } else { share(1.0) };
        segments.push(PathSeg::Cubic(CubicBez::new(
            moved(c.p0, share(0.0)),
            moved(c.p1, first),
            moved(c.p2, last),
            moved(c.p3, share(1.0)),
        )));
    }
    Curve::new(segments)
}

/// The same segment as a cubic, its handles at thirds of a line.
pub(crate) fn as_cubic(segment: &PathSeg) -> CubicBez {
    match *segment {
        PathSeg::Line(l) => CubicBez::new(
            l.p0,
            l.p0.lerp(l.p1, 1.0 / 3.0),
            l.p0.lerp(l.p1, 2.0 / 3.0),
            l.p1,
        ),
        PathSeg::Quad(q) => q.raise(),
        PathSeg::Cubic(c) => c,
    }
}

/// The same as [`blend_start`] at the end of a curve: `direction` is that in which it arrives.
///
/// ```
/// use blockwright::geometry::{Curve, Point, Vec2, blend_end};
/// let edge = Curve::line(Point::ORIGIN, Point::new(200.0, 0.0))?;
/// let blended = blend_end(&edge, Point::new(200.0, 10.0), Vec2::new(1.0, 0.0), 80.0)?;
/// assert_eq!(blended.start(), edge.start());
/// assert_eq!(blended.end(), Point::new(200.0, 10.0));
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When the curve is shorter than `over`.
pub fn blend_end(
    curve: &Curve,
    end: Point,
    direction: Vec2,
    over: f64,
) -> Result<Curve, GeometryError> {
    Ok(blend_start(&curve.reversed(), end, -direction, over)?.reversed())
}
