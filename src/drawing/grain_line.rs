//! The grain line.

use kurbo::Point;

use super::beside::write_beside;
use super::pens::MARK;
use super::piece_layers::{PieceLayers, mark_named, solid};
use super::room::Room;
use super::strokes::{arrow_head, stroke};
use super::{Face, Pen, Text, TextStyle, path_names};
use crate::geometry::Curve;
use crate::piece::Piece;

const WORDS: &str = "grain";

/// Draws the line with a head at either end: the piece may be turned.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece) {
    let [low, high] = piece.grain();
    let along = (high - low).normalize();
    let (line, name) = (stroke(&[low, high]), path_names::grain(piece.name()));
    mark_named(&mut out.marks, room, line, Pen::solid(MARK), name);
    solid(&mut out.marks, room, arrow_head(high, along, 4.0));
    solid(&mut out.marks, room, arrow_head(low, -along, 4.0));
}

/// The word beside a grain line, if there is room.
pub(crate) fn grain_text(room: &mut Room, [low, high]: [Point; 2]) -> Option<Text> {
    let line = Curve::line(low, high).ok()?;
    let style = TextStyle::new(Face::Regular, 3.6);
    write_beside(room, &[line], WORDS, style, 0.72)
}

/// Names it; gives back what there was no room for.
pub(super) fn write(out: &mut PieceLayers, room: &mut Room, piece: &Piece) -> Option<String> {
    match grain_text(room, piece.grain()) {
        Some(text) => {
            out.words.push(text);
            None
        }
        None => Some(WORDS.to_owned()),
    }
}
