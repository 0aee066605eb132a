//! Balance lines and their names.

use kurbo::BezPath;

use super::beside::write_beside;
use super::finished_girths::FinishedGirths;
use super::open_darts::outside_darts;
use super::pens::{GREY, GUIDE};
use super::piece_layers::{PieceLayers, mark_named};
use super::room::Room;
use super::{Face, Pen, TextStyle, path_names};
use crate::piece::Piece;

/// Draws every balance line, broken at open darts.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece) {
    for line in piece.lines() {
        let pen = Pen::solid(GUIDE).dashed(&[4.0, 3.0]).ink(GREY);
        let name = path_names::line(piece.name(), &line.name);
        let mut path = BezPath::new();
        for part in outside_darts(piece, &line.curve) {
            path.extend(part.to_path());
        }
        if !path.is_empty() {
            mark_named(&mut out.guides, room, path, pen, name);
        }
    }
}

/// Names them, with the finished girths that are measured along them; gives back what there was no
/// room for.
pub(super) fn write(
    out: &mut PieceLayers,
    room: &mut Room,
    piece: &Piece,
    girths: &FinishedGirths,
) -> Vec<String> {
    let mut left = Vec::new();
    for line in piece.lines() {
        let mut words = format!("{} line", line.name);
        if let Some(girth) = girths.on_line(&line.name) {
            words.push_str(&format!(" · {girth}"));
        }
        let style = TextStyle::new(Face::Regular, 3.2).ink(GREY);
        let mut parts = outside_darts(piece, &line.curve);
        parts.sort_by(|a, b| b.length().total_cmp(&a.length()));
        match write_beside(room, parts.as_slice(), &words, style, 0.62) {
            Some(text) => out.words.push(text),
            None => left.push(words),
        }
    }
    left
}
