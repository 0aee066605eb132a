//! What a closed ring of segments surrounds.

use super::{hull, tolerance};
use kurbo::{BezPath, ParamCurveNearest, PathSeg, Point, Rect, Shape};

/// The area within a ring. Points are held first against the rectangles around its segments, so
/// that most segments are never looked at.
///
/// ```
/// use blockwright::geometry::{Curve, Point, Region};
/// let corners = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0), (0.0, 0.0)].map(Point::from);
/// let region = Region::within(Curve::polyline(&corners)?.segments().to_vec());
/// assert!(region.surrounds(Point::new(1.0, 1.0)) && !region.surrounds(Point::new(5.0, 1.0)));
/// assert!(region.passes_near(Point::new(4.05, 1.0), 0.1));
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Region {
    ring: Vec<PathSeg>,
    /// Around each segment.
    hulls: Vec<Rect>,
}

impl Region {
    /// The area within a ring of segments, each of which starts where the one before it ended.
    #[must_use]
    pub fn within(ring: Vec<PathSeg>) -> Self {
        let hulls = ring.iter().map(hull).collect();
        Self { ring, hulls }
    }

    /// The ring.
    #[must_use]
    pub fn ring(&self) -> &[PathSeg] {
        &self.ring
    }

    /// Whether the ring winds round a point: only segments at its level can pass it.
    #[must_use]
    pub fn surrounds(&self, point: Point) -> bool {
        let level = |around: &Rect| around.y0 <= point.y && point.y <= around.y1;
        let passing = self.ring.iter().zip(&self.hulls);
        let passing = passing.filter(|(_, around)| level(around));
        BezPath::from_path_segments(passing.map(|(segment, _)| *segment)).contains(point)
    }

    /// Whether the ring comes within `margin` millimetres of a point.
    #[must_use]
    pub fn passes_near(&self, point: Point, margin: f64) -> bool {
        self.ring.iter().zip(&self.hulls).any(|(segment, around)| {
            around.inflate(margin, margin).contains(point)
                && segment.nearest(point, tolerance::POINT).distance_sq <= margin * margin
        })
    }
}
