//! Curves as straight chords, for formats that know no others.

use super::{Curve, GeometryError, tolerance};
use kurbo::{Line, ParamCurve, ParamCurveNearest, PathEl, PathSeg, Point, flatten};

/// How often the chords are made finer for a curve that turns more than an edge does.
const FINER: usize = 24;

/// How often a segment is halved for a chain of straight lines: 2 to the power of that many parts of
/// a metre are shorter than the finest tolerance.
const DEEPEST: usize = 20;

impl Curve {
    /// The chords of every segment: for each the points after its start, up to and with its end.
    ///
    /// Chords stay within [`tolerance::FLATTENED`] of the curve and together keep its length
    /// within [`tolerance::FLATTENED_LENGTH`].
    ///
    /// ```
    /// use blockwright::geometry::{Curve, Point};
    /// let k = 100.0 * 0.552_284_75;
    /// let quarter = Curve::cubic(
    ///     Point::new(100.0, 0.0), Point::new(100.0, k), Point::new(k, 100.0), Point::new(0.0, 100.0),
    /// )?;
    /// let mut from = quarter.start();
    /// let mut length = 0.0;
    /// for to in quarter.chords().concat() {
    ///     length += from.distance(to);
    ///     from = to;
    /// }
    /// assert!((quarter.length() - length).abs() < 0.05);
    /// # Ok::<(), blockwright::geometry::GeometryError>(())
    /// ```
    #[must_use]
    pub fn chords(&self) -> Vec<Vec<Point>> {
        let length = self.length();
        let mut within = tolerance::FLATTENED;
        let mut chords = self.chords_within(within);
        for _ in 0..FINER {
            if length - length_of(self.start(), &chords) <= tolerance::FLATTENED_LENGTH {
                break;
            }
            within /= 2.0;
            chords = self.chords_within(within);
        }
        chords
    }

    /// The curve as a chain of straight lines that stays within a tolerance of it, in millimetres:
    /// its start, its end, and every joint are among the points.
    ///
    /// ```
    /// use blockwright::geometry::{Curve, Point, Vec2};
    /// let neck = Curve::hermite(
    ///     Point::ORIGIN, Vec2::new(35.0, 0.0), Point::new(70.0, -60.0), Vec2::new(0.0, -30.0),
    /// )?;
    /// let for_a_screen = neck.to_polyline(1.0)?;
    /// let for_a_cutter = neck.to_polyline(0.01)?;
    /// assert!(for_a_cutter.len() > for_a_screen.len());
    /// assert_eq!(for_a_cutter.last(), Some(&neck.end()));
    /// # Ok::<(), blockwright::geometry::GeometryError>(())
    /// ```
    ///
    /// # Errors
    /// [`GeometryError::Tolerance`] when the tolerance is not a number of at least a micron: a finer
    /// chain than a curve is measured by would only cost memory.
    pub fn to_polyline(&self, tolerance: f64) -> Result<Vec<Point>, GeometryError> {
        let least = tolerance::POLYLINE;
        if !tolerance.is_finite() || tolerance < least {
            return Err(GeometryError::Tolerance { tolerance, least });
        }
        let mut points = vec![self.start()];
        for segment in self.segments() {
            follow(segment, tolerance, DEEPEST, &mut points);
        }
        Ok(points)
    }

    fn chords_within(&self, within: f64) -> Vec<Vec<Point>> {
        let segments = self.segments().iter();
        segments.map(|s| segment_chords(s, within)).collect()
    }
}

/// Adds the points after the start of a segment: it is halved until its control points, and with them
/// all of it, lie within the tolerance of its chord.
fn follow(segment: &PathSeg, tolerance: f64, deepest: usize, points: &mut Vec<Point>) {
    let chord = Line::new(segment.start(), segment.end());
    let near =
        |control: Point| chord.nearest(control, tolerance).distance_sq <= tolerance * tolerance;
    let flat = match segment {
        PathSeg::Line(_) => true,
        PathSeg::Quad(q) => near(q.p1),
        PathSeg::Cubic(c) => near(c.p1) && near(c.p2),
    };
    if flat || deepest == 0 {
        points.push(segment.end());
    } else {
        follow(
            &segment.subsegment(0.0..0.5),
            tolerance,
            deepest - 1,
            points,
        );
        follow(
            &segment.subsegment(0.5..1.0),
            tolerance,
            deepest - 1,
            points,
        );
        // The end is that of the segment to the last bit.
        if let Some(last) = points.last_mut() {
            *last = segment.end();
        }
    }
}

fn segment_chords(segment: &PathSeg, within: f64) -> Vec<Point> {
    let mut points = Vec::new();
    let path = [PathEl::MoveTo(segment.start()), segment.as_path_el()];
    flatten(path, within, |element| {
        if let PathEl::LineTo(point) = element {
            points.push(point);
        }
    });
    // The end is that of the segment to the last bit.
    match points.last_mut() {
        Some(last) => *last = segment.end(),
        None => points.push(segment.end()),
    }
    points
}

fn length_of(start: Point, chords: &[Vec<Point>]) -> f64 {
    let mut from = start;
    let mut length = 0.0;
    for to in chords.iter().flatten() {
        length += from.distance(*to);
        from = *to;
    }
    length
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A full circle of that radius in four cubics; the same way round as often as asked.
    fn circles(radius: f64, times: usize) -> Curve {
        let k = radius * 0.552_284_749_830_793_6;
        let at = |x: f64, y: f64| Point::new(x * radius, y * radius);
        let mut segments = Vec::new();
        for _ in 0..times {
            let mut from = (1.0, 0.0);
            for _ in 0..4 {
                let to = (-from.1, from.0);
                let (a, b) = (at(from.0, from.1), at(to.0, to.1));
                let (u, v) = (at(to.0, to.1).to_vec2(), at(from.0, from.1).to_vec2());
                segments.push(PathSeg::Cubic(kurbo::CubicBez::new(
                    a,
                    a + u * (k / radius),
                    b + v * (k / radius),
                    b,
                )));
                from = to;
            }
        }
        Curve::new(segments).unwrap()
    }

    #[test]
    fn chords_keep_place_and_length() {
        for (radius, times) in [(5.0, 1), (80.0, 1), (80.0, 2), (400.0, 1), (80.0, 40)] {
            let curve = circles(radius, times);
            let chords = curve.chords();
            assert_eq!(chords.len(), curve.segments().len());
            let lost = curve.length() - length_of(curve.start(), &chords);
            assert!(
                (0.0..=tolerance::FLATTENED_LENGTH).contains(&lost),
                "{radius} {times}: {lost}"
            );
            let mut from = curve.start();
            // Once round is enough to be near: the other rounds are the same.
            for to in chords[..4].concat() {
                let off = circles(radius, 1).nearest(from.midpoint(to)).0;
                assert!(off <= tolerance::FLATTENED * 1.1, "{radius}: {off}");
                from = to;
            }
        }
    }

    #[test]
    fn a_line_is_one_chord() {
        let line = Curve::line(Point::ORIGIN, Point::new(3.0, 4.0)).unwrap();
        assert_eq!(line.chords(), [[Point::new(3.0, 4.0)]]);
        // Also one without length.
        let nothing = Curve::line(Point::ORIGIN, Point::ORIGIN).unwrap();
        assert_eq!(nothing.chords(), [[Point::ORIGIN]]);
    }
}
