//! A body in the round as a line drawing, from the front and from her right.

use crate::form::{Form, Point3, Ring};
use crate::geometry::path_data::fixed;
use std::fmt::Write as _;

/// White round the drawings, and between them, in mm.
const MARGIN: f64 = 24.0;

/// Rings from the lowest to the highest, and points round each.
const RINGS: u32 = 120;
const AROUND: u32 = 64;

/// The drawing, with all its colours in it: outlines, levels, the base of the neck, the armhole, and
/// beside the side a plumb line that touches the shoulder blades.
pub(crate) fn form_figure(form: &Form) -> String {
    let (low, high) = form.reach();
    let step = (high - low) / f64::from(RINGS);
    let rings: Vec<Ring> = (0..=RINGS)
        .map(|place| form.ring(low + step * f64::from(place), AROUND))
        .collect();
    let (front, side) = (Seen::of(&rings, |p| p.x), Seen::of(&rings, |p| p.z));
    let top = front.top().max(side.top());
    let foot = front.foot().min(side.foot());
    let middle = MARGIN + front.half();
    let back = 2.0 * (MARGIN + front.half()) - side.least() + MARGIN;
    let (width, height) = (back + side.most() + MARGIN, top - foot + 2.0 * MARGIN);
    let mut out = String::new();
    // Writing to a string cannot fail.
    let _ = writeln!(
        out,
        "<svg class=\"form-figure\" viewBox=\"0 0 {} {}\" role=\"img\" aria-label=\"The body in the \
         round, from the front and from her right\" fill=\"none\" stroke=\"#3b342b\" stroke-width=\"2.4\" \
         stroke-linejoin=\"round\" stroke-linecap=\"round\">\n<rect width=\"{}\" height=\"{}\" fill=\"#fff\" \
         stroke=\"none\"/>",
        fixed(width, 1),
        fixed(height, 1),
        fixed(width, 1),
        fixed(height, 1),
    );
    let down = |y: f64| MARGIN + top - y;
    let from_front = |p: Point3| (middle + p.x, down(p.y));
    let from_side = |p: Point3| (back + p.z, down(p.y));
    let levels = form.levels();
    let girths = [
        levels.hip,
        levels.waist,
        levels.underbust,
        levels.bust,
        levels.armpit,
    ];
    for y in girths {
        let ring = form.ring(y, AROUND);
        // Only what is seen of it.
        let near: Vec<Point3> = ring
            .points
            .iter()
            .copied()
            .filter(|p| p.x >= -1e-9)
            .collect();
        let half = ring.points.len().div_ceil(4);
        let seen: Vec<Point3> = ring
            .points
            .iter()
            .copied()
            .skip(half)
            .take(2 * half + 1)
            .collect();
        thin(&mut out, &path(&seen, from_front, false));
        thin(&mut out, &path(&near, from_side, false));
    }
    let plumb = form.landmarks().blades;
    let line = [
        Point3::new(0.0, levels.nape + 40.0, plumb.z),
        Point3::new(0.0, levels.hip, plumb.z),
    ];
    let _ = writeln!(
        out,
        "<path stroke=\"#8a2f1d\" stroke-width=\"1.6\" stroke-dasharray=\"8 6\" d=\"{}\"/>",
        path(&line, from_side, false)
    );
    let _ = writeln!(
        out,
        "<path d=\"{}\"/>",
        path(&front.outline(), from_front, true)
    );
    let _ = writeln!(
        out,
        "<path d=\"{}\"/>",
        path(&side.outline(), from_side, true)
    );
    let neck = form.neck_base(AROUND).points;
    let front_of_neck: Vec<Point3> = neck
        .iter()
        .copied()
        .skip(neck.len().div_ceil(4))
        .take(neck.len().div_ceil(2) + 1)
        .collect();
    thin(&mut out, &path(&front_of_neck, from_front, false));
    let beside: Vec<Point3> = neck
        .iter()
        .copied()
        .take(neck.len().div_ceil(2) + 1)
        .collect();
    thin(&mut out, &path(&beside, from_side, false));
    let marks = form.landmarks();
    for place in [marks.bust_point, marks.bust_point.mirrored()] {
        dot(&mut out, from_front(place));
    }
    for place in [
        marks.nape,
        marks.bust_point,
        marks.waist_back,
        marks.front_neck,
    ] {
        dot(&mut out, from_side(place));
    }
    out.push_str("</svg>\n");
    out
}

/// An outline from one direction: at every ring the least and the most.
struct Seen {
    left: Vec<Point3>,
    right: Vec<Point3>,
    across: fn(Point3) -> f64,
}

impl Seen {
    fn of(rings: &[Ring], across: fn(Point3) -> f64) -> Self {
        let by = |a: &Point3, b: &Point3| across(*a).total_cmp(&across(*b));
        let left = rings
            .iter()
            .filter_map(|ring| ring.points.iter().copied().min_by(by));
        let right = rings
            .iter()
            .filter_map(|ring| ring.points.iter().copied().max_by(by));
        Self {
            left: left.collect(),
            right: right.collect(),
            across,
        }
    }

    fn outline(&self) -> Vec<Point3> {
        let back = self.right.iter().rev();
        self.left.iter().chain(back).copied().collect()
    }

    fn top(&self) -> f64 {
        self.outline()
            .iter()
            .map(|p| p.y)
            .fold(f64::NEG_INFINITY, f64::max)
    }

    fn foot(&self) -> f64 {
        self.outline()
            .iter()
            .map(|p| p.y)
            .fold(f64::INFINITY, f64::min)
    }

    fn least(&self) -> f64 {
        self.left
            .iter()
            .map(|p| (self.across)(*p))
            .fold(0.0, f64::min)
    }

    fn most(&self) -> f64 {
        self.right
            .iter()
            .map(|p| (self.across)(*p))
            .fold(0.0, f64::max)
    }

    fn half(&self) -> f64 {
        self.most().max(-self.least())
    }
}

fn path(points: &[Point3], at: impl Fn(Point3) -> (f64, f64), is_closed: bool) -> String {
    let mut out = String::new();
    for (index, point) in points.iter().enumerate() {
        let (x, y) = at(*point);
        out.push(if index == 0 { 'M' } else { 'L' });
        let _ = write!(out, "{} {}", fixed(x, 1), fixed(y, 1));
    }
    if is_closed {
        out.push('Z');
    }
    out
}

fn thin(out: &mut String, data: &str) {
    let _ = writeln!(
        out,
        "<path stroke=\"#8d8373\" stroke-width=\"1.4\" d=\"{data}\"/>"
    );
}

fn dot(out: &mut String, (x, y): (f64, f64)) {
    let _ = writeln!(
        out,
        "<circle cx=\"{}\" cy=\"{}\" r=\"4\" fill=\"#3b342b\" stroke=\"none\"/>",
        fixed(x, 1),
        fixed(y, 1)
    );
}
