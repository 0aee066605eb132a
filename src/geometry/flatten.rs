//! Curves as straight chords, for formats that know no others.

use super::{Curve, GeometryError, tolerance};
use kurbo::{ParamCurve, ParamCurveNearest, PathEl, PathSeg, Point, flatten};

/// How often the chords are made finer for a curve that turns more than an edge does.
const FINER: usize = 24;

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
        let chords = self.segments().iter().flat_map(|segment| {
            // The flattening meets its bound only nearly: it is looked at, and made finer.
            let mut within = 0.8 * tolerance;
            let mut chords = segment_chords(segment, within);
            for _ in 0..FINER {
                if strays(segment, &chords) <= 0.95 * tolerance {
                    break;
                }
                within /= 1.5;
                chords = segment_chords(segment, within);
            }
            chords
        });
        Ok(std::iter::once(self.start()).chain(chords).collect())
    }

    fn chords_within(&self, within: f64) -> Vec<Vec<Point>> {
        let segments = self.segments().iter();
        segments.map(|s| segment_chords(s, within)).collect()
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

/// Samples of a segment for every chord, and at least, by which it is seen how far it strays.
const LOOKED_AT: (usize, usize) = (8, 48);

/// How far a segment strays from its chords, in millimetres.
fn strays(segment: &PathSeg, chords: &[Point]) -> f64 {
    let corners: Vec<Point> = std::iter::once(segment.start())
        .chain(chords.iter().copied())
        .collect();
    let count = (LOOKED_AT.0 * chords.len()).max(LOOKED_AT.1);
    let mut farthest = 0.0_f64;
    for step in 1..count {
        let at = segment.eval(step as f64 / count as f64);
        let nearest = corners.windows(2).map(|ends| match *ends {
            [from, to] => kurbo::Line::new(from, to).nearest(at, 0.0).distance_sq,
            _ => f64::INFINITY,
        });
        farthest = farthest.max(nearest.fold(f64::INFINITY, f64::min));
    }
    farthest.sqrt()
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
