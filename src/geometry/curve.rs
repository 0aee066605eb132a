//! A chain of straight lines and cubics, end to end.

use super::{GeometryError, Rigid, tolerance};
use kurbo::{BezPath, CubicBez, Line, ParamCurve, PathSeg, Point, Rect, Shape, Vec2};
use std::fmt;
use std::sync::OnceLock;

/// Farthest a point may lie from the origin, in millimetres: a hundred metres. Beyond it the
/// arithmetic of curves loses its meaning, and some of it its end.
const FARTHEST: f64 = 1e5;

/// An open chain of straight lines and cubic Béziers, in millimetres.
///
/// # Guarantees
/// At least one segment; every coordinate finite and within a hundred metres; each segment starts
/// exactly where the one before it ended.
///
/// ```
/// use blockwright::geometry::{Curve, Point};
/// let edge = Curve::line(Point::ORIGIN, Point::new(30.0, 40.0))?;
/// assert!((edge.length() - 50.0).abs() < 1e-9);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[derive(Clone)]
pub struct Curve {
    segments: Vec<PathSeg>,
    /// How far along the chain each segment ends, once somebody asked.
    pub(super) walked: OnceLock<Box<[f64]>>,
}

impl PartialEq for Curve {
    fn eq(&self, other: &Self) -> bool {
        self.segments == other.segments
    }
}

impl fmt::Debug for Curve {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Curve")
            .field("segments", &self.segments)
            .finish()
    }
}

impl Curve {
    /// A chain of the given segments.
    ///
    /// # Errors
    /// When there is none, when one does not join on, or when a coordinate is not finite.
    pub fn new(segments: Vec<PathSeg>) -> Result<Self, GeometryError> {
        if segments.is_empty() {
            return Err(GeometryError::Empty);
        }
        for segment in &segments {
            for point in control_points(segment) {
                on_paper(point)?;
            }
        }
        for (index, [before, after]) in segments.array_windows().enumerate() {
            let gap = before.end().distance(after.start());
            if gap > tolerance::POINT {
                return Err(GeometryError::Broken {
                    index: index + 1,
                    gap,
                });
            }
        }
        Ok(Self::of(segments))
    }

    /// A chain of segments known to be sound: each is made to start, to the last bit, where the
    /// one before it ended, so that a path says the whole of it.
    fn of(mut segments: Vec<PathSeg>) -> Self {
        let mut reached = None;
        for segment in &mut segments {
            if let Some(joint) = reached {
                match segment {
                    PathSeg::Line(l) => l.p0 = joint,
                    PathSeg::Quad(q) => q.p0 = joint,
                    PathSeg::Cubic(c) => c.p0 = joint,
                }
            }
            reached = Some(segment.end());
        }
        let walked = OnceLock::new();
        Self { segments, walked }
    }

    /// A straight line.
    ///
    /// # Errors
    /// When a coordinate is not finite.
    pub fn line(from: Point, to: Point) -> Result<Self, GeometryError> {
        Self::new(vec![PathSeg::Line(Line::new(from, to))])
    }

    /// Straight lines through all the points in order.
    ///
    /// # Errors
    /// When there are fewer than two points or a coordinate is not finite.
    pub fn polyline(points: &[Point]) -> Result<Self, GeometryError> {
        Self::new(
            points
                .array_windows()
                .map(|[from, to]| PathSeg::Line(Line::new(*from, *to)))
                .collect(),
        )
    }

    /// One cubic through its four control points.
    ///
    /// # Errors
    /// When a coordinate is not finite.
    pub fn cubic(p0: Point, p1: Point, p2: Point, p3: Point) -> Result<Self, GeometryError> {
        Self::new(vec![PathSeg::Cubic(CubicBez::new(p0, p1, p2, p3))])
    }

    /// One cubic from `from`, leaving along `leave`, to `to`, arriving along `arrive`.
    ///
    /// The vectors are the handles themselves: their length is the handle's length.
    ///
    /// # Errors
    /// When a coordinate is not finite.
    pub fn hermite(
        from: Point,
        leave: Vec2,
        to: Point,
        arrive: Vec2,
    ) -> Result<Self, GeometryError> {
        Self::cubic(from, from + leave, to - arrive, to)
    }

    /// This chain followed by `next`.
    ///
    /// # Errors
    /// When `next` does not start where this one ends.
    pub fn then(mut self, next: &Curve) -> Result<Self, GeometryError> {
        let gap = self.end().distance(next.start());
        if gap > tolerance::POINT {
            return Err(GeometryError::Broken {
                index: self.segments.len(),
                gap,
            });
        }
        self.segments.extend_from_slice(&next.segments);
        Ok(Self::of(self.segments))
    }

    /// The chain with its last point moved to `end`, which should lie a rounding away: it ends
    /// where something else starts, to the last bit.
    ///
    /// # Errors
    /// When the point is not finite.
    pub fn ending_at(&self, end: Point) -> Result<Self, GeometryError> {
        let mut segments = self.segments.clone();
        match segments.last_mut() {
            Some(PathSeg::Line(l)) => l.p1 = end,
            Some(PathSeg::Quad(q)) => q.p2 = end,
            Some(PathSeg::Cubic(c)) => c.p3 = end,
            None => {}
        }
        Self::new(segments)
    }

    /// The segments in order.
    #[must_use]
    pub fn segments(&self) -> &[PathSeg] {
        &self.segments
    }

    /// Where the chain starts.
    #[must_use]
    #[expect(clippy::indexing_slicing, reason = "a curve has a segment")]
    pub fn start(&self) -> Point {
        self.segments[0].start()
    }

