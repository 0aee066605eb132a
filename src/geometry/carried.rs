//! A curve in many parts whose one end is led elsewhere.

use super::{Curve, GeometryError, Point, Rigid, Vec2, arc_length, as_cubic};
use kurbo::{CubicBez, PathSeg};

/// The same for a curve in many parts, as a seam that was altered often: every place goes with a share
/// of the motion that falls along the curve. What it is drawn out by is shared evenly,
/// so that the way back is the way there; what it is moved aside by falls as in one cubic.
///
/// In however many parts the curve is drawn, it stays smooth: where two of them meet, their handles turn
/// with the share that falls there. Kept in their old directions they would make a step of every part.
pub(crate) fn carried_smoothly(curve: &Curve, motion: &Rigid) -> Result<Curve, GeometryError> {
    let (whole, chord) = (curve.length(), curve.end() - curve.start());
    let along = chord / chord.hypot().max(f64::MIN_POSITIVE);
    let carrying = Carrying {
        motion,
        along,
        whole,
    };
    let count = curve.segments().len();
    let mut segments = Vec::with_capacity(count);
    let mut walked = 0.0;
    for (index, segment) in curve.segments().iter().enumerate() {
        let from = if index == 0 { 0.0 } else { walked / whole };
        walked += arc_length(segment);
        let last = index + 1 == count;
        let to = if last { 1.0 } else { (walked / whole).min(1.0) };
        let c = as_cubic(segment);
        segments.push(PathSeg::Cubic(CubicBez::new(
            carrying.place(c.p0, from),
            carrying.handle(c.p0, from, c.p1 - c.p0, 1.0),
            carrying.handle(c.p3, to, c.p2 - c.p3, -1.0),
            carrying.place(c.p3, to),
        )));
    }
    Curve::new(segments)
}

/// What a curve is carried by: its motion, the way of its chord, its length.
struct Carrying<'m> {
    motion: &'m Rigid,
    along: Vec2,
    whole: f64,
}

impl Carrying<'_> {
    /// What a place would go off by with the start, parted into along and across the chord.
    fn off(&self, p: Point) -> [Vec2; 2] {
        let off = self.motion.apply(p) - p;
        let along = self.along * off.dot(self.along);
        [along, off - along]
    }

    /// Where a place comes to lie that is so far along the curve, as a share.
    fn place(&self, p: Point, way: f64) -> Point {
        let [along, across] = self.off(p);
        p + along * (1.0 - way) + across * (1.0 - way * way * (3.0 - 2.0 * way))
    }

    /// The end of a handle there; `onward` is 1, or -1 for one that points back. At both ends of the curve
    /// it keeps its direction.
    fn handle(&self, p: Point, way: f64, handle: Vec2, onward: f64) -> Point {
        let turned = self.motion.apply(p + handle) - self.motion.apply(p);
        let kept = self.place(p, way) + handle.lerp(turned, 1.0 - way);
        if way <= 0.0 || way >= 1.0 {
            return kept;
        }
        let [along, across] = self.off(p);
        let falls = along + across * (6.0 * way * (1.0 - way));
        kept - falls * (onward * handle.hypot() / self.whole)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::geometry::angle_between;

    /// In ten parts the line bends where it did and turns evenly, no more than one part would.
    #[test]
    fn many_parts_make_no_steps() {
        let line = Curve::line(Point::ORIGIN, Point::new(0.0, 100.0)).unwrap();
        let points: Vec<Point> = (0..=10)
            .map(|at| Point::new(0.0, 10.0 * f64::from(at)))
            .collect();
        let parted = Curve::polyline(&points).unwrap();
        let motion = Rigid::shift(Vec2::new(20.0, 30.0));
        let [one, many] = [line, parted].map(|curve| carried_smoothly(&curve, &motion).unwrap());
        let places = (0..=40).map(|at| many.length() * f64::from(at) / 40.0);
        let found: Vec<(Point, Vec2)> = places.map(|at| many.point_at(at).unwrap()).collect();
        assert!(found.iter().all(|(place, _)| one.nearest(*place).0 < 1.0));
        let turns = found.array_windows();
        let turns = turns.map(|[(_, from), (_, to)]| angle_between(*from, *to));
        let turns: Vec<f64> = turns.filter(|turn| turn.abs() > 1e-6).collect();
        let changes = turns
            .array_windows()
            .filter(|[one, other]| one * other < 0.0);
        assert!(changes.count() <= 3, "{turns:?}");
    }
}
