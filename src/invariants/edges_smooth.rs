//! Law: an edge has no corner of its own but where a dart opens.

use super::corner::between;
use super::tolerances::beyond;
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::{Point, Vec2, arc_length, arriving, leaving};
use crate::piece::{Edge, Pattern, Piece};
use crate::units::rounded;
use kurbo::ParamCurve;
use std::f64::consts::PI;
use std::ops::ControlFlow;
use thiserror::Error;

/// A corner inside an edge.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::invariants::EdgeCorner;
/// let corner = EdgeCorner {
///     piece: "back".into(), edge: "side_seam".into(), at: Point::new(240.0, 600.0), along: 210.0,
///     turn: 0.05, tolerance: 0.0175,
/// };
/// assert!(corner.to_string().starts_with("back side_seam turns by 2.86° in one point 210.0 mm along"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error(
    "{piece} {edge} turns by {:.2}° in one point {along:.1} mm along, at ({:.1}, {:.1}) mm; at most {:.2}° are allowed",
    turn.to_degrees(), rounded(at.x, 1), rounded(at.y, 1), tolerance.to_degrees()
)]
pub struct EdgeCorner {
    /// Name of the piece.
    pub piece: String,
    /// Name of the edge.
    pub edge: String,
    /// Where the corner is.
    pub at: Point,
    /// How far along the open edge, in millimetres.
    pub along: f64,
    /// By how much the edge turns, in radians; positive where the cloth makes a point.
    pub turn: f64,
    /// The turn allowed, in radians.
    pub tolerance: f64,
}

pub(super) const LAW: Law = Law {
    name: "edges_smooth",
    says: "an edge has no corner inside it, dart mouths apart",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        for edge in piece.outline().edges() {
            corners(piece, edge, tolerances, report)?;
        }
    }
    ControlFlow::Continue(())
}

fn corners(
    piece: &Piece,
    edge: &Edge,
    tolerances: &Tolerances,
    report: Report<'_>,
) -> ControlFlow<()> {
    let mouths = piece.mouths(edge.name());
    let mut along = 0.0;
    let mut before: Option<Vec2> = None;
    for segment in edge.curve().segments() {
        let onward = leaving(segment);
        if onward == Vec2::ZERO {
            continue;
        }
        let near = tolerances.seam;
        let in_mouth = mouths
            .iter()
            .any(|(_, from, to)| (from - near..=to + near).contains(&along));
        if let Some(before) = before.filter(|_| !in_mouth) {
            let turn = PI - between(before, onward);
            if beyond(turn, tolerances.smooth) {
                report(
                    EdgeCorner {
                        piece: piece.name().to_owned(),
                        edge: edge.name().to_string(),
                        at: segment.start(),
                        along,
                        turn,
                        tolerance: tolerances.smooth,
                    }
                    .into(),
                )?;
            }
        }
        along += arc_length(segment);
        before = Some(arriving(segment));
    }
    ControlFlow::Continue(())
}

impl Explain for EdgeCorner {
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
