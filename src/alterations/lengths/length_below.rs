//! A parallel spread of the trunk: what lies below goes down whole.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::cutting::quarter::{
    centre, free_above_waist, hem, line_on_side, opened, quarters, upper, waist_on_side,
};
use crate::alterations::cutting::side_moves::{SideMove, matched};
use crate::alterations::cutting::stations::{Station, move_edge};
use crate::alterations::widths::redrawn_waist::{WaistMoves, redraw_waist};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, Point, Rigid, Vec2, tolerance};
use crate::piece::{Apexes, BalanceLine, EdgeName, Pattern, Piece};

/// Largest share of the room between two levels that a tuck may take.
const MOST_TUCK: f64 = 0.5;

/// What a skirt keeps between hip line and hem, in millimetres.
const LEAST_BELOW_HIP: f64 = 30.0;

/// Back and front spread alike between the lowest dart on the side seam and the waist.
pub(in crate::alterations) fn bodice_longer(
    pattern: &Pattern,
    amount: f64,
) -> Result<Vec<Piece>, AlterationError> {
    let pieces: Vec<&Piece> = quarters(pattern).filter(|p| upper(p)).collect();
    let from = free_above_waist(&pieces);
    let moves = pieces
        .into_iter()
        .map(|piece| {
            let missing = || AlterationError::Missing {
                what: format!("a waist on the {}", piece.name()),
                advice: "a bodice is lengthened between scye and waist",
            };
            let waist = waist_on_side(piece).ok_or_else(missing)?;
            let start = opened(piece, from);
            let room = MOST_TUCK * (waist - start);
            at_most(
                amount,
                (-room, f64::INFINITY),
                "mm",
                "a tuck takes no more than half of what lies between bust dart and waist",
            )?;
            Ok((piece, between(start, waist, amount)))
        })
        .collect::<Result<_, AlterationError>>()?;
    spread_alike(moves, amount)
}

/// The stations of a spread between two places of a side seam.
fn between(from: f64, to: f64, amount: f64) -> Vec<Station> {
    let down = Vec2::new(0.0, amount);
    vec![Station::new(from, Vec2::ZERO), Station::new(to, down)]
}

fn spread_alike(moves: Vec<SideMove<'_>>, amount: f64) -> Result<Vec<Piece>, AlterationError> {
    matched(moves)?
        .iter()
        .map(|(piece, stations)| spread(piece, stations, amount))
        .collect()
}

/// Back and front spread alike between waist and hip line.
pub(in crate::alterations) fn hips_longer(
    pattern: &Pattern,
    amount: f64,
) -> Result<Vec<Piece>, AlterationError> {
    let moves = quarters(pattern)
        .filter(|p| p.line("hip").is_some())
        .map(|piece| {
            let missing = || AlterationError::Missing {
                what: format!("a waist on the {}", piece.name()),
                advice: "hips are lengthened between waist and hip line",
            };
            let waist = waist_on_side(piece).ok_or_else(missing)?;
            let hip = line_on_side(piece, "hip").unwrap_or(waist);
            let room = MOST_TUCK * (hip - waist);
            at_most(
                amount,
                (-room, f64::INFINITY),
                "mm",
                "a tuck takes no more than half of what lies between waist and hip line",
            )?;
            Ok((piece, between(waist, hip, amount)))
        })
        .collect::<Result<_, AlterationError>>()?;
    spread_alike(moves, amount)
}

/// Everything below the hip line goes down.
pub(in crate::alterations) fn skirt_longer(
    pattern: &Pattern,
    amount: f64,
) -> Result<Vec<Piece>, AlterationError> {
    let moves = quarters(pattern)
        .filter(|p| p.line("hip").is_some())
        .map(|piece| {
            let hip = line_on_side(piece, "hip").unwrap_or(0.0);
            let end = piece
                .outline()
                .edge(&EdgeName::SIDE_SEAM)
                .map_or(0.0, |e| e.curve().length());
            let room = (end - hip - LEAST_BELOW_HIP).max(0.0);
            at_most(
                amount,
                (-room, f64::INFINITY),
                "mm",
                "the hem would come too near to the hip line",
            )?;
            Ok((piece, between(hip, end, amount)))
        })
        .collect::<Result<_, AlterationError>>()?;
    spread_alike(moves, amount)
}

