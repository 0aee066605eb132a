//! Law: an outline is a simple ring that runs clockwise on the page.

use super::corner::between;
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::{Point, Vec2, arriving, leaving, ring_crossing};
use crate::piece::{EdgeName, Pattern, Piece};
use crate::units::rounded;
use kurbo::{ParamCurve, PathSeg};
use std::f64::consts::TAU;
use std::ops::ControlFlow;
use thiserror::Error;

/// An outline that bounds no piece of cloth.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::invariants::OutlineFault;
/// let fault = OutlineFault::Crosses { piece: "back".into(), at: Point::new(10.0, 20.0) };
/// assert_eq!(fault.to_string(), "the outline of back crosses itself at (10.0, 20.0) mm");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum OutlineFault {
    /// It crosses itself.
    #[error("the outline of {piece} crosses itself at ({:.1}, {:.1}) mm", rounded(at.x, 1), rounded(at.y, 1))]
    Crosses {
        /// Name of the piece.
        piece: String,
        /// Where, the first place found.
        at: Point,
    },
    /// It runs the wrong way round or encloses nothing.
    #[error(
        "the outline of {piece} encloses {area:.1} mm²; it must run clockwise round some cloth"
    )]
    WrongWay {
        /// Name of the piece.
        piece: String,
        /// Area found, in square millimetres; negative when anticlockwise.
        area: f64,
    },
    /// An edge has no length.
    #[error("{piece} {edge} is {length:.4} mm long; an edge is longer than {least:.4} mm")]
    NoLength {
        /// Name of the piece.
        piece: String,
        /// Name of the edge.
        edge: String,
        /// Its length, in millimetres.
        length: f64,
        /// The least length, in millimetres.
        least: f64,
    },
    /// The outline doubles back on itself.
    #[error(
        "the outline of {piece} doubles back in a spike of {:.2}° on {edge} at ({:.1}, {:.1}) mm; at least {:.1}° are wanted",
        angle.to_degrees(), rounded(at.x, 1), rounded(at.y, 1), least.to_degrees()
    )]
    Spike {
        /// Name of the piece.
        piece: String,
        /// Name of the edge on which, or at whose end, it lies.
        edge: String,
        /// Where the tip is.
        at: Point,
        /// Angle of the tip, of cloth or of gap, in radians.
        angle: f64,
        /// The least angle, in radians.
        least: f64,
    },
}

pub(super) const LAW: Law = Law {
    name: "outline_simple",
    says: "an outline does not cross itself, runs clockwise, has no empty edge and no spike",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        let name = || piece.name().to_owned();
        let parts = extended(piece);
        let ring: Vec<_> = parts.iter().map(|part| part.segment).collect();
        if let Some(at) = ring_crossing(&ring) {
            report(OutlineFault::Crosses { piece: name(), at }.into())?;
        }
        let area = piece.outline().area();
        if area.is_nan() || area <= tolerances.seam * tolerances.seam {
            report(
                OutlineFault::WrongWay {
                    piece: name(),
                    area,
                }
                .into(),
            )?;
        }
        lengths(piece, tolerances, report)?;
        spikes(piece, &parts, report)?;
    }
    ControlFlow::Continue(())
}

fn lengths(piece: &Piece, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for edge in piece.outline().edges() {
        let (length, least) = (edge.curve().length(), tolerances.seam);
        if length.is_nan() || length <= least {
            let (piece, edge) = (piece.name().to_owned(), edge.name().to_string());
            report(
                OutlineFault::NoLength {
                    piece,
                    edge,
                    length,
                    least,
                }
                .into(),
            )?;
        }
    }
    ControlFlow::Continue(())
}

/// A segment of an outline that has any extent.
struct Part<'p> {
    edge: &'p EdgeName,
    segment: PathSeg,
    leaving: Vec2,
}

fn extended(piece: &Piece) -> Vec<Part<'_>> {
    let edges = piece.outline().edges().iter();
    edges
        .flat_map(|e| e.curve().segments().iter().map(move |s| (e.name(), *s)))
        .map(|(edge, segment)| Part {
            edge,
            segment,
            leaving: leaving(&segment),
        })
        .filter(|part| part.leaving != Vec2::ZERO)
        .collect()
}

fn spikes(piece: &Piece, parts: &[Part<'_>], report: Report<'_>) -> ControlFlow<()> {
    for (before, after) in parts.iter().zip(parts.iter().cycle().skip(1)) {
        let cloth = between(arriving(&before.segment), after.leaving);
        let angle = cloth.min(TAU - cloth);
        if angle < Tolerances::SPIKE {
            report(
                OutlineFault::Spike {
                    piece: piece.name().to_owned(),
                    edge: before.edge.to_string(),
                    at: before.segment.end(),
                    angle,
                    least: Tolerances::SPIKE,
                }
                .into(),
            )?;
        }
    }
    ControlFlow::Continue(())
}

impl Explain for OutlineFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::Crosses { piece, .. } | Self::WrongWay { piece, .. } => piece.clone(),
            Self::NoLength { piece, edge, .. } | Self::Spike { piece, edge, .. } => {
                format!("{piece} {edge}")
            }
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
