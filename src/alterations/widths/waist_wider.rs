//! One quarter's waist made wider or narrower at its side seam and its darts.

use super::redrawn_waist::{WaistMoves, from_fold, redraw_waist};
use crate::alterations::cutting::quarter::{line_on_side, opened, upper, waist_on_side};
use crate::alterations::cutting::side_moves::follow_side;
use crate::alterations::cutting::stations::{Station, move_edge, moved_at};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Span, Vec2, root};
use crate::piece::{Apexes, Dart, EdgeName, Piece};

/// What is given at one quarter.
#[derive(Debug, Clone, Copy)]
pub(in crate::alterations) struct Taken {
    /// By how much the quarter's sewn waist gets longer.
    pub quarter: f64,
    /// How much of that at the side edge.
    pub side: f64,
    /// Where along the sewn side seam the change begins.
    pub from: f64,
}

/// What a waist dart keeps of its intake, in millimetres.
const LEAST_INTAKE: f64 = 3.0;

/// The darts that shape a piece's waist.
fn waist_darts(piece: &Piece) -> impl Iterator<Item = &Dart> {
    let level = piece.line("waist").map(|l| l.curve.end().y);
    piece.darts().iter().filter(move |d| match d.apexes {
        Apexes::One(_) => d.edge.as_ref() == Some(&EdgeName::WAIST),
        Apexes::Two(..) => level.is_some_and(|y| d.legs.iter().all(|l| (l.y - y).abs() < 1.0)),
    })
}

/// How much a piece's waist darts can give to a quarter's change, no leg moving by more than
/// `most`.
pub(in crate::alterations) fn capacity(piece: &Piece, quarter: f64, most: f64) -> f64 {
    waist_darts(piece)
        .map(|dart| {
            if quarter < 0.0 {
                2.0 * most
            } else {
                Span::from_low(0.0, 2.0 * most).nearest(dart.intake() - LEAST_INTAKE)
            }
        })
        .sum()
}

/// How the side seam of a piece moves: from below the lowest dart to the waist, and from there to
/// the hip.
pub(in crate::alterations) fn side_stations(
    piece: &Piece,
    taken: Taken,
) -> Result<Vec<Station>, AlterationError> {
    let waist = waist_on_side(piece).ok_or_else(|| AlterationError::Missing {
        what: format!("a waist on the {}", piece.name()),
        advice: "waist girth is altered where the block has a waist edge or a waist line",
    })?;
    let seam = piece.outline().edge(&EdgeName::SIDE_SEAM);
    let end = seam.map_or(0.0, |e| e.curve().length());
    let undarted = piece.mouths(&EdgeName::WAIST).is_empty();
    let out = match piece.outline().edge(&EdgeName::WAIST) {
        Some(edge) if undarted => undarted_end(edge.curve(), piece, taken.quarter)?,
        _ => Vec2::new(taken.side, 0.0),
    };
    let below = line_on_side(piece, "hip").unwrap_or(end);
    let mut stations = Vec::new();
    if upper(piece) {
        stations.push(Station::new(opened(piece, taken.from), Vec2::ZERO));
    }
    stations.push(Station::new(waist, out));
    if below > waist + 1.0 {
        stations.push(Station::new(below, Vec2::ZERO));
    }
    Ok(stations)
}

/// The piece with its waist that much wider, its side seam moved at the stations.
pub(in crate::alterations) fn drawn_wider(
    piece: &Piece,
    taken: Taken,
    stations: &[Station],
) -> Result<Piece, AlterationError> {
    let waist = waist_on_side(piece).unwrap_or(0.0);
    let at_waist = stations.iter().find(|s| s.at == waist);
    let out = at_waist.map_or(Vec2::ZERO, |s| s.by);
    let has_edge = piece.outline().edge(&EdgeName::WAIST).is_some();
    let mut sketch = Sketch::of(piece);
    if has_edge && piece.mouths(&EdgeName::WAIST).is_empty() {
        let edge = sketch.curve(&EdgeName::WAIST)?.clone();
        sketch.replace(&EdgeName::WAIST, end_moved(&edge, piece, out)?)?;
    } else if has_edge {
        let moves = WaistMoves {
            centre: Vec2::ZERO,
            side: out,
            longer: taken.quarter,
            apex: &|_| 0.0,
        };
        redraw_waist(&mut sketch, piece, &moves)?;
    } else {
        double_pointed(&mut sketch, piece, taken);
    }
    move_edge(&mut sketch, piece, &EdgeName::SIDE_SEAM, stations)?;
    follow_side(&mut sketch, piece, stations)?;
    sketch.finish()
}

/// Double-pointed darts take in less (or more), their middle and apexes kept.
fn double_pointed(sketch: &mut Sketch, piece: &Piece, taken: Taken) {
    let total: f64 = waist_darts(piece).map(Dart::intake).sum();
    let names: Vec<&str> = waist_darts(piece).map(|d| d.name.as_str()).collect();
    for dart in sketch.darts_mut() {
        if !names.contains(&dart.name.as_str()) {
            continue;
        }
        let less = (taken.quarter - taken.side) * dart.intake() / total;
        let [a, b] = dart.legs;
        let inward = (b - a).normalize() * (less / 2.0);
        dart.legs = [a + inward, b - inward];
    }
}

/// A waist edge without darts, its side end moved.
fn end_moved(edge: &Curve, piece: &Piece, by: Vec2) -> Result<Curve, GeometryError> {
    let mut ends = [Vec2::ZERO, by];
    if !from_fold(piece) {
        ends.reverse();
    }
    let stations = [
        Station::new(0.0, ends[0]),
        Station::new(edge.length(), ends[1]),
    ];
    moved_at(edge, &stations)
}

/// By how much the side end of a waist edge without darts moves out until the edge is longer by so
/// much.
fn undarted_end(edge: &Curve, piece: &Piece, longer: f64) -> Result<Vec2, AlterationError> {
    let wanted = edge.length() + longer;
    let reach = 2.0 * longer.abs() + 1.0;
    let out = root("side end of the waist", -reach, reach, |out| {
        let moved = end_moved(edge, piece, Vec2::new(out, 0.0));
        moved.map_or(f64::NAN, |c| c.length() - wanted)
    })
    .map_err(|source| AlterationError::Construction {
        step: "waist edge without darts",
        source,
    })?;
    Ok(Vec2::new(out, 0.0))
}
