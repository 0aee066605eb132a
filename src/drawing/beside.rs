//! Words that stand beside the line they belong to.

use kurbo::{Point, Vec2};

use super::room::Room;
use super::{Anchor, Face, Level, Text, TextStyle};
use crate::geometry::{Curve, Span, counted};

/// The least size of words on a piece, in millimetres: 6 point type, the smallest that is
/// commonly printed to be read.
pub(super) const LEAST: f64 = 2.1;

/// Distance of the words from their line, in millimetres.
const OFF: f64 = 0.9;
/// What they keep clear of everything, in millimetres.
const CLEAR: f64 = 0.6;
/// Step of the search along the line, in millimetres.
const STEP: f64 = 3.0;

/// Writes along the first of the lines that has room beside it: as near as possible to the part
/// `wish` of its length, rather above than below it, rather large than small. The room is taken.
pub(crate) fn write_beside(
    room: &mut Room,
    lines: &[Curve],
    words: &str,
    style: TextStyle,
    wish: f64,
) -> Option<Text> {
    for size in sizes(style.size) {
        let style = TextStyle { size, ..style };
        for line in lines {
            if let Some(text) = along(room, line, words, style, wish) {
                room.take_text(&text);
                return Some(text);
            }
        }
    }
    None
}

/// Sizes to be tried, down to the least.
fn sizes(size: f64) -> impl Iterator<Item = f64> {
    let first = size.max(LEAST);
    std::iter::successors(Some(first), |s| (*s > LEAST).then(|| (s * 0.8).max(LEAST)))
}

fn along(room: &Room, line: &Curve, words: &str, style: TextStyle, wish: f64) -> Option<Text> {
    let length = line.length();
    // The words end where their line does, if they are not longer.
    let end = (style.width(words) / 2.0 + OFF).min(length / 2.0);
    let (from, to) = (end, length - end);
    let wish = Span::from_low(from, to).nearest(wish * length);
    let steps = counted(((to - from) / STEP).ceil());
    let places = (0..=steps).flat_map(|step| {
        let by = step as f64 * STEP;
        let back = (step > 0).then_some(wish - by);
        [Some(wish + by), back].into_iter().flatten()
    });
    for at in places.filter(|at| (from..=to).contains(at)) {
        let Ok((point, direction)) = line.point_at(at) else {
            continue;
        };
        for above in [true, false] {
            let text = at_line(point, direction, above, words, style);
            if room.is_free(&text.corners(), CLEAR) {
                return Some(text);
            }
        }
    }
    None
}

/// The words above or below a place of a line, readable from below or from the right.
fn at_line(on: Point, direction: Vec2, above: bool, words: &str, style: TextStyle) -> Text {
    let mut degrees = direction.atan2().to_degrees();
    if degrees >= 90.0 - 1e-6 {
        degrees -= 180.0;
    } else if degrees < -90.0 - 1e-6 {
        degrees += 180.0;
    }
    let up = Vec2::from_angle((degrees - 90.0).to_radians());
    let (by, level) = if above {
        (OFF + Face::DESCENT * style.size, Level::Baseline)
    } else {
        let accent = Face::ASCENT - Face::CAP_HEIGHT;
        (-OFF - accent * style.size, Level::Top)
    };
    Text::new(on + up * by, words, style)
        .anchor(Anchor::Middle)
        .level(level)
        .turned(degrees)
}
