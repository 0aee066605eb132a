//! Lines of a sketch.

use crate::geometry::{Point, Vec2};
use kurbo::{Affine, BezPath};

/// A path in the making: runs through points, smooth within a run, with corners between runs.
#[derive(Debug, Default)]
pub(super) struct Trace {
    path: BezPath,
    at: Option<Point>,
}

impl Trace {
    pub(super) fn from(start: (f64, f64)) -> Self {
        let start = Point::from(start);
        let mut path = BezPath::new();
        path.move_to(start);
        Self {
            path,
            at: Some(start),
        }
    }

    /// Goes on straight.
    pub(super) fn line(mut self, to: (f64, f64)) -> Self {
        self.path.line_to(to);
        self.at = Some(Point::from(to));
        self
    }

    /// Goes on through points, without a corner at any of them.
    pub(super) fn smooth(mut self, through: &[(f64, f64)]) -> Self {
        let Some(start) = self.at else { return self };
        let all: Vec<Point> = std::iter::once(start)
            .chain(through.iter().map(|p| Point::from(*p)))
            .collect();
        let place = |index: usize| all.get(index).copied();
        for index in 0..through.len() {
            let (Some(from), Some(to)) = (place(index), place(index + 1)) else {
                break;
            };
            let before = index.checked_sub(1).and_then(place).unwrap_or(from);
            let after = place(index + 2).unwrap_or(to);
            let lean = |a: Point, b: Point| (b - a) / 6.0;
            self.path
                .curve_to(from + lean(before, to), to - lean(from, after), to);
            self.at = Some(to);
        }
        self
    }

    pub(super) fn open(self) -> BezPath {
        self.path
    }

    pub(super) fn closed(mut self) -> BezPath {
        self.path.close_path();
        self.path
    }
}

/// The path and its mirror in the middle of the body.
pub(super) fn mirrored(path: BezPath) -> [BezPath; 2] {
    let other = Affine::scale_non_uniform(-1.0, 1.0) * path.clone();
    [path, other]
}

/// A circle.
pub(super) fn ellipse(centre: (f64, f64), radii: (f64, f64)) -> BezPath {
    // The usual four curves: 0.5523 of the radius, off by a fiftieth of a hundredth.
    let ((x, y), (a, b)) = (centre, radii);
    let (k, l) = (0.5523 * a, 0.5523 * b);
    let mut path = BezPath::new();
    path.move_to((x + a, y));
    path.curve_to((x + a, y + l), (x + k, y + b), (x, y + b));
    path.curve_to((x - k, y + b), (x - a, y + l), (x - a, y));
    path.curve_to((x - a, y - l), (x - k, y - b), (x, y - b));
    path.curve_to((x + k, y - b), (x + a, y - l), (x + a, y));
    path.close_path();
    path
}

/// Half a ring from one end to the other, bulging to the right of the way.
pub(super) fn bow(from: (f64, f64), to: (f64, f64), bulge: f64) -> BezPath {
    let (from, to) = (Point::from(from), Point::from(to));
    let along = to - from;
    let length = along.hypot().max(1e-6);
    let across = Vec2::new(-along.y, along.x) * (bulge / length);
    let mut path = BezPath::new();
    path.move_to(from);
    path.curve_to(
        from + along * 0.12 + across * 1.25,
        to - along * 0.12 + across * 1.25,
        to,
    );
    path
}
