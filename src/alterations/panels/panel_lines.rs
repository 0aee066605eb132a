//! What a panel seam is judged by: the lines across it whose sewn length must stay, and its bend.

use super::panel_path::{Node, PanelPath};
use super::panel_pieces::Division;
use crate::alterations::AlterationError;
use crate::geometry::{Curve, Which, crossings};
use crate::invariants::bends_back;
use crate::piece::{Pattern, Piece, RunAlong};
use std::f64::consts::PI;

/// Over the bust an edge of the seam turns against its way by no more than this, in radians (four
/// degrees): more is seen as a wave (an assumption).
const WAVE: f64 = 4.0 * PI / 180.0;

/// The bend over the bust is judged on to this share of the way to the next place: from there on a
/// dress turns into its waist.
const JUDGED: f64 = 0.35;

/// Refuses a seam of which an edge is bent to and fro over the bust: the side panel has one convex
/// curve there, the centre panel none that turns back (common practice).
pub(in crate::alterations) fn check_bent_once(
    piece: &Piece,
    nodes: &[Node],
    path: &PanelPath,
) -> Result<(), AlterationError> {
    match (piece.bust_point(), nodes) {
        (Some(_), [_, over, to, ..]) => bent_once(path, over, to),
        _ => Ok(()),
    }
}

fn bent_once(path: &PanelPath, over: &Node, to: &Node) -> Result<(), AlterationError> {
    for side in Which::BOTH {
        let curve = side.of(&path.curves);
        let along = |node: &Node| curve.nearest(*side.of(&node.at)).1;
        let (at, next) = (along(over), along(to));
        let judged = curve.part(0.0, at + JUDGED * (next - at))?;
        if bends_back(&[judged]) > WAVE {
            return Err(AlterationError::First {
                why: "the seam would bend to and fro over the bust".to_owned(),
                advice: "choose another place on that edge".to_owned(),
            });
        }
    }
    Ok(())
}

/// Refuses a seam that climbs to the apex of a dart and turns down again, over a line along which
/// a girth is measured: no cloth turns about such a point.
pub(in crate::alterations) fn check_climb(
    lines: &[&Curve],
    division: &Division<'_>,
) -> Result<(), AlterationError> {
    let twice = |line: &&Curve| {
        let of = |path: &Curve| crossings(line.segments(), path.segments()).len() > 1;
        division.path.curves.iter().all(of)
    };
    if !lines.iter().any(twice) {
        return Ok(());
    }
    Err(AlterationError::First {
        why: "the seam would climb to the apex of one dart and turn down again to the other"
            .to_owned(),
        advice: "leave the upper dart where it was and take the lower one alone to that edge (dart: and to:)".to_owned(),
    })
}

/// The lines of a piece along which a girth is measured: their sewn length must stay.
pub(in crate::alterations) fn measured_lines<'p>(
    pattern: &Pattern,
    piece: &'p Piece,
) -> Vec<&'p Curve> {
    let measured = |name: &str| {
        let mut runs = pattern.girths().iter().flat_map(|g| &g.runs);
        runs.any(|run| {
            run.piece == piece.name() && matches!(&run.along, RunAlong::Line(line) if line == name)
        })
    };
    let lines = piece.lines().iter().filter(|l| measured(&l.name));
    lines.map(|l| &l.curve).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Point, Vec2};

    /// A seam that comes down at a slant, with the direction in which it passes the bust point.
    fn over_the_bust(way: Vec2) -> Result<(), AlterationError> {
        let [start, over, end] = [(90.0, 0.0), (0.0, 150.0), (-20.0, 300.0)].map(Point::from);
        let leave = (over - start) * 0.33;
        let above = Curve::hermite(start, leave, over, way * 50.0).unwrap();
        let below = Curve::hermite(over, way * 50.0, end, (end - over) * 0.33).unwrap();
        let curve = above.then(&below).unwrap();
        let path = PanelPath {
            curves: [curve.clone(), curve],
            notches: Vec::new(),
        };
        let [over, end] = [over, end].map(|at| Node::common(at, None));
        bent_once(&path, &over, &end)
    }

    #[test]
    fn a_seam_that_turns_back_over_the_bust_is_refused() {
        // Between the ways in and on, and beyond them: plumb over the bust, on inward below it.
        assert!(over_the_bust(Vec2::new(-0.3, 0.95)).is_ok());
        assert!(over_the_bust(Vec2::new(0.3, 0.95)).is_err());
    }
}
