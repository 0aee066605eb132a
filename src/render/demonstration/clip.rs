//! Lines and areas cut off at the edge of a frame.

use crate::geometry::{Point, with_next};
use kurbo::Rect;

/// The part of a straight line within a box.
pub(super) fn line(frame: Rect, a: Point, b: Point) -> Option<(Point, Point)> {
    let along = b - a;
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    let bounds = [
        (-along.x, a.x - frame.x0),
        (along.x, frame.x1 - a.x),
        (-along.y, a.y - frame.y0),
        (along.y, frame.y1 - a.y),
    ];
    for (step, room) in bounds {
        if step == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if step < 0.0 {
            from = from.max(room / step);
        } else {
            to = to.min(room / step);
        }
    }
    (from <= to).then(|| (a.lerp(b, from), a.lerp(b, to)))
}

/// The parts of a run of lines within a box.
pub(super) fn run(frame: Rect, points: &[Point]) -> Vec<Vec<Point>> {
    let mut parts: Vec<Vec<Point>> = Vec::new();
    for (a, b) in points.iter().zip(points.iter().skip(1)) {
        let Some((a, b)) = line(frame, *a, *b) else {
            continue;
        };
        match parts.last_mut() {
            Some(part) if part.last().is_some_and(|last| last.distance(a) < 1e-9) => part.push(b),
            _ => parts.push(vec![a, b]),
        }
    }
    parts
}

/// The part of an area within a box.
pub(super) fn area(frame: Rect, ring: &[Point]) -> Vec<Point> {
    let mut ring = ring.to_vec();
    // How far inside each side of the box a point lies.
    let sides: [fn(Rect, Point) -> f64; 4] = [
        |f, p| p.x - f.x0,
        |f, p| f.x1 - p.x,
        |f, p| p.y - f.y0,
        |f, p| f.y1 - p.y,
    ];
    for inside in sides {
        let mut kept = Vec::with_capacity(ring.len());
        for (a, b) in with_next(&ring) {
            let (in_a, in_b) = (inside(frame, *a), inside(frame, *b));
            if in_a >= 0.0 {
                kept.push(*a);
            }
            if (in_a >= 0.0) != (in_b >= 0.0) {
                kept.push(a.lerp(*b, in_a / (in_a - in_b)));
            }
        }
        ring = kept;
    }
    ring
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_lies_outside_is_cut_off() {
        let frame = Rect::new(0.0, 0.0, 10.0, 10.0);
        let at = |x: f64, y: f64| Point::new(x, y);
        assert_eq!(
            line(frame, at(-5.0, 5.0), at(5.0, 5.0)),
            Some((at(0.0, 5.0), at(5.0, 5.0)))
        );
        assert_eq!(line(frame, at(-5.0, -5.0), at(-5.0, 5.0)), None);
        let through = [at(2.0, 2.0), at(12.0, 2.0), at(12.0, 8.0), at(2.0, 8.0)];
        assert_eq!(run(frame, &through).len(), 2);
        let square = area(frame, &through);
        assert!(
            square.iter().all(|p| p.x <= 10.0) && square.len() == 4,
            "{square:?}"
        );
    }
}
