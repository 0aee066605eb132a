//! Everything that is drawn on one piece: lines, darts, grain, fold, notches, points, words.

use super::finished_girths::FinishedGirths;
use super::fold_bracket::{FOLD_WORDS, FoldBracket};
use super::label::Statement;
use super::pens::MARK;
use super::piece_layers::{PieceLayers, mark, solid};
use super::room::Room;
use super::strokes::ring;
use super::{
    Pen, balance_lines, dart_marks, edge_words, grain_line, label, lengthen_lines, notch_marks,
    opening_marks, outline_lines, point_marks,
};
use crate::geometry::Curve;
use crate::piece::{EdgeRole, Piece};

/// Draws a piece where it lies, with its cut line if it has allowances, and writes the
/// statements on it.
///
/// First come all lines, then the words, each where nothing is drawn or written yet: the label,
/// then the words that belong to a line, beside it. What finds no room at the least size stands
/// below the piece, under the `heading`.
pub(super) fn draw(
    piece: &Piece,
    cut: Option<&Curve>,
    (statements, heading): (&[Statement], &str),
    girths: &FinishedGirths,
) -> PieceLayers {
    let mut layers = PieceLayers::new();
    let out = &mut layers;
    let room = &mut Room::inside(ring(piece));
    outline_lines::draw(out, piece, cut);
    let folds = piece.outline().edges().iter();
    let brackets: Vec<FoldBracket> = folds
        .filter(|edge| edge.role() == EdgeRole::Fold)
        .map(|edge| FoldBracket::of(edge.curve()))
        .collect();
    for bracket in &brackets {
        mark(&mut out.marks, room, bracket.line.clone(), Pen::solid(MARK));
        for head in &bracket.heads {
            solid(&mut out.marks, room, head.clone());
        }
    }
    dart_marks::draw(out, room, piece, cut);
    grain_line::draw(out, room, piece);
    notch_marks::draw(out, room, piece, cut);
    opening_marks::draw(out, room, piece, cut.is_some());
    point_marks::draw(out, room, piece);
    balance_lines::draw(out, room, piece);
    let tips: Vec<_> = brackets.iter().flat_map(|bracket| bracket.tips).collect();
    let lengthen = lengthen_lines::draw(out, room, piece, &tips);

    let bounds = piece.outline().bounds();
    let mut left = label::write(out, room, statements, bounds);
    for bracket in &brackets {
        match bracket.words(room) {
            Some(text) => out.words.push(text),
            None => left.push(FOLD_WORDS.to_owned()),
        }
    }
    left.extend(edge_words::write(out, room, piece, girths));
    left.extend(opening_marks::write(out, room, piece, cut.is_some()));
    left.extend(lengthen_lines::write(out, room, &lengthen));
    left.extend(dart_marks::write(out, room, piece));
    left.extend(point_marks::write(out, room, piece));
    left.extend(balance_lines::write(out, room, piece, girths));
    left.extend(grain_line::write(out, room, piece));
    if !left.is_empty() {
        let all = cut.map_or(bounds, |cut| bounds.union(cut.bounds()));
        label::write_below(out, all, heading, &left);
    }
    layers
}
