//! Darts: legs, middle line, drill points, to which side they are pressed.

use kurbo::{BezPath, Circle, Point, Shape, Vec2};

use super::beside::write_beside;
use super::notch_marks::NOTCH;
use super::pens::{DART, DART_NOTCH, GUIDE};
use super::piece_layers::{PieceLayers, mark, mark_named};
use super::room::Room;
use super::strokes::stroke;
use super::{DrawnPath, Face, Pen, TextStyle, path_names};
use crate::allowance::cut_line_beside;
use crate::geometry::{Curve, crossings};
use crate::piece::{Apexes, Dart, Piece, Pressed};

/// Draws every dart and drill point.
pub(super) fn draw(out: &mut PieceLayers, room: &mut Room, piece: &Piece, cut: Option<&Curve>) {
    for dart in piece.darts() {
        for path in dart_notches(dart, cut) {
            out.marks.push(DrawnPath::stroked(path, Pen::solid(DART)));
        }
        let [from, to] = middle(dart, piece);
        let name = path_names::dart(piece.name(), &dart.name);
        let legs = dart_legs(dart);
        mark_named(&mut out.darts, room, legs, Pen::solid(DART), name);
        mark(
            &mut out.darts,
            room,
            stroke(&[from, to]),
            Pen::solid(GUIDE).dashed(&[3.0, 2.0]),
        );
    }
    if cut.is_none() {
        for notch in piece.darts().iter().flat_map(leg_notches) {
            let pen = Pen::solid(DART_NOTCH);
            out.marks.push(DrawnPath::stroked(notch, pen));
        }
    }
    for hole in piece.drill_points() {
        mark(&mut out.marks, room, drill_mark(hole.at), Pen::solid(GUIDE));
    }
}

/// The legs of a dart; its mouth belongs to the edge.
pub(crate) fn dart_legs(dart: &Dart) -> BezPath {
    stroke(&dart.to_polyline())
}

/// Across an allowance each leg is carried on toward the cut line, as a notch of its intake: both
/// by the same length, for they lie on one another when the dart is folded. A leg that runs
/// along the edge would reach the cut line far away; it stops where the other does.
pub(crate) fn dart_notches(dart: &Dart, cut: Option<&Curve>) -> Vec<BezPath> {
    let Some(cut) = cut.filter(|_| dart.edge.is_some()) else {
        return Vec::new();
    };
    let out = |leg: Point| (leg - dart.apex()).normalize();
    let across = |leg: Point| Some(cut_line_beside(cut, leg, out(leg))?.distance(leg));
    let Some(length) = dart.legs.into_iter().filter_map(across).reduce(f64::min) else {
        return Vec::new();
    };
    dart.legs
        .into_iter()
        .map(|leg| stroke(&[leg + out(leg) * length, leg]))
        .collect()
}

/// Where the stitching line is cut along, the first millimetres of either leg are snipped.
pub(crate) fn leg_notches(dart: &Dart) -> Vec<BezPath> {
    if dart.edge.is_none() {
        return Vec::new();
    }
    let apex = dart.apex();
    let snip = |leg: Point| {
        let in_from = apex - leg;
        let long = NOTCH.min(in_from.hypot() / 2.0);
        stroke(&[leg, leg + in_from.normalize() * long])
    };
    dart.legs.map(snip).to_vec()
}

/// A ring with a cross.
pub(crate) fn drill_mark(at: Point) -> BezPath {
    let mut cross = Circle::new(at, 1.5).to_path(0.01);
    for d in [Vec2::new(2.5, 0.0), Vec2::new(0.0, 2.5)] {
        cross.move_to(at - d);
        cross.line_to(at + d);
    }
    cross
}

/// The line on which a dart is folded, from its point to the edge it opens on.
fn middle(dart: &Dart, piece: &Piece) -> [Point; 2] {
    let apex = match dart.apexes {
        Apexes::One(apex) => apex,
        Apexes::Two(upper, lower) => return [upper, lower],
    };
    let open = dart.legs[0].midpoint(dart.legs[1]);
    let edge = dart.edge.as_ref().and_then(|e| piece.outline().edge(e));
    let mouth = Curve::line(apex, apex.lerp(open, 1.5))
        .ok()
        .zip(edge)
        .and_then(|(ray, edge)| {
            let met = crossings(ray.segments(), edge.curve().segments());
            met.iter()
                .map(|c| c.point)
                .min_by(|a, b| a.distance(open).total_cmp(&b.distance(open)))
        });
    [
        apex,
        mouth
            .filter(|m| m.distance(open) < dart.intake())
            .unwrap_or(open),
    ]
}

/// Says beside every dart to which side it is pressed; gives back what there was no room for.
pub(super) fn write(out: &mut PieceLayers, room: &mut Room, piece: &Piece) -> Vec<String> {
    let mut left = Vec::new();
    for dart in piece.darts() {
        let words = press_words(dart);
        let [from, to] = middle(dart, piece);
        let tips = match dart.apexes {
            Apexes::One(apex) => vec![apex],
            Apexes::Two(upper, lower) => vec![upper, lower],
        };
        let legs = dart
            .legs
            .into_iter()
            .flat_map(|leg| tips.iter().map(move |tip| (*tip, leg)));
        let lines: Vec<Curve> = [(from, to)]
            .into_iter()
            .chain(legs)
            .filter_map(|(a, b)| Curve::line(a, b).ok())
            .collect();
        let style = TextStyle::new(Face::Regular, 3.2);
        match write_beside(room, &lines, &words, style, 0.55) {
            Some(text) => out.words.push(text),
            None => left.push(words),
        }
    }
    left
}

/// How a dart is pressed, as it is said on the piece and in lists.
fn press_words(dart: &Dart) -> String {
    let toward = match dart.pressed {
        Pressed::TowardFirstLeg => dart.legs[0] - dart.legs[1],
        Pressed::TowardSecondLeg => dart.legs[1] - dart.legs[0],
    };
    let side = if toward.y.abs() > toward.x.abs() {
        if toward.y > 0.0 { "down" } else { "up" }
    } else if toward.x < 0.0 {
        "toward the centre"
    } else {
        "toward the side"
    };
    format!("{} dart: press {side}", dart.name)
}
