//! Finding a dart by name, the places free for one, and what moving darts promises.

use super::dart_opening::Opening;
use super::dart_swing::Swing;
use crate::alterations::chain::promise::girths_stay;
use crate::alterations::{AlterationError, Promise};
use crate::geometry::tolerance;
use crate::piece::{Apexes, Dart, EdgeName, Measure, Pattern, Piece};

/// The angle about an apex is kept to 1e-9 rad; promises are in degrees, with room for what
/// the angle's own computation loses.
const SAME_ANGLE: f64 = 6e-8;

/// The angle of a dart whose tip is backed off from the bust point, in degrees: its edge, drawn
/// to close there without a corner, takes some hundredths of a millimetre from its mouth.
const SAME_BACKED_OFF: f64 = 0.1;

/// A girth across a dart whose tip is backed off, in millimetres, for the same reason: what the
/// law of girths allows after alterations, halved.
pub(in crate::alterations) const SAME_GIRTH: f64 = 2.0 * tolerance::SEAM_ALTERED;

/// How many places along an edge are tried when free ones are named.
const TRIED: u32 = 50;

/// The dart of a name with one apex, and its piece.
pub(in crate::alterations) fn found<'p>(
    pattern: &'p Pattern,
    name: &str,
    on: Option<&str>,
) -> Result<(&'p Piece, &'p Dart), AlterationError> {
    let having: Vec<(&Piece, &Dart)> = pattern
        .pieces()
        .iter()
        .filter(|p| on.is_none_or(|on| p.name() == on))
        .filter_map(|p| Some((p, p.dart(name)?)))
        .collect();
    let movable: Vec<_> = having
        .iter()
        .filter(|(_, d)| d.edge.is_some() && matches!(d.apexes, Apexes::One(_)))
        .copied()
        .collect();
    match (movable.as_slice(), having.as_slice()) {
        ([one], _) => Ok(*one),
        ([], []) => Err(AlterationError::Missing {
            what: match on {
                Some(piece) => format!("a {name} dart on a piece named {piece}"),
                None => format!("a {name} dart"),
            },
            advice: "name a dart that the block has; one without fullness to take in is not drawn",
        }),
        ([], _) => Err(AlterationError::Setting(format!(
            "the {name} dart has two apexes and lies inside its piece; only a dart with one apex, open on an edge, can be moved"
        ))),
        (several, _) => {
            let names: Vec<&str> = several.iter().map(|(p, _)| p.name()).collect();
            Err(AlterationError::Setting(format!(
                "several pieces have a {name} dart; say which with piece: {}",
                names.join(" or ")
            )))
        }
    }
}

/// The refusal of a place, with the places of that edge that are free.
pub(in crate::alterations) fn free_places(
    swing: &Swing<'_>,
    edge: &EdgeName,
    why: String,
) -> AlterationError {
    let free = |step: u32| {
        let at = f64::from(step) / f64::from(TRIED);
        let into = Opening::place(swing.piece, edge, at).ok()?;
        let there = Swing {
            into,
            ..swing.clone()
        };
        there.made().is_ok().then_some(at)
    };
    let mut ranges: Vec<[f64; 2]> = Vec::new();
    let mut open = false;
    for step in 0..=TRIED {
        match (free(step), ranges.last_mut()) {
            (Some(at), Some(range)) if open => range[1] = at,
            (Some(at), _) => {
                ranges.push([at, at]);
                open = true;
            }
            (None, _) => open = false,
        }
    }
    let message: Vec<String> = ranges
        .iter()
        .map(|[from, to]| format!("{from:.2} to {to:.2}"))
        .collect();
    AlterationError::First {
        why,
        advice: if message.is_empty() {
            format!(
                "no place on the {edge} is free for this dart; choose another edge, or divide it first (dart_division)"
            )
        } else {
            format!(
                "free on the {edge} are the places at {}",
                message.join(" and ")
            )
        },
    }
}

/// Every edge of a piece keeps its sewn length.
pub(in crate::alterations) fn kept_edges(piece: &Piece) -> impl Iterator<Item = Promise> {
    let edges = piece.outline().edges().iter();
    edges.map(|e| Promise::exactly(Measure::edge_length(piece.name(), e.name().clone())))
}

/// What moving a dart of a piece keeps: its sewn lengths and every girth.
pub(in crate::alterations) fn kept_of(
    before: &Pattern,
    piece: &Piece,
    dart: &Dart,
) -> Vec<Promise> {
    let within = if piece.fullness(dart) == dart.apex() {
        tolerance::POINT * 10.0
    } else {
        SAME_GIRTH
    };
    let edges = kept_edges(piece).map(|p| p.within(tolerance::POINT));
    let girths = girths_stay(before, &[]).map(|p| p.within(within));
    edges.chain(girths).collect()
}

/// The angle of a dart changes by a share of itself, exactly.
pub(in crate::alterations) fn turned_darts(piece: &Piece, dart: &Dart, share: f64) -> Promise {
    let angle = Measure::dart_angle(piece.name(), &dart.name);
    let within = if piece.fullness(dart) == dart.apex() {
        SAME_ANGLE
    } else {
        SAME_BACKED_OFF
    };
    let change = piece.dart_angle(dart).to_degrees() * share;
    Promise::changes_by(angle, change).within(within)
}
