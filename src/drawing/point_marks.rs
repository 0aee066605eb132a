//! Named points: a small cross and its name; on an edge or a fold what of the cross lies inside.

use kurbo::{BezPath, Circle, Point, Shape, Vec2};

use super::beside::write_beside;
use super::pens::POINT;
use super::piece_layers::{PieceLayers, mark, mark_named};
use super::room::Room;
use super::strokes::stroke;
use super::{Face, Pen, TextStyle, path_names};
use crate::geometry::Curve;
use crate::piece::{NamedPoint, Piece};

/// Half the length of an arm of the cross, in millimetres.
const ARM: f64 = 4.0;
/// Radius of the ring of the bust point, in millimetres.
const RING: f64 = 2.6;
/// What the bust point is called.
const BUST_POINT: &str = "bust_point";

/// How far to either side of a point its name may stand, in millimetres.
const NAME: f64 = 22.0;

/// Draws a cross at every named point.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece) {
    let outline = BezPath::from_path_segments(piece.outline().segments().into_iter());
    for point in piece.points() {
        let cross = cross(point.at, &outline);
        if !cross.is_empty() {
            let name = path_names::point(piece.name(), &point.name);
            mark_named(&mut out.marks, room, cross, Pen::solid(POINT), name);
        }
        if point.name == BUST_POINT {
            let ring = Circle::new(point.at, RING).to_path(0.01);
            mark(&mut out.marks, room, ring, Pen::solid(POINT));
        }
    }
}

/// The mark of the bust point, a ring with a cross, where a point is that.
pub(crate) fn bust_mark(point: &NamedPoint) -> Option<BezPath> {
    let mut mark = Circle::new(point.at, RING).to_path(0.01);
    for arm in [Vec2::new(ARM, 0.0), Vec2::new(0.0, ARM)] {
        mark.extend(stroke(&[point.at - arm, point.at + arm]));
    }
    (point.name == BUST_POINT).then_some(mark)
}

/// An upright cross, as one path, without the arms that would leave the outline or run along
/// it.
fn cross(at: Point, outline: &BezPath) -> BezPath {
    let inside = |arm: Vec2| {
        let across = 0.25 * Vec2::new(-arm.y, arm.x);
        [arm + across, arm - across, 0.5 * arm]
            .iter()
            .all(|&to| outline.winding(at + to) != 0)
    };
    let axis = |along: Vec2| {
        let ends: Vec<Point> = [-along, along]
            .into_iter()
            .filter(|&arm| inside(arm))
            .map(|arm| at + arm)
            .collect();
        match ends[..] {
            [end] => stroke(&[at, end]),
            [low, high] => stroke(&[low, high]),
            _ => BezPath::new(),
        }
    };
    let mut path = axis(Vec2::new(ARM, 0.0));
    path.extend(axis(Vec2::new(0.0, ARM)));
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