/// Spreads a piece between two places of its side seam; what lies below the second goes down by
/// the amount, its side by as much as the stations say.
fn spread(piece: &Piece, stations: &[Station], amount: f64) -> Result<Piece, AlterationError> {
    let down = Vec2::new(0.0, amount);
    let side_down = stations.last().map_or(down, |s| s.by);
    let to = stations.last().map_or(0.0, |s| s.at);
    let level = level_at(piece, to);
    let mut sketch = Sketch::of(piece);
    move_edge(&mut sketch, piece, &EdgeName::SIDE_SEAM, stations)?;
    let has_waist = piece.outline().edge(&EdgeName::WAIST).is_some();
    // A bodice's waist goes down; a skirt's lies above the spread.
    let below = if has_waist && upper(piece) {
        if piece.mouths(&EdgeName::WAIST).is_empty() {
            ends_down(&mut sketch, piece, &EdgeName::WAIST, (side_down, down))?;
        } else {
            let moves = WaistMoves {
                centre: down,
                side: side_down,
                longer: 0.0,
                apex: &|_| 0.0,
            };
            redraw_waist(&mut sketch, piece, &moves)?;
        }
        EdgeName::WAIST
    } else {
        let hem = hem(piece).ok_or_else(|| AlterationError::Missing {
            what: format!("a hem on the {}", piece.name()),
            advice: "a piece is lengthened above its waist or its hem",
        })?;
        ends_down(&mut sketch, piece, hem, (side_down, down))?;
        hem.clone()
    };
    if let Some((_, name)) = centre(piece) {
        let fold = sketch.curve(&name)?;
        let lowest = fold.start().y.max(fold.end().y);
        let drop = |p: Point| if p.y == lowest { p + down } else { p };
        let fold = Curve::line(drop(fold.start()), drop(fold.end()))?;
        sketch.replace(&name, fold)?;
    }
    let shifted = |p: Point| {
        if p.y >= level - tolerance::POINT {
            p + down
        } else {
            p
        }
    };
    for dart in sketch.darts_mut() {
        match &mut dart.apexes {
            Apexes::Two(upper, lower) if dart.edge.is_none() => {
                (*upper, *lower) = (shifted(*upper), shifted(*lower));
                dart.legs = dart.legs.map(shifted);
            }
            _ if dart.edge.as_ref() == Some(&below) && below != EdgeName::WAIST => {
                return Err(AlterationError::First {
                    why: format!("the {} dart opens at the {below}", dart.name),
                    advice: "make this alteration before darts are relocated".to_owned(),
                });
            }
            _ => {}
        }
    }
    for line in sketch.lines_mut() {
        if line.curve.end().y >= level - tolerance::POINT {
            line.curve = line.curve.moved(&Rigid::shift(down));
        }
    }
    sketch.parts_mut().grain[0].y += amount;
    sketch.finish()
}

/// The level from which everything goes down: that of a place on the side seam, or of a balance line
/// that ends there a little above it, with the darts on it.
fn level_at(piece: &Piece, place: f64) -> f64 {
    let side = piece.outline().edge(&EdgeName::SIDE_SEAM);
    let seam = side.and_then(|e| e.curve().point_at(place).ok());
    let ends_there = |line: &&BalanceLine| {
        line_on_side(piece, &line.name)
            .is_some_and(|at| (at - place).abs() <= tolerance::SEAM_ALTERED)
    };
    let lines = piece.lines().iter().filter(ends_there);
    let levels = lines.map(|line| line.curve.start().y.min(line.curve.end().y));
    levels.fold(seam.map_or(0.0, |(p, _)| p.y), f64::min)
}

/// An edge from the side seam to the fold, or back, with both ends moved.
fn ends_down(
    sketch: &mut Sketch,
    piece: &Piece,
    edge: &EdgeName,
    (side, centre): (Vec2, Vec2),
) -> Result<(), AlterationError> {
    let curve = sketch.curve(edge)?;
    let (start, end, length) = (curve.start(), curve.end(), curve.length());
    let ends = if start.x.abs() < end.x.abs() {
        [centre, side]
    } else {
        [side, centre]
    };
    let stations = [Station::new(0.0, ends[0]), Station::new(length, ends[1])];
    move_edge(sketch, piece, edge, &stations)
}
