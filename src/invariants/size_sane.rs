//! Law: a piece is no larger than cloth.

use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::piece::{Pattern, Piece};
use std::ops::ControlFlow;
use thiserror::Error;

/// A piece that is larger than any cloth.
///
/// ```
/// use blockwright::invariants::PieceTooLarge;
/// let fault = PieceTooLarge { piece: "back".into(), found: 20_000.0, largest: 10_000.0 };
/// assert_eq!(fault.to_string(), "back reaches to 2.0e4 mm; nothing is drawn beyond 10000 mm");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{piece} reaches to {found:.1e} mm; nothing is drawn beyond {largest:.0} mm")]
pub struct PieceTooLarge {
    /// Name of the piece.
    pub piece: String,
    /// Its farthest coordinate, in millimetres.
    pub found: f64,
    /// The farthest allowed, in millimetres.
    pub largest: f64,
}

pub(super) const LAW: Law = Law {
    name: "size_sane",
    says: "every piece, with all that is drawn on it, is no larger than cloth",
    check,
};

/// Farthest coordinate of a piece and the lines drawn on it, in millimetres.
fn reach(piece: &Piece) -> f64 {
    let all = piece.lines().iter().map(|l| l.curve.bounds());
    let all = all.fold(piece.outline().bounds(), |all, one| all.union(one));
    [all.x0, all.y0, all.x1, all.y1]
        .into_iter()
        .map(f64::abs)
        .fold(0.0, f64::max)
}

pub(super) fn is_sane(piece: &Piece) -> bool {
    reach(piece) <= Tolerances::LARGEST_PIECE
}

fn check(pattern: &Pattern, _: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces().iter().filter(|p| !is_sane(p)) {
        report(
            PieceTooLarge {
                piece: piece.name().to_owned(),
                found: reach(piece),
                largest: Tolerances::LARGEST_PIECE,
            }
            .into(),
        )?;
    }
    ControlFlow::Continue(())
}

impl Explain for PieceTooLarge {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(self.piece.clone())
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
