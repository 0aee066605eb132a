//! Lengths along a curve, the point at a length, the nearest point, areas.

use super::cubic_length::Measured;
use super::curve::arriving;
use super::{Curve, GeometryError, tolerance};
use kurbo::{
    ParamCurve, ParamCurveArclen, ParamCurveArea, ParamCurveNearest, PathSeg, Point, Rect, Vec2,
};

/// A place on a curve: the segment that holds it, what lies before and after that, and how far
/// through the segment it is.
struct Place<'c> {
    before: &'c [PathSeg],
    segment: &'c PathSeg,
    after: &'c [PathSeg],
    t: f64,
}

impl Curve {
    /// How far along the chain each segment ends: measured once, since everything that is
    /// sewn, notched or graded asks for it again and again.
    fn walked(&self) -> &[f64] {
        self.walked.get_or_init(|| {
            let mut along = 0.0;
            let walk = |s: &PathSeg| {
                along += arc_length(s);
                along
            };
            self.segments().iter().map(walk).collect()
        })
    }

    /// Length in millimetres, to [`tolerance::ARC_LENGTH`] a segment.
    #[must_use]
    pub fn length(&self) -> f64 {
        if let [line @ PathSeg::Line(_)] = self.segments() {
            return arc_length(line);
        }
        self.walked().last().copied().unwrap_or(0.0)
    }

    /// The place `at` millimetres along the curve; one at a joint is the end of the segment
    /// before it.
    fn place(&self, at: f64) -> Option<Place<'_>> {
        let mut start = 0.0;
        for (index, end) in self.walked().iter().enumerate() {
            if at <= end + tolerance::POINT {
                let (before, onward) = self.segments().split_at_checked(index)?;
                let (segment, after) = onward.split_first()?;
                let t = if (at - end).abs() <= tolerance::POINT {
                    1.0
                } else {
                    share_at_length(segment, at - start)
                };
                return Some(Place {
                    before,
                    segment,
                    after,
                    t,
                });
            }
            start = *end;
        }
        None
    }

    /// The curve up to, and the curve from, the point `at` millimetres along it.
    ///
    /// # Errors
    /// When `at` is not strictly inside the curve.
    pub fn split_at(&self, at: f64) -> Result<(Curve, Curve), GeometryError> {
        let past_end = || GeometryError::PastEnd {
            at,
            length: self.length(),
        };
        if at.is_nan() || at <= tolerance::POINT {
            return Err(past_end());
        }
        let place = self.place(at).ok_or_else(past_end)?;
        let mut head = Vec::with_capacity(place.before.len() + 1);
        head.extend_from_slice(place.before);
        let mut tail = Vec::with_capacity(place.after.len() + 1);
        // A cut within a point of a joint falls on the joint: no slivers.
        if place.t == 1.0 {
            if place.after.is_empty() {
                return Err(past_end());
            }
            head.push(*place.segment);
        } else {
            head.push(place.segment.subsegment(0.0..place.t));
            tail.push(place.segment.subsegment(place.t..1.0));
        }
        tail.extend_from_slice(place.after);
        Ok((Curve::new(head)?, Curve::new(tail)?))
    }

    /// The part between two lengths along the curve, either of which may be an end.
    ///
    /// # Errors
    /// When the part is empty or reaches outside the curve.
    pub fn part(&self, from: f64, to: f64) -> Result<Curve, GeometryError> {
        let length = self.length();
        if to.is_nan() || from.is_nan() || to - from <= tolerance::POINT {
            return Err(GeometryError::PastEnd { at: from, length });
        }
        let head = if to >= length - tolerance::POINT {
            self.clone()
        } else {
            self.split_at(to)?.0
        };
        if from <= tolerance::POINT {
            Ok(head)
        } else {
            Ok(head.split_at(from)?.1)
        }
    }

    /// The point `at` millimetres along the curve and the unit direction there.
    ///
    /// # Errors
    /// When `at` lies before the start or past the end.
    pub fn point_at(&self, at: f64) -> Result<(Point, Vec2), GeometryError> {
        let length = self.length();
        if at.is_nan() || at < -tolerance::POINT || at > length + tolerance::POINT {
            return Err(GeometryError::PastEnd { at, length });
        }
        if at <= tolerance::POINT {
            return Ok((self.start(), self.start_direction()));
        }
        if at >= length - tolerance::POINT {
            return Ok((self.end(), self.end_direction()));
        }
        let past_end = GeometryError::PastEnd { at, length };
        let place = self.place(at).ok_or(past_end)?;
        let reached = place.segment.subsegment(0.0..place.t);
        let before = place.before.iter();
        let direction = before.rfold(arriving(&reached), |found, before| {
            if found == Vec2::ZERO {
                arriving(before)
            } else {
                found
            }
        });
        Ok((reached.end(), direction))
    }

    /// Distance from `point` to the curve, and how far along the curve the nearest point is.
    #[must_use]
    pub fn nearest(&self, point: Point) -> (f64, f64) {
        let mut best = (f64::INFINITY, 0, 0.0);
        for (index, segment) in self.segments().iter().enumerate() {
            // Nothing on a segment is nearer than the rectangle around its control points.
            if clearance(hull(segment), point) >= best.0 {
                continue;
            }
            let found = segment.nearest(point, tolerance::POINT);
            if found.distance_sq < best.0 {
                best = (found.distance_sq.max(0.0), index, found.t);
            }
        }
        let (squared, index, t) = best;
        (squared.sqrt(), self.length_to((index, t)))
    }

    /// How far along the curve a place lies, given as segment and parameter there, as in
    /// [`Crossing`](super::Crossing).
    ///
    /// A segment that the curve does not have lies at its end.
    #[must_use]
    pub fn length_to(&self, (index, t): (usize, f64)) -> f64 {
        let Some(segment) = self.segments().get(index) else {
            return self.length();
        };
        let upto = arc_length(&segment.subsegment(0.0..t));
        let before = index.checked_sub(1).and_then(|i| self.walked().get(i));
        before.map_or(upto, |walked| walked + upto)
    }

    /// How far along the curve `point` lies, when it is an end or a joint of the curve.
    #[must_use]
    pub fn joint_at(&self, point: Point) -> Option<f64> {
        if self.start().distance(point) <= tolerance::POINT {
            return Some(0.0);
        }
        let mut ends = self.segments().iter().zip(self.walked());
        let here = ends.find(|(s, _)| s.end().distance(point) <= tolerance::POINT);
        here.map(|(_, walked)| *walked)
    }
}