    /// Where the chain ends.
    #[must_use]
    #[expect(clippy::indexing_slicing, reason = "a curve has a segment")]
    pub fn end(&self) -> Point {
        self.segments[self.segments.len() - 1].end()
    }

    /// Unit direction in which the chain leaves its start.
    #[must_use]
    pub fn start_direction(&self) -> Vec2 {
        self.segments
            .iter()
            .map(leaving)
            .find(|v| *v != Vec2::ZERO)
            .unwrap_or(Vec2::ZERO)
    }

    /// Unit direction in which the chain arrives at its end.
    #[must_use]
    pub fn end_direction(&self) -> Vec2 {
        self.segments
            .iter()
            .rev()
            .map(arriving)
            .find(|v| *v != Vec2::ZERO)
            .unwrap_or(Vec2::ZERO)
    }

    /// The same chain walked the other way.
    #[must_use]
    pub fn reversed(&self) -> Self {
        Self::of(self.segments.iter().rev().map(PathSeg::reverse).collect())
    }

    /// The chain carried along by a rigid motion.
    #[must_use]
    pub fn moved(&self, motion: &Rigid) -> Self {
        Self::of(self.segments.iter().map(|s| motion.affine() * *s).collect())
    }

    /// Smallest upright rectangle around the chain.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.segments
            .iter()
            .map(Shape::bounding_box)
            .reduce(|a, b| a.union(b))
            .unwrap_or(Rect::ZERO)
    }

    /// The chain as a path for drawing.
    #[must_use]
    pub fn to_path(&self) -> BezPath {
        let mut path = BezPath::new();
        path.move_to(self.start());
        for segment in &self.segments {
            path.push(segment.as_path_el());
        }
        path
    }

    /// Whether the chain is one straight line within `tolerance` millimetres.
    #[must_use]
    pub fn is_straight(&self, tolerance: f64) -> bool {
        let (from, to) = (self.start(), self.end());
        let chord = to - from;
        let length = chord.hypot();
        length > 0.0
            && self
                .segments
                .iter()
                .flat_map(control_points)
                .all(|p| ((p - from).cross(chord) / length).abs() <= tolerance)
    }
}

/// Whether a point is finite and within a hundred metres of the origin.
pub(crate) fn on_paper(point: Point) -> Result<(), GeometryError> {
    let Point { x, y } = point;
    if !point.is_finite() {
        return Err(GeometryError::NotFinite { x, y });
    }
    if x.abs().max(y.abs()) > FARTHEST {
        return Err(GeometryError::TooFar {
            x,
            y,
            farthest: FARTHEST,
        });
    }
    Ok(())
}

/// The control points of a segment, ends included.
///
/// Always four: where a segment has fewer, the last stands for the rest.
pub(super) fn control_points(segment: &PathSeg) -> [Point; 4] {
    match segment {
        PathSeg::Line(l) => [l.p0, l.p1, l.p1, l.p1],
        PathSeg::Quad(q) => [q.p0, q.p1, q.p2, q.p2],
        PathSeg::Cubic(c) => [c.p0, c.p1, c.p2, c.p3],
    }
}

/// Unit direction in which a segment leaves its start; zero when it has no extent.
///
/// ```
/// use blockwright::geometry::{Curve, Point, Vec2, leaving};
/// let line = Curve::line(Point::ORIGIN, Point::new(0.0, 40.0))?;
/// assert_eq!(leaving(&line.segments()[0]), Vec2::new(0.0, 1.0));
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[must_use]
pub fn leaving(segment: &PathSeg) -> Vec2 {
    let points = control_points(segment);
    points[1..]
        .iter()
        .map(|p| *p - points[0])
        .find(|v| v.hypot() > tolerance::POINT)
        .map_or(Vec2::ZERO, Vec2::normalize)
}

/// Unit direction in which a segment arrives at its end; zero when it has no extent.
///
/// ```
/// use blockwright::geometry::{Curve, Point, arriving};
/// let (p0, p1) = (Point::ORIGIN, Point::new(30.0, 0.0));
/// let bend = Curve::cubic(p0, p1, Point::new(60.0, 30.0), Point::new(60.0, 60.0))?;
/// assert!((arriving(&bend.segments()[0]).y - 1.0).abs() < 1e-12);
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[must_use]
pub fn arriving(segment: &PathSeg) -> Vec2 {
    -leaving(&segment.reverse())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn refuses_a_gap_and_a_number_that_is_none() {
        let a = Curve::line(Point::ORIGIN, Point::new(1.0, 0.0)).unwrap();
        let far = Curve::line(Point::new(2.0, 0.0), Point::new(3.0, 0.0)).unwrap();
        assert!(matches!(
            a.then(&far),
            Err(GeometryError::Broken { index: 1, .. })
        ));
        assert!(Curve::line(Point::ORIGIN, Point::new(f64::INFINITY, 0.0)).is_err());
        assert_eq!(Curve::new(vec![]), Err(GeometryError::Empty));
    }

    #[test]
    fn directions_survive_a_handle_of_no_length() {
        let p = Point::new(0.0, 0.0);
        let c = Curve::cubic(p, p, Point::new(10.0, 10.0), Point::new(20.0, 10.0)).unwrap();
        assert!((c.start_direction() - Vec2::new(1.0, 1.0).normalize()).hypot() < 1e-12);
        assert!((c.end_direction() - Vec2::new(1.0, 0.0)).hypot() < 1e-12);
        assert!((c.reversed().start_direction() + c.end_direction()).hypot() < 1e-12);
    }
}
