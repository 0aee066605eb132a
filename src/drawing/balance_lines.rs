//! Balance lines and their names.

use super::beside::write_beside;
use super::pens::{GREY, GUIDE};
use super::piece_layers::{PieceLayers, mark_named};
use super::room::Room;
use super::{Face, Pen, TextStyle, path_names};
use crate::piece::Piece;

/// Draws every balance line.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece) {
    for line in piece.lines() {
        let pen = Pen::solid(GUIDE).dashed(&[4.0, 3.0]).ink(GREY);
        let name = path_names::line(piece.name(), &line.name);
        mark_named(&mut out.guides, room, line.curve.to_path(), pen, name);
    }
}

/// Names them; gives back what there was no room for.
pub(super) fn write(out: &mut PieceLayers, room: &mut Room, piece: &Piece) -> Vec<String> {
    let mut left = Vec::new();
    for line in piece.lines() {
        let words = format!("{} line", line.name);
        let style = TextStyle::new(Face::Regular, 3.2).ink(GREY);
        match write_beside(room, std::slice::from_ref(&line.curve), &words, style, 0.62) {
            Some(text) => out.words.push(text),
            None => left.push(words),
        }
    }
    left
}
