//! What the lines of the frames are.

use super::frame::{cut_pen, label_style, new_pen, old_pen, outline_pen};
use super::hatch;
use crate::drawing::{DrawnPath, Face, Ink, Layer, Pen, Text, TextStyle, stroke};
use crate::geometry::{Point, Vec2};
use kurbo::{BezPath, Circle, Rect, Shape as _};

/// Draws the key on one line from a place.
pub(super) fn key(lines: &mut Layer, words: &mut Layer, from: Point) {
    let style = TextStyle::new(Face::Regular, 0.93 * label_style().size);
    let mut x = from.x;
    let y = from.y;
    let mut say = |x: &mut f64, text: &str| {
        words.push(Text::new((*x + 9.0, y), text, style));
        *x += 9.0 + style.width(text) + 5.5;
    };
    let middle = y - 0.5 * style.cap_height();
    let sample = |x: f64| [Point::new(x, middle), Point::new(x + 7.5, middle)];
    lines.push(DrawnPath::stroked(stroke(&sample(x)), cut_pen()));
    say(&mut x, "cut");
    let ring = Circle::new((x + 4.0, middle), 1.2).to_path(0.02);
    lines.push(DrawnPath::filled(ring.clone(), Ink::WHITE));
    lines.push(DrawnPath::stroked(ring, Pen::solid(0.45)));
    say(&mut x, "hinge: do not cut through");
    for (crossed, text) in [(false, "paper put in"), (true, "paper doubled or cut away")] {
        let rect = Rect::new(x + 0.5, middle - 1.6, x + 7.5, middle + 1.6);
        let corners = [
            Point::new(rect.x0, rect.y0),
            Point::new(rect.x1, rect.y0),
            Point::new(rect.x1, rect.y1),
            Point::new(rect.x0, rect.y1),
        ];
        let mut path = BezPath::new();
        for way in [Vec2::new(1.0, 1.0), Vec2::new(1.0, -1.0)]
            .into_iter()
            .take(1 + usize::from(crossed))
        {
            for [a, b] in hatch::lines(&corners, way.normalize(), 1.1) {
                path.move_to(a);
                path.line_to(b);
            }
        }
        lines.push(DrawnPath::stroked(path, Pen::solid(0.18)));
        lines.push(DrawnPath::rectangle(rect, Pen::solid(0.25)));
        say(&mut x, text);
    }
    for (pen, text) in [
        (old_pen(), "old outline"),
        (outline_pen(), "panels"),
        (new_pen(), "trued outline"),
    ] {
        lines.push(DrawnPath::stroked(stroke(&sample(x)), pen));
        say(&mut x, text);
    }
}
