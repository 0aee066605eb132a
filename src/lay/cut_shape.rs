//! The outline of a piece as it is cut from cloth.

use super::LayError;
use crate::geometry::ring::{sides, signed_area};
use crate::geometry::{Point, ring_crossing};
use crate::units::rounded;
use kurbo::{Line, PathSeg, Rect};

/// How a piece lies beside how it was drawn.
///
/// ```
/// use blockwright::lay::Pose;
/// assert!(!Pose::default().turned && !Pose::default().face_down);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Pose {
    /// Turned end to end, by 180 degrees: its upper end points toward the start of the cloth.
    pub turned: bool,
    /// Laid face down: mirrored across the cloth, its upper end where it was.
    pub face_down: bool,
}

impl Pose {
    /// Where a point comes to lie.
    pub(super) fn of(self, p: Point) -> Point {
        let end = if self.turned { -1.0 } else { 1.0 };
        let side = if self.face_down { -end } else { end };
        Point::new(end * p.x, side * p.y)
    }
}

/// A closed outline of straight edges on the cloth: x runs along the cloth from its start, y
/// across it from its fold or one selvedge, in millimetres. The grain runs along x, and a piece's
/// upper end lies toward larger x.
///
/// # Guarantees
/// At least three points, all finite and within 100 m; it does not cross itself, has an area, and
/// runs in the sense of positive area.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::lay::CutShape;
/// let pocket = CutShape::rectangle(160.0, 140.0)?;
/// assert_eq!(pocket.area(), 160.0 * 140.0);
/// assert_eq!((pocket.along(), pocket.across()), (160.0, 140.0));
/// assert!(CutShape::new(vec![Point::ORIGIN, Point::new(1.0, 0.0)]).is_err());
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct CutShape {
    points: Vec<Point>,
    bounds: Rect,
}

/// The farthest a point may lie from the origin, in millimetres.
const FARTHEST: f64 = 1e5;

/// The least area, in square millimetres.
const LEAST_AREA: f64 = 1.0;

impl CutShape {
    /// The outline through those points.
    ///
    /// # Errors
    /// When they make no simple outline.
    pub fn new(mut points: Vec<Point>) -> Result<Self, LayError> {
        let problem = |problem: String| Err(LayError::Shape { problem });
        if let Some(p) = points
            .iter()
            .find(|p| !p.is_finite() || p.x.abs().max(p.y.abs()) > FARTHEST)
        {
            return problem(format!("({}, {}) is out of reach", p.x, p.y));
        }
        points.dedup();
        if points.len() > 1 && points.first() == points.last() {
            points.pop();
        }
        if points.len() < 3 {
            return problem(format!("there are {}, at least 3 are wanted", points.len()));
        }
        let area = signed_area(&points);
        if area.abs() < LEAST_AREA {
            return problem(format!("they enclose {:.2} mm²", area.abs()));
        }
        let ring: Vec<PathSeg> = sides(&points)
            .map(|(a, b)| PathSeg::Line(Line::new(a, b)))
            .collect();
        if let Some(at) = ring_crossing(&ring) {
            return problem(format!(
                "it crosses itself at ({:.1}, {:.1}) mm",
                rounded(at.x, 1),
                rounded(at.y, 1)
            ));
        }
        if area < 0.0 {
            points.reverse();
        }
        Ok(Self::known(points))
    }

    /// A rectangle.
    ///
    /// # Errors
    /// When a side is out of reach.
    pub fn rectangle(along: f64, across: f64) -> Result<Self, LayError> {
        let corners = [(0.0, 0.0), (along, 0.0), (along, across), (0.0, across)];
        Self::new(corners.map(Point::from).to_vec())
    }

    /// Points known to make an outline that runs the right way.
    fn known(points: Vec<Point>) -> Self {
        let bounds = points
            .iter()
            .map(|p| Rect::from_points(*p, *p))
            .reduce(|a, b| a.union(b))
            .unwrap_or(Rect::ZERO);
        Self { points, bounds }
    }

    /// The corners, the last joined to the first.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// The box around it.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.bounds
    }

    /// Its extent along the cloth, in millimetres.
    #[must_use]
    pub fn along(&self) -> f64 {
        self.bounds.width()
    }

    /// Its extent across the cloth, in millimetres.
    #[must_use]
    pub fn across(&self) -> f64 {
        self.bounds.height()
    }

    /// Its area, in square millimetres.
    #[must_use]
    pub fn area(&self) -> f64 {
        signed_area(&self.points)
    }

    /// The same outline as it lies in a pose, with its box at the origin, and the shift that
    /// brought it there.
    pub(super) fn posed(&self, pose: Pose) -> (Self, kurbo::Vec2) {
        let mut points: Vec<Point> = self.points.iter().map(|p| pose.of(*p)).collect();
        if pose.face_down {
            points.reverse(); // mirrored, so that it runs the right way again
        }
        let lies = Self::known(points);
        let shift = -lies.bounds.origin().to_vec2();
        (lies.moved(shift), shift)
    }

    /// The same outline moved.
    pub(super) fn moved(&self, by: kurbo::Vec2) -> Self {
        Self::known(self.points.iter().map(|p| *p + by).collect())
    }
}
