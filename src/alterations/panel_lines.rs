//! The lines across a panel seam whose sewn length must stay.

use super::AlterationError;
use super::panel_pieces::Division;
use crate::geometry::{Curve, crossings};
use crate::piece::{Pattern, Piece, RunAlong};

/// Refuses a seam that climbs to the apex of a dart and turns down again, over a line along which
/// a girth is measured: no cloth turns about such a point.
pub(super) fn check_climb(
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
pub(super) fn measured_lines<'p>(pattern: &Pattern, piece: &'p Piece) -> Vec<&'p Curve> {
    let measured = |name: &str| {
        let mut runs = pattern.girths().iter().flat_map(|g| &g.runs);
        runs.any(|run| {
            run.piece == piece.name() && matches!(&run.along, RunAlong::Line(line) if line == name)
        })
    };
    let lines = piece.lines().iter().filter(|l| measured(&l.name));
    lines.map(|l| &l.curve).collect()
}
