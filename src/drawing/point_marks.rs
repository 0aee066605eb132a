//! Named points: a small cross and its name.

use kurbo::{BezPath, Point, Vec2};

use super::beside::write_beside;
use super::pens::POINT;
use super::piece_layers::{PieceLayers, mark};
use super::room::Room;
use super::strokes::stroke;
use super::{Face, Pen, TextStyle};
use crate::geometry::Curve;
use crate::piece::Piece;

/// Half the length of an arm of the cross, in millimetres.
const ARM: f64 = 4.0;

/// How far to either side of a point its name may stand, in millimetres.
const NAME: f64 = 22.0;

/// Draws a cross at every named point.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece) {
    for point in piece.points() {
        mark(&mut out.marks, room, cross(point.at), Pen::solid(POINT));
    }
}

/// An upright cross. Both arms are one path.
fn cross(at: Point) -> BezPath {
    let (right, down) = (Vec2::new(ARM, 0.0), Vec2::new(0.0, ARM));
    let mut path = stroke(&[at - right, at + right]);
    path.extend(stroke(&[at - down, at + down]));
    path
}

/// Names them; gives back what there was no room for.
pub(super) fn write(out: &mut PieceLayers, room: &mut Room, piece: &Piece) -> Vec<String> {
    let mut left = Vec::new();
    for point in piece.points() {
        let words = point.name.replace('_', " ");
        let style = TextStyle::new(Face::Regular, 3.2);
        let beside = |by: Vec2| Curve::line(point.at - by, point.at + by).ok();
        let ways = [Vec2::new(NAME, 0.0), Vec2::new(0.0, NAME)];
        let lines: Vec<Curve> = ways.into_iter().filter_map(beside).collect();
        match write_beside(room, &lines, &words, style, 0.3) {
            Some(text) => out.words.push(text),
            None => left.push(words),
        }
    }
    left
}
