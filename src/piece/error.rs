//! What makes parts fail to be a piece or a pattern.

use super::BodySide;
use crate::geometry::GeometryError;
use thiserror::Error;

/// Parts that do not make a piece or a pattern.
///
/// ```
/// use blockwright::piece::{Outline, PieceError};
/// assert!(matches!(Outline::new(vec![]), Err(PieceError::NoEdges)));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum PieceError {
    /// An outline without edges.
    #[error("an outline needs at least two edges")]
    NoEdges,
    /// An edge does not start where the one before it ended.
    #[error("the outline is open between {before} and {after}: a gap of {gap:.4} mm")]
    Open {
        /// Name of the edge that ends at the gap.
        before: String,
        /// Name of the edge that should start there.
        after: String,
        /// Width of the gap in millimetres.
        gap: f64,
    },
    /// Two things of one kind carry the same name.
    #[error("{kind} {name} is there twice; names must differ within a piece or pattern")]
    Twice {
        /// What carries the name.
        kind: &'static str,
        /// The name.
        name: String,
    },
    /// Something refers to a name that is not there.
    #[error("{whose} refers to {kind} {name}, which is not there")]
    Missing {
        /// Who refers to it.
        whose: String,
        /// What is missing.
        kind: &'static str,
        /// Its name.
        name: String,
    },
    /// Something of one side of the body whose name does not end in that side's word.
    #[error("{kind} {name} is of the {side} side, so that its name must end in ` {side}`")]
    SideNotNamed {
        /// What carries the name.
        kind: &'static str,
        /// The name.
        name: String,
        /// The side it belongs to.
        side: BodySide,
    },
    /// A dart's leg does not end on a joint of the edge it is said to open on.
    #[error("the {dart} dart opens on {edge}, but a leg ends {distance:.4} mm off it")]
    LegOffEdge {
        /// Name of the dart.
        dart: String,
        /// Name of the edge.
        edge: String,
        /// Distance of the leg's end from the edge in millimetres.
        distance: f64,
    },
    /// A notch lies outside the edge it is on.
    #[error("notch {notch} lies {at:.3} mm along {edge}, which is {length:.3} mm long")]
    NotchOffEdge {
        /// Name of the notch.
        notch: String,
        /// Name of the edge.
        edge: String,
        /// Where it was put, in millimetres.
        at: f64,
        /// Length of the edge, in millimetres.
        length: f64,
    },
    /// A mark of the piece lies at no place on paper.
    #[error("{what}: {source}")]
    Misplaced {
        /// The dart, grain line, notch or point.
        what: String,
        /// What is wrong with its place.
        source: GeometryError,
    },
    /// The geometry underneath refused.
    #[error(transparent)]
    Geometry(#[from] GeometryError),
}
