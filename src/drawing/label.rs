//! What is written in the middle of a piece: which it is, how it is cut, of what.

use kurbo::{Point, Rect, Size};

use super::beside::LEAST;
use super::piece_layers::PieceLayers;
use super::room::Room;
use super::{Face, Level, Text, TextStyle};

/// One statement of a label.
#[derive(Debug, Clone)]
pub(super) struct Statement {
    pub text: String,
    pub style: TextStyle,
}

impl Statement {
    pub fn new(text: impl Into<String>, face: Face, size: f64) -> Self {
        let (text, style) = (text.into(), TextStyle::new(face, size));
        Self { text, style }
    }
}

/// The size of the smallest statements of a label, in millimetres.
pub(super) const SMALL: f64 = 3.8;
/// By how much a label may shrink: until its smallest statements have the least size.
const SCALES: [f64; 4] = [1.0, 0.8, 0.66, LEAST / SMALL];
/// Widths to which a label is broken, in millimetres.
const WIDTHS: [f64; 3] = [76.0, 50.0, 32.0];
/// Distance from line to line, as a part of the size.
const LINE: f64 = 1.35;
/// Distance of what stands below a piece from it, in millimetres.
const BELOW: f64 = 5.0;

/// Writes the statements, the most important first, one below the other where there is room;
/// gives back those for which there is none even at the least size, the least important.
pub(super) fn write(
    out: &mut PieceLayers,
    room: &mut Room,
    statements: &[Statement],
    bounds: Rect,
) -> Vec<String> {
    let wish = Point::new(
        bounds.x0 + 0.5 * bounds.width(),
        bounds.y0 + 0.5 * bounds.height(),
    );
    for kept in (1..=statements.len()).rev() {
        let (kept, left) = statements.split_at(kept);
        let all = left.is_empty();
        let scales = if all { &SCALES[..] } else { &SCALES[3..] };
        for scale in scales {
            for (width, turned) in WIDTHS.iter().flat_map(|w| [(*w, false), (*w, true)]) {
                let lines = broken(kept, *scale, width);
                if place(out, room, &lines, wish, turned) {
                    return left.iter().map(|s| s.text.clone()).collect();
                }
            }
        }
    }
    statements.iter().map(|s| s.text.clone()).collect()
}

/// Writes below a piece what found no room on it.
pub(super) fn write_below(out: &mut PieceLayers, bounds: Rect, heading: &str, left: &[String]) {
    let style = TextStyle::new(Face::Regular, 3.0);
    let statements: Vec<Statement> = std::iter::once(heading)
        .chain(left.iter().map(String::as_str))
        .map(|text| Statement::new(text, style.face, style.size))
        .collect();
    let lines = broken(&statements, 1.0, bounds.width().max(WIDTHS[0]));
    let at = Point::new(bounds.x0, bounds.y1 + BELOW);
    out.words
        .items
        .extend(set(&lines, at, false).map(Into::into));
}

type Line = (String, TextStyle);

/// The statements at a scale on lines no wider than `width`.
fn broken(statements: &[Statement], scale: f64, width: f64) -> Vec<Line> {
    let mut lines = Vec::new();
    for Statement { text, style } in statements {
        let style = TextStyle {
            size: style.size * scale,
            ..*style
        };
        lines.extend(
            style
                .broken(text, width)
                .into_iter()
                .map(|line| (line, style)),
        );
    }
    lines
}

fn size_of(lines: &[Line]) -> Size {
    let width = lines.iter().map(|(t, s)| s.width(t)).fold(0.0, f64::max);
    let height = lines.iter().map(|(_, s)| LINE * s.size).sum();
    Size::new(width, height)
}

fn place(
    out: &mut PieceLayers,
    room: &mut Room,
    lines: &[Line],
    wish: Point,
    turned: bool,
) -> bool {
    let mut size = size_of(lines);
    if turned {
        size = Size::new(size.height, size.width);
    }
    let Some(found) = room.place(size, wish) else {
        return false;
    };
    let at = if turned {
        Point::new(found.x0, found.y1)
    } else {
        found.origin()
    };
    out.words
        .items
        .extend(set(lines, at, turned).map(Into::into));
    true
}

/// The lines one below the other from a corner; turned, they read upward and follow each other
/// to the right.
fn set(lines: &[Line], at: Point, turned: bool) -> impl Iterator<Item = Text> {
    let mut down = 0.0;
    lines.iter().map(move |(text, style)| {
        // What an accent needs above a capital.
        let top = down + (Face::ASCENT - Face::CAP_HEIGHT) * style.size;
        down += LINE * style.size;
        let (at, degrees) = if turned {
            (Point::new(at.x + top, at.y), -90.0)
        } else {
            (Point::new(at.x, at.y + top), 0.0)
        };
        Text::new(at, text.as_str(), *style)
            .level(Level::Top)
            .turned(degrees)
    })
}
