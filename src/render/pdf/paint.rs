//! From items to the operators of a PDF page.

use kurbo::{Affine, PathEl, Point};
use pdf_writer::types::LineJoinStyle;
use pdf_writer::{Content, Str};

use crate::drawing::{Anchor, DrawnPath, Ink, Item, Text};

use super::fonts::{Fonts, Run, Used};

/// Points of a PDF page in a mm.
pub(super) const POINTS: f64 = 72.0 / 25.4;

/// A number as the file holds it: four decimals, and in single precision.
pub(super) fn short(value: f64) -> f32 {
    // Adding zero turns -0 into 0.
    single((value * 1e4).round() / 1e4 + 0.0)
}

/// Paints items in mm, y down; the page's transform is set by the caller.
pub(super) fn items(content: &mut Content, items: &[Item], fonts: &Fonts, used: &mut Used) {
    content.set_line_join(LineJoinStyle::RoundJoin);
    for each in items {
        match each {
            Item::Path(each) => figure(content, each),
            Item::Text(each) => text(content, each, fine, fonts, used),
        }
    }
}

/// Paints items as [`items`] does, but text and curved figures on hundredths of a mm, and the
/// latter from their own first point, so that equal ones at different places are nearly the same
/// operators, which squeeze well.
pub(super) fn alike(content: &mut Content, items: &[Item], fonts: &Fonts, used: &mut Used) {
    content.set_line_join(LineJoinStyle::RoundJoin);
    for each in items {
        match each {
            Item::Text(each) => text(content, each, coarse, fonts, used),
            Item::Path(each) if is_curved(each) => {
                let from = first_point(each).to_vec2();
                content
                    .save_state()
                    .transform(Affine::translate(from).as_coeffs().map(coarse));
                let path = Affine::translate(-from) * each.path.clone();
                let moved = DrawnPath {
                    path,
                    ..each.clone()
                };
                figure(content, &moved);
                content.restore_state();
            }
            Item::Path(each) => figure(content, each),
        }
    }
}

/// A number in single precision.
#[expect(
    clippy::cast_possible_truncation,
    reason = "single precision is what the file holds"
)]
const fn single(value: f64) -> f32 {
    value as f32
}

/// A number on hundredths.
fn coarse(value: f64) -> f32 {
    single((value * 100.0).round() / 100.0 + 0.0)
}

fn is_curved(figure: &DrawnPath) -> bool {
    let curved = |el: &PathEl| matches!(el, PathEl::QuadTo(..) | PathEl::CurveTo(..));
    figure.path.elements().iter().any(curved)
}

fn first_point(figure: &DrawnPath) -> Point {
    match figure.path.elements().first() {
        Some(PathEl::MoveTo(point)) => *point,
        _ => Point::ZERO,
    }
}

fn figure(content: &mut Content, figure: &DrawnPath) {
    if let Some(fill) = figure.fill {
        fill_ink(content, fill);
    }
    if let Some(pen) = &figure.pen {
        match pen.ink {
            Ink::Grey(grey) => content.set_stroke_gray(level(grey)),
            Ink::Rgb(r, g, b) => content.set_stroke_rgb(level(r), level(g), level(b)),
        };
        content.set_line_width(short(pen.width));
        content.set_dash_pattern(pen.dash.iter().map(|&length| short(length)), 0.0);
    }
    let mut last = Point::ZERO;
    let mut start = Point::ZERO;
    for &el in figure.path.elements() {
        match el {
            PathEl::MoveTo(p) => {
                content.move_to(short(p.x), short(p.y));
                start = p;
                last = p;
            }
            PathEl::LineTo(p) => {
                content.line_to(short(p.x), short(p.y));
                last = p;
            }
            PathEl::QuadTo(q, p) => {
                let cubic = kurbo::QuadBez::new(last, q, p).raise();
                curve(content, cubic.p1, cubic.p2, p);
                last = p;
            }
            PathEl::CurveTo(a, b, p) => {
                curve(content, a, b, p);
                last = p;
            }
            PathEl::ClosePath => {
                content.close_path();
                last = start;
            }
        }
    }
    match (figure.pen.is_some(), figure.fill.is_some()) {
        (true, true) => content.fill_nonzero_and_stroke(),
        (true, false) => content.stroke(),
        (false, true) => content.fill_nonzero(),
        (false, false) => content.end_path(),
    };
}

fn curve(content: &mut Content, a: Point, b: Point, p: Point) {
    content.cubic_to(
        short(a.x),
        short(a.y),
        short(b.x),
        short(b.y),
        short(p.x),
        short(p.y),
    );
}

fn text(content: &mut Content, text: &Text, place: fn(f64) -> f32, fonts: &Fonts, used: &mut Used) {
    let runs = fonts.runs(&text.text, text.style.face);
    // Where a font has other widths than the drawing could know, the anchor stays in its place.
    let width: Option<f64> = runs.iter().map(|run| run.width).sum();
    let off = width.map_or(0.0, |width| {
        let narrower = text.width() - width * text.style.size;
        match text.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => narrower / 2.0,
            Anchor::End => narrower,
        }
    });
    // The page's y runs down; letters must still stand upright.
    let matrix =
        text.motion() * Affine::translate((off, 0.0)) * Affine::scale_non_uniform(1.0, -1.0);
    let [a, b, c, d, x, y] = matrix.as_coeffs();
    fill_ink(content, text.style.ink);
    content
        .begin_text()
        .set_text_matrix([fine(a), fine(b), fine(c), fine(d), place(x), place(y)]);
    for Run {
        font,
        bytes,
        letters,
        ..
    } in &runs
    {
        used.extend(letters.iter().map(|letter| (*font, *letter)));
        content
            .set_font(font.name(), short(text.style.size))
            .show(Str(bytes));
    }
    content.end_text();
}

/// A coefficient of a transform: more decimals than a place needs.
pub(super) fn fine(value: f64) -> f32 {
    single((value * 1e7).round() / 1e7 + 0.0)
}

fn fill_ink(content: &mut Content, ink: Ink) {
    match ink {
        Ink::Grey(grey) => content.set_fill_gray(level(grey)),
        Ink::Rgb(r, g, b) => content.set_fill_rgb(level(r), level(g), level(b)),
    };
}

fn level(byte: u8) -> f32 {
    short(f64::from(byte) / 255.0)
}
