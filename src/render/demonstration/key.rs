//! What the lines of the frames are.

use super::frame::{cut_pen, hinge_ring, label_style, new_pen, old_pen, outline_pen};
use super::hatch;
use crate::drawing::{DrawnPath, Face, Layer, Pen, Text, TextStyle, stroke};
use crate::geometry::Point;
use kurbo::Rect;

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
    hinge_ring(lines, Point::new(x + 4.0, middle));
    say(&mut x, "hinge: do not cut through");
    for (crossed, text) in [(false, "paper put in"), (true, "paper doubled or cut away")] {
        let rect = Rect::new(x + 0.5, middle - 1.6, x + 7.5, middle + 1.6);
        let corners = [
            Point::new(rect.x0, rect.y0),
            Point::new(rect.x1, rect.y0),
            Point::new(rect.x1, rect.y1),
            Point::new(rect.x0, rect.y1),
        ];
        lines.push(hatch::over(&corners, crossed));
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
