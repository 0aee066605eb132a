//! The points of a piece by their trade names.

use crate::geometry::{Point, with_next};
use crate::piece::{Apexes, Dart, Piece};

/// Corners by the edges that meet there, in either order.
const CORNERS: &[(&str, &str, &str)] = &[
    ("neckline", "centre_back", "nape"),
    ("neckline", "centre_front", "front neck point"),
    ("neckline", "shoulder", "neck side"),
    ("shoulder", "armscye", "shoulder point"),
    ("armscye", "side_seam", "underarm"),
    ("side_seam", "waist", "side waist"),
    ("side_seam", "hem", "hem side"),
    ("hem", "centre_back", "hem centre"),
    ("hem", "centre_front", "hem centre"),
    ("waist", "centre_back", "waist centre"),
    ("waist", "centre_front", "waist centre"),
    ("sleeve_cap", "underarm_back", "back underarm"),
    ("sleeve_cap", "underarm_front", "front underarm"),
    ("wrist", "underarm_back", "back wrist"),
    ("wrist", "underarm_front", "front wrist"),
];

/// The named points of a piece, each name once.
pub(super) fn named_points(piece: &Piece) -> Vec<(String, Point)> {
    let mut points: Vec<(String, Point)> = Vec::new();
    let mut add = |name: String, at: Point| {
        if !points.iter().any(|(known, _)| *known == name) {
            points.push((name, at));
        }
    };
    let edges = piece.outline().edges();
    for (edge, next) in with_next(edges) {
        let (a, b) = (edge.name().as_str(), next.name().as_str());
        let known = CORNERS
            .iter()
            .find(|(x, y, _)| (*x, *y) == (a, b) || (*x, *y) == (b, a));
        let name = known.map_or_else(|| format!("{a} to {b}"), |(_, _, name)| (*name).to_owned());
        add(name, edge.curve().end());
    }
    let is_sleeve = piece.line("biceps").is_some();
    for line in piece.lines().iter().filter(|_| !is_sleeve) {
        let (start, end) = (line.curve.start(), line.curve.end());
        let (near, far) = if start.x.abs() <= end.x.abs() {
            (start, end)
        } else {
            (end, start)
        };
        match line.name.as_str() {
            "waist" => {
                add("waist centre".to_owned(), near);
                add("side waist".to_owned(), far);
            }
            "underarm" | "bust" => {}
            name => add(format!("{name} side"), far),
        }
    }
    for notch in piece.notches().iter().filter(|_| is_sleeve) {
        if notch.name == "shoulder"
            && let Some(edge) = piece.outline().edge(&notch.edge)
            && let Ok((at, _)) = edge.curve().point_at(notch.at)
        {
            add("cap top".to_owned(), at);
        }
    }
    for dart in piece.darts() {
        let Dart { name, apexes, .. } = dart;
        match *apexes {
            Apexes::One(apex) => add(format!("{name} dart apex"), apex),
            Apexes::Two(upper, lower) => {
                add(format!("{name} dart upper apex"), upper);
                add(format!("{name} dart lower apex"), lower);
            }
        }
    }
    points
}
