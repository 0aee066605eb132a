//! Law: a fold is one straight line and the grain runs along it.

use super::inside::Inside;
use super::tolerances::beyond;
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::elementary::atan2;
use crate::geometry::{Curve, Point, Rigid, Vec2};
use crate::piece::{Cut, Edge, EdgeRole, Pattern, Piece};
use crate::units::rounded;
use std::ops::ControlFlow;
use thiserror::Error;

/// A fold or grain line by which the piece cannot be laid on the cloth.
///
/// ```
/// use blockwright::invariants::FoldFault;
/// let fault = FoldFault::Count { piece: "back".into(), cut: "fold", found: 0, expected: 1 };
/// assert_eq!(fault.to_string(), "back is cut fold and needs 1 fold edge(s), but has 0");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum FoldFault {
    /// The number of fold edges does not agree with the cut.
    #[error("{piece} is cut {cut} and needs {expected} fold edge(s), but has {found}")]
    Count {
        /// Name of the piece.
        piece: String,
        /// How it is cut.
        cut: &'static str,
        /// Fold edges found.
        found: usize,
        /// Fold edges wanted.
        expected: usize,
    },
    /// A fold edge is not straight.
    #[error("{piece} {edge} lies on the fold and bows by {off:.3} mm (at most {tolerance} mm)")]
    Bent {
        /// Name of the piece.
        piece: String,
        /// Name of the edge.
        edge: String,
        /// Greatest distance from the straight line between its ends, in millimetres.
        off: f64,
        /// The distance allowed, in millimetres.
        tolerance: f64,
    },
    /// The grain is not parallel to the fold.
    #[error(
        "the grain of {piece} is {:.3}° off its fold {edge} (at most {:.3}°)",
        angle.to_degrees(), tolerance.to_degrees()
    )]
    Askew {
        /// Name of the piece.
        piece: String,
        /// Name of the fold edge.
        edge: String,
        /// Angle between the two, in radians.
        angle: f64,
        /// The angle allowed, in radians.
        tolerance: f64,
    },
    /// The grain line leaves the piece, or is no line.
    #[error("the grain of {piece} lies off the cloth at ({:.1}, {:.1}) mm", rounded(at.x, 1), rounded(at.y, 1))]
    GrainOff {
        /// Name of the piece.
        piece: String,
        /// Where it does.
        at: Point,
    },
    /// The grain line is too short to be measured by.
    #[error("the grain of {piece} is {length:.1} mm long; at least {least:.1} mm are wanted")]
    GrainShort {
        /// Name of the piece.
        piece: String,
        /// Its length, in millimetres.
        length: f64,
        /// The least length, in millimetres.
        least: f64,
    },
}

pub(super) const LAW: Law = Law {
    name: "fold_straight",
    says: "a piece cut on the fold has one straight fold edge, and the grain lies in the piece, along the fold",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        let folds: Vec<&Edge> = piece
            .outline()
            .edges()
            .iter()
            .filter(|e| e.role() == EdgeRole::Fold)
            .collect();
        let expected = usize::from(piece.cut() == Cut::Fold);
        if folds.len() != expected {
            report(
                FoldFault::Count {
                    piece: piece.name().to_owned(),
                    cut: piece.cut().name(),
                    found: folds.len(),
                    expected,
                }
                .into(),
            )?;
        }
        for fold in folds {
            straight(piece, fold, tolerances, report)?;
        }
        grain(piece, tolerances, report)?;
    }
    ControlFlow::Continue(())
}

fn straight(
    piece: &Piece,
    fold: &Edge,
    tolerances: &Tolerances,
    report: Report<'_>,
) -> ControlFlow<()> {
    let curve = fold.curve();
    let chord = curve.end() - curve.start();
    let level = curve.moved(&Rigid::lay(
        curve.start(),
        chord,
        Point::ORIGIN,
        Vec2::new(1.0, 0.0),
    ));
    let off = level.bounds().y0.abs().max(level.bounds().y1.abs());
    if beyond(off, tolerances.seam) {
        report(
            FoldFault::Bent {
                piece: piece.name().to_owned(),
                edge: fold.name().to_string(),
                off,
                tolerance: tolerances.seam,
            }
            .into(),
        )?;
    }
    let [from, to] = piece.grain();
    let angle = atan2((to - from).cross(chord).abs(), (to - from).dot(chord).abs());
    if beyond(angle, tolerances.square) {
        report(
            FoldFault::Askew {
                piece: piece.name().to_owned(),
                edge: fold.name().to_string(),
                angle,
                tolerance: tolerances.square,
            }
            .into(),
        )?;
    }
    ControlFlow::Continue(())
}

fn grain(piece: &Piece, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    let name = || piece.name().to_owned();
    let [from, to] = piece.grain();
    let inside = Inside::of(piece.outline());
    let end_off = [from, to]
        .into_iter()
        .find(|end| !inside.holds(*end, tolerances.seam));
    if let Some(at) = end_off.or_else(|| inside.leaves(from, to, tolerances.flush)) {
        report(FoldFault::GrainOff { piece: name(), at }.into())?;
    }
    let length = from.distance(to);
    let least = Tolerances::GRAIN_SHARE * extent(piece, to - from);
    if length.is_nan() || length < least {
        report(
            FoldFault::GrainShort {
                piece: name(),
                length,
                least,
            }
            .into(),
        )?;
    }
    ControlFlow::Continue(())
}

/// How far a piece reaches in a direction, in millimetres.
fn extent(piece: &Piece, direction: Vec2) -> f64 {
    let level = Rigid::lay(Point::ORIGIN, direction, Point::ORIGIN, Vec2::new(1.0, 0.0));
    piece
        .outline()
        .edges()
        .iter()
        .map(|e: &Edge| Curve::moved(e.curve(), &level).bounds())
        .reduce(|a, b| a.union(b))
        .map_or(0.0, |bounds| bounds.width())
}

impl Explain for FoldFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::Count { piece, .. }
            | Self::GrainOff { piece, .. }
            | Self::GrainShort { piece, .. } => piece.clone(),
            Self::Bent { piece, edge, .. } | Self::Askew { piece, edge, .. } => {
                format!("{piece} {edge}")
            }
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
