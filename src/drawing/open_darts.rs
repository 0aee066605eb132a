//! What of a line lies on cloth that is seen once a dart is closed.

use kurbo::{Line, PathSeg, Point, Shape};

use super::strokes::{closed, stroke};
use crate::geometry::{Curve, crossings, tolerance, with_next};
use crate::piece::{Apexes, Dart, Piece};

/// By how much the legs of a dart are carried on beyond its mouth, which bulges out, as a part of
/// their length.
const BEYOND: f64 = 0.5;

/// A part of a line that is shorter than this is left out, in millimetres.
const SHORT: f64 = 1.0;

/// The parts of a line outside the darts of a piece, in order along it: what lies within an open
/// dart is taken up when it is sewn.
pub(crate) fn outside_darts(piece: &Piece, line: &Curve) -> Vec<Curve> {
    let length = line.length();
    let darts: Vec<Vec<Point>> = piece.darts().iter().map(corners).collect();
    let mut cuts = vec![0.0, length];
    for corners in &darts {
        for (from, to) in with_next(corners) {
            let side = [PathSeg::Line(Line::new(*from, *to))];
            let met = crossings(line.segments(), &side);
            cuts.extend(met.into_iter().map(|met| line.length_to(met.first)));
        }
        // A line may meet a dart at its very point.
        let near = corners.iter().map(|corner| line.nearest(*corner));
        let on = near.filter(|(far, _)| *far < tolerance::PRINT);
        cuts.extend(on.map(|(_, at)| at));
    }
    cuts.sort_by(f64::total_cmp);
    let inside = |from: f64, to: f64| {
        let middle = line.point_at(0.5 * (from + to));
        middle.is_ok_and(|(at, _)| {
            let within = |corners: &Vec<Point>| ring_of(corners).winding(at) != 0;
            darts.iter().any(within)
        })
    };
    let mut kept: Vec<(f64, f64)> = Vec::new();
    for (from, to) in cuts.iter().copied().zip(cuts.iter().copied().skip(1)) {
        if inside(from, to) {
            continue;
        }
        match kept.last_mut() {
            Some(last) if from - last.1 < tolerance::PRINT => last.1 = to,
            _ => kept.push((from, to)),
        }
    }
    if matches!(kept[..], [(from, to)] if from <= 0.0 && to >= length) {
        return vec![line.clone()];
    }
    let long = kept.into_iter().filter(|(from, to)| to - from > SHORT);
    long.filter_map(|(from, to)| line.part(from, to).ok())
        .collect()
}

/// The corners of what a dart takes up.
fn corners(dart: &Dart) -> Vec<Point> {
    let [first, second] = dart.legs;
    match dart.apexes {
        Apexes::One(apex) if dart.edge.is_some() => {
            let beyond = |leg: Point| leg + (leg - apex) * BEYOND;
            vec![apex, beyond(first), beyond(second)]
        }
        Apexes::One(apex) => vec![apex, first, second],
        Apexes::Two(upper, lower) => vec![upper, first, lower, second],
    }
}

fn ring_of(corners: &[Point]) -> kurbo::BezPath {
    let path = stroke(corners);
    let sides: Vec<PathSeg> = path.segments().collect();
    closed(&sides)
}
