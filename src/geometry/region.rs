//! What a closed ring of segments surrounds.

use super::{hull, tolerance};
use kurbo::{BezPath, ParamCurve, ParamCurveNearest, PathSeg, Point, Rect, Shape};

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
    ///
    /// Where corners of the ring lie at the level of the point up to rounding, the level is moved
    /// off them: whether a segment that ends there is passed would be decided by its last digit.
    #[must_use]
    pub fn surrounds(&self, point: Point) -> bool {
        let point = Point::new(point.x, self.clear_level(point.y));
        let level = |around: &Rect| around.y0 <= point.y && point.y <= around.y1;
        let passing = self.ring.iter().zip(&self.hulls);
        let passing = passing.filter(|(_, around)| level(around));
        BezPath::from_path_segments(passing.map(|(segment, _)| *segment)).contains(point)
    }

    /// A level next to the given one at which no segment ends.
    fn clear_level(&self, level: f64) -> f64 {
        let near = tolerance::POINT * 1e-3;
        let mut clear = level;
        // Each end can be in the way once.
        for _ in 0..=self.ring.len() {
            let ends = self.ring.iter().map(|segment| segment.end().y);
            match ends.filter(|y| (y - clear).abs() < near).reduce(f64::max) {
                Some(highest) => clear = highest + 2.0 * near,
                None => break,
            }
        }
        clear
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Curve;

    /// A line that ends at the level of the point, where an end found by `start + (end - start)` is a
    /// last digit too high: the panel of a dress, and the corner of its cut line beside the hem.
    #[test]
    fn a_point_at_the_level_of_a_corner_lies_where_it_lies() {
        let (hem, panel) = (995.670_371_873_887_3, 96.065_759_746_800_32);
        let corners = [
            (panel, hem),
            (0.0, hem),
            (0.0, 34.961_845_837_944_38),
            (panel, 482.555_498_134_602_94),
            (panel, hem),
        ];
        let ring = Curve::polyline(&corners.map(Point::from)).expect("a ring");
        let region = Region::within(ring.segments().to_vec());
        for level in [hem, 995.670_371_873_887_2, 995.670_371_873_887_1] {
            assert!(!region.surrounds(Point::new(111.0, level)), "{level}");
            assert!(!region.surrounds(Point::new(-1.0, level)), "{level}");
        }
        assert!(region.surrounds(Point::new(50.0, hem - 1e-6)));
        assert!(!region.surrounds(Point::new(50.0, hem + 1e-6)));
    }
}
