//! The pieces of a pattern as a page draws them.

use crate::allowance::CutLines;
use crate::geometry::path_data::path_data;
use crate::geometry::{Curve, Point, perpendicular};
use crate::piece::{Apexes, EaseOn, EdgeRef, Pattern, Piece};
use crate::recipe::MadePattern;
use crate::render::fitting::{Align, pairs};
use serde::Serialize;
use std::collections::BTreeMap;

/// A piece before and after the alterations.
#[derive(Debug, Serialize)]
pub(super) struct Pair {
    name: String,
    cut: &'static str,
    /// Outermost places of the piece after, or before where it is gone: left, top, right, bottom.
    bounds: [f64; 4],
    after: Option<Shape>,
    before: Option<Shape>,
    /// By how much the piece before is moved to lie on the one after, by what they are laid on.
    shift: BTreeMap<&'static str, [f64; 2]>,
}

#[derive(Debug, Serialize)]
struct Shape {
    /// The outline, closed.
    ring: String,
    edges: Vec<EdgeShape>,
    darts: Vec<Named>,
    lines: Vec<Named>,
    notches: Vec<[[f64; 2]; 2]>,
    grain: [[f64; 2]; 2],
    points: Vec<Place>,
    #[serde(skip_serializing_if = "Option::is_none")]
    cut_line: Option<String>,
}

#[derive(Debug, Serialize)]
struct EdgeShape {
    name: String,
    role: &'static str,
    path: String,
    /// As it is sewn, its darts closed.
    length: f64,
}

#[derive(Debug, Serialize)]
struct Named {
    name: String,
    path: String,
    /// Where its name may stand.
    at: [f64; 2],
}

#[derive(Debug, Serialize)]
struct Place {
    name: String,
    at: [f64; 2],
}

/// Two runs of edges that are sewn to each other.
#[derive(Debug, Serialize)]
pub(super) struct SeamShape {
    name: String,
    a: Vec<[String; 2]>,
    b: Vec<[String; 2]>,
    a_length: f64,
    b_length: f64,
    ease: f64,
    ease_on: Option<&'static str>,
}

/// To a hundredth.
pub(super) fn short(value: f64) -> f64 {
    (value * 100.0).round() / 100.0 + 0.0
}

fn at(point: Point) -> [f64; 2] {
    [short(point.x), short(point.y)]
}

fn data(curve: &Curve) -> String {
    path_data(&curve.to_path(), 2)
}

/// Every piece after with what it was made of, and those of which nothing is left.
pub(super) fn pairs_of(made: &MadePattern, altered: bool) -> Vec<Pair> {
    let cut = made.cut.as_ref();
    pairs(&made.drafted, &made.pattern)
        .into_iter()
        .map(|(name, sides)| {
            let shown = sides.after.or(sides.before);
            let bounds = shown.map(|piece| piece.outline().bounds());
            let shift = match (sides.before, sides.after) {
                (Some(before), Some(after)) if altered => Align::ALL
                    .into_iter()
                    .map(|align| {
                        let by = align.shift(before, after);
                        (align.key(), [short(by.x), short(by.y)])
                    })
                    .collect(),
                _ => BTreeMap::new(),
            };
            Pair {
                name: name.to_owned(),
                cut: shown.map_or("", |piece| piece.cut().words()),
                bounds: bounds.map_or([0.0; 4], |b| [b.x0, b.y0, b.x1, b.y1].map(short)),
                after: sides.after.map(|piece| shape(piece, cut)),
                before: sides
                    .before
                    .filter(|_| altered)
                    .map(|piece| shape(piece, None)),
                shift,
            }
        })
        .collect()
}

fn shape(piece: &Piece, cut: Option<&CutLines>) -> Shape {
    let edges = piece.outline().edges().iter();
    Shape {
        ring: ring(piece),
        edges: edges
            .map(|edge| EdgeShape {
                name: edge.name().to_string(),
                role: edge.role().name(),
                path: data(edge.curve()),
                length: short(piece.seam_length(edge.name()).unwrap_or(0.0)),
            })
            .collect(),
        darts: piece
            .darts()
            .iter()
            .map(|dart| Named {
                name: dart.name.clone(),
                path: match dart.apexes {
                    Apexes::One(apex) => chain(&[dart.legs[0], apex, dart.legs[1]]),
                    Apexes::Two(upper, lower) => {
                        chain(&[upper, dart.legs[0], lower, dart.legs[1], upper])
                    }
                },
                at: at(dart.apex()),
            })
            .collect(),
        lines: piece
            .lines()
            .iter()
            .map(|line| {
                let bounds = line.curve.bounds();
                Named {
                    name: line.name.clone(),
                    path: data(&line.curve),
                    at: at(Point::new(bounds.x0, bounds.y0)),
                }
            })
            .collect(),
        notches: piece
            .notches()
            .iter()
            .flat_map(|notch| {
                let edge = piece.outline().edge(&notch.edge);
                let cuts = notch.cuts().into_iter();
                let marks = cuts.filter_map(move |place| {
                    let (point, along) = edge?.curve().point_at(place).ok()?;
                    Some([at(point), at(point + perpendicular(along) * 7.0)])
                });
                marks.collect::<Vec<_>>()
            })
            .collect(),
        grain: piece.grain().map(at),
        points: piece
            .points()
            .iter()
            .map(|point| Place {
                name: point.name.clone(),
                at: at(point.at),
            })
            .collect(),
        cut_line: cut
            .and_then(|cut| cut.of(piece.name()))
            .map(|line| path_data(&crate::drawing::closed(line.segments()), 2)),
    }
}

fn ring(piece: &Piece) -> String {
    path_data(&crate::drawing::closed(&piece.outline().segments()), 2)
}

fn chain(points: &[Point]) -> String {
    let joined: Vec<String> = points
        .iter()
        .map(|p| format!("{} {}", short(p.x), short(p.y)))
        .collect();
    format!("M{}", joined.join("L"))
}

/// What is sewn to what.
pub(super) fn seams_of(pattern: &Pattern) -> Vec<SeamShape> {
    let names = |side: &[EdgeRef]| {
        side.iter()
            .map(|edge| [edge.piece.clone(), edge.edge.to_string()])
            .collect()
    };
    let length = |side: &[EdgeRef]| {
        let lengths = side.iter().filter_map(|edge| pattern.seam_length(edge));
        short(lengths.sum())
    };
    pattern
        .seams()
        .iter()
        .map(|seam| SeamShape {
            name: seam.name.clone(),
            a: names(&seam.a),
            b: names(&seam.b),
            a_length: length(&seam.a),
            b_length: length(&seam.b),
            ease: short(seam.ease),
            ease_on: seam.ease_on.map(|on| match on {
                EaseOn::A => "a",
                EaseOn::B => "b",
            }),
        })
        .collect()
}
