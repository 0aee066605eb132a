//! Lengths along a curve, the point at a length, the nearest point, areas.

use super::{Curve, GeometryError, tolerance};
use kurbo::{
    ParamCurve, ParamCurveArclen, ParamCurveArea, ParamCurveNearest, PathSeg, Point, Vec2,
};

impl Curve {
    /// Length in millimetres, to [`tolerance::ARC_LENGTH`] a segment.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.segments()
            .iter()
            .map(|s| s.arclen(tolerance::ARC_LENGTH))
            .sum()
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
        let mut walked = 0.0;
        for (index, segment) in self.segments().iter().enumerate() {
            let length = segment.arclen(tolerance::ARC_LENGTH);
            let last = index + 1 == self.segments().len();
            // A cut within a point of a joint falls on the joint: no slivers.
            if (at - walked - length).abs() <= tolerance::POINT {
                if last {
                    return Err(past_end());
                }
                let (head, tail) = self.segments().split_at(index + 1);
                return Ok((Curve::new(head.to_vec())?, Curve::new(tail.to_vec())?));
            }
            if at < walked + length {
                let t = segment.inv_arclen(at - walked, tolerance::ARC_LENGTH);
                let mut head = self.segments()[..index].to_vec();
                head.push(segment.subsegment(0.0..t));
                let mut tail = vec![segment.subsegment(t..1.0)];
                tail.extend_from_slice(&self.segments()[index + 1..]);
                return Ok((Curve::new(head)?, Curve::new(tail)?));
            }
            walked += length;
        }
        Err(past_end())
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
        let (head, _) = self.split_at(at)?;
        Ok((head.end(), head.end_direction()))
    }

    /// Distance from `point` to the curve, and how far along the curve the nearest point is.
    #[must_use]
    pub fn nearest(&self, point: Point) -> (f64, f64) {
        let mut best = (f64::INFINITY, 0.0);
        let mut walked = 0.0;
        for segment in self.segments() {
            let found = segment.nearest(point, tolerance::POINT);
            let distance = found.distance_sq.max(0.0).sqrt();
            if distance < best.0 {
                let upto = segment
                    .subsegment(0.0..found.t)
                    .arclen(tolerance::ARC_LENGTH);
                best = (distance, walked + upto);
            }
            walked += segment.arclen(tolerance::ARC_LENGTH);
        }
        best
    }

    /// How far along the curve `point` lies, when it is an end or a joint of the curve.
    #[must_use]
    pub fn joint_at(&self, point: Point) -> Option<f64> {
        if self.start().distance(point) <= tolerance::POINT {
            return Some(0.0);
        }
        let mut walked = 0.0;
        for segment in self.segments() {
            walked += segment.arclen(tolerance::ARC_LENGTH);
            if segment.end().distance(point) <= tolerance::POINT {
                return Some(walked);
            }
        }
        None
    }
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
