//! Law: neckline, waist and hem meet the fold square.

use super::corner::{End, corner};
use super::tolerances::beyond;
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::Point;
use crate::piece::{Edge, EdgeName, EdgeRole, Pattern};
use crate::units::rounded;
use std::f64::consts::FRAC_PI_2;
use std::ops::ControlFlow;
use thiserror::Error;

/// An edge that would have a corner where the piece is unfolded.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::invariants::NotSquareToFold;
/// let fault = NotSquareToFold {
///     piece: "back".into(), edge: "hem".into(), fold: "centre_back".into(),
///     at: Point::new(0.0, 980.0), found: 1.6, tolerance: 1e-3,
/// };
/// assert!(fault.to_string().starts_with("back hem meets centre_back at 91.67°"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error(
    "{piece} {edge} meets {fold} at {:.2}° at ({:.1}, {:.1}) mm; it must be square within {:.2}°",
    found.to_degrees(), rounded(at.x, 1), rounded(at.y, 1), tolerance.to_degrees()
)]
pub struct NotSquareToFold {
    /// Name of the piece.
    pub piece: String,
    /// Name of the edge.
    pub edge: String,
    /// Name of the fold edge.
    pub fold: String,
    /// The corner.
    pub at: Point,
    /// Angle of the cloth there, in radians.
    pub found: f64,
    /// The miss allowed, in radians.
    pub tolerance: f64,
}

pub(super) const LAW: Law = Law {
    name: "square_to_fold",
    says: "neckline, waist and hem meet the fold at a right angle",
    check,
};

/// Whether an edge runs on, mirrored, across the fold as one line.
fn runs_across(edge: &Edge) -> bool {
    edge.role() == EdgeRole::Hem
        || [EdgeName::NECKLINE, EdgeName::WAIST, EdgeName::HEM].contains(edge.name())
}

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        let folds = piece
            .outline()
            .edges()
            .iter()
            .filter(|e| e.role() == EdgeRole::Fold);
        for fold in folds {
            for end in [End::Start, End::Finish] {
                let Some(corner) = corner(piece, fold.name(), end) else {
                    continue;
                };
                if !runs_across(corner.neighbour)
                    || !beyond(corner.angle - FRAC_PI_2, tolerances.square)
                {
                    continue;
                }
                report(
                    NotSquareToFold {
                        piece: piece.name().to_owned(),
                        edge: corner.neighbour.name().to_string(),
                        fold: fold.name().to_string(),
                        at: corner.at,
                        found: corner.angle,
                        tolerance: tolerances.square,
                    }
                    .into(),
                )?;
            }
        }
    }
    ControlFlow::Continue(())
}

impl Explain for NotSquareToFold {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(format!("{} {}", self.piece, self.edge))
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
