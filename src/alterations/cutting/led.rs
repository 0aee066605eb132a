//! A line led along by its two ends.

use crate::geometry::{Curve, GeometryError, Point, Rigid, as_cubic, bend_to_length, tolerance};
use kurbo::{CubicBez, PathSeg};

/// The curve whose start goes with one motion and whose end goes with another, directions
/// included: in between every point goes with a share of both that passes along the curve.
///
/// Smooth curves stay smooth, a straight line that is only drawn out stays straight, and motions
/// that are undone bring the curve back where both are shifts.
///
/// ```
/// use blockwright::alterations::led;
/// use blockwright::geometry::{Curve, Point, Rigid, Vec2};
/// let edge = Curve::line(Point::ORIGIN, Point::new(200.0, 0.0))?;
/// let longer = led(&edge, &Rigid::IDENTITY, &Rigid::shift(Vec2::new(10.0, 0.0)))?;
/// assert!((longer.length() - 210.0).abs() < 1e-9);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When a motion takes a point out of all measure.
pub fn led(curve: &Curve, at_start: &Rigid, at_end: &Rigid) -> Result<Curve, GeometryError> {
    if at_start == at_end {
        return Curve::new(curve.moved(at_start).segments().to_vec());
    }
    let count = curve.segments().len();
    let moved = |p: Point, share: f64| at_start.apply(p).lerp(at_end.apply(p), share);
    let mut segments = Vec::with_capacity(count);
    for (index, segment) in curve.segments().iter().enumerate() {
        let (from, to) = (
            index as f64 / count as f64,
            (index + 1) as f64 / count as f64,
        );
        let c = as_cubic(segment);
        // Handles go with their own ends, so that joints stay smooth.
        let c = CubicBez::new(
            moved(c.p0, from),
            moved(c.p1, from),
            moved(c.p2, to),
            moved(c.p3, to),
        );
        let drawn = Curve::new(vec![PathSeg::Cubic(c)])?;
        let straight =
            matches!(segment, PathSeg::Line(_)) && drawn.is_straight(tolerance::POINT * 1e-3);
        segments.push(if straight {
            PathSeg::Line(kurbo::Line::new(c.p0, c.p3))
        } else {
            PathSeg::Cubic(c)
        });
    }
    Curve::new(segments)
}

/// The curve made fuller or flatter until it is as long as wanted: the handles of its parts are
/// drawn out or shortened together, its ends and directions stay.
///
/// ```
/// use blockwright::alterations::filled;
/// use blockwright::geometry::{Curve, Point, Vec2};
/// let neck = Curve::hermite(Point::ORIGIN, Vec2::new(35.0, 0.0), Point::new(70.0, -60.0), Vec2::new(0.0, -30.0))?;
/// let fuller = filled(&neck, neck.length() + 1.0)?;
/// assert!((fuller.length() - neck.length() - 1.0).abs() < 1e-6);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When no fullness gives that length: a line has none.
pub fn filled(curve: &Curve, length: f64) -> Result<Curve, GeometryError> {
    if (curve.length() - length).abs() <= tolerance::SOLVE * 1e-3 {
        return Ok(curve.clone());
    }
    let drawn = |fullness: f64| {
        Curve::new(
            curve
                .segments()
                .iter()
                .map(|segment| match *segment {
                    PathSeg::Cubic(c) => PathSeg::Cubic(CubicBez::new(
                        c.p0,
                        c.p0.lerp(c.p1, fullness),
                        c.p3.lerp(c.p2, fullness),
                        c.p3,
                    )),
                    other => other,
                })
                .collect(),
        )
    };
    Ok(bend_to_length("fullness of a line", length, 0.5, 1.6, drawn)?.0)
}