/// Length of one segment in millimetres, to [`tolerance::ARC_LENGTH`].
///
/// ```
/// use blockwright::geometry::{Curve, Point, arc_length};
/// let edge = Curve::line(Point::ORIGIN, Point::new(30.0, 40.0))?;
/// assert_eq!(arc_length(&edge.segments()[0]), 50.0);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[must_use]
pub fn arc_length(segment: &PathSeg) -> f64 {
    match segment {
        PathSeg::Cubic(c) => Measured(*c).arclen(tolerance::ARC_LENGTH),
        other => other.arclen(tolerance::ARC_LENGTH),
    }
}

/// How far through a segment a length along it ends, as a share.
fn share_at_length(segment: &PathSeg, length: f64) -> f64 {
    match segment {
        PathSeg::Cubic(c) => Measured(*c).inv_arclen(length, tolerance::ARC_LENGTH),
        other => other.inv_arclen(length, tolerance::ARC_LENGTH),
    }
}

/// Upright rectangle around the control points of a segment: found at once, and never smaller
/// than that around the segment.
#[must_use]
pub(crate) fn hull(segment: &PathSeg) -> Rect {
    match segment {
        PathSeg::Line(l) => Rect::from_points(l.p0, l.p1),
        PathSeg::Quad(q) => Rect::from_points(q.p0, q.p1).union_pt(q.p2),
        PathSeg::Cubic(c) => Rect::from_points(c.p0, c.p1).union(Rect::from_points(c.p2, c.p3)),
    }
}

/// Squared distance from a point to an upright rectangle; none inside it.
fn clearance(around: Rect, point: Point) -> f64 {
    let x = (around.x0 - point.x).max(point.x - around.x1).max(0.0);
    let y = (around.y0 - point.y).max(point.y - around.y1).max(0.0);
    x * x + y * y
}

/// Area enclosed by a closed chain of segments, in square millimetres.
///
/// Positive when the chain runs clockwise as seen on the page.
///
/// ```
/// use blockwright::geometry::{signed_area, Curve, Point};
/// let corners = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0), (0.0, 0.0)].map(Point::from);
/// let ring = Curve::polyline(&corners)?;
/// assert!((signed_area(ring.segments()) - 12.0).abs() < 1e-12);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[must_use]
pub fn signed_area(segments: &[PathSeg]) -> f64 {
    segments.iter().map(ParamCurveArea::signed_area).sum()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn quarter_circle() -> Curve {
        // Four-point approximation of a quarter circle of radius 100.
        let k = 100.0 * 0.552_284_749_830_793_6;
        Curve::cubic(
            Point::new(100.0, 0.0),
            Point::new(100.0, k),
            Point::new(k, 100.0),
            Point::new(0.0, 100.0),
        )
        .unwrap()
    }

    #[test]
    fn length_is_that_of_the_circle_within_the_known_error_of_the_approximation() {
        let exact = 50.0 * std::f64::consts::PI;
        assert!((quarter_circle().length() - exact).abs() < 0.03);
    }

    #[test]
    fn split_keeps_the_length_and_the_joint() {
        let c = quarter_circle();
        let (head, tail) = c.split_at(40.0).unwrap();
        assert!((head.length() - 40.0).abs() < 1e-6);
        assert!((head.length() + tail.length() - c.length()).abs() < 1e-6);
        assert!(head.end().distance(tail.start()) < 1e-12);
        let (joined, at) = (head.clone().then(&tail).unwrap(), head.length());
        assert!((joined.joint_at(head.end()).unwrap() - at).abs() < 1e-6);
        assert!(
            joined.split_at(at).unwrap().0.segments().len() == 1,
            "no sliver at a joint"
        );
    }

    #[test]
    fn refuses_lengths_it_does_not_have() {
        let c = quarter_circle();
        for at in [-1.0, 0.0, c.length(), 1e9, f64::NAN] {
            assert!(c.split_at(at).is_err(), "{at}");
        }
        assert!(c.point_at(c.length()).is_ok());
        assert!(c.point_at(f64::NAN).is_err());
    }
}
