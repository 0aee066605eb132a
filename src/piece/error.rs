//! What makes parts fail to be a piece or a pattern.

use super::BodySide;
use crate::explain::Explain;
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

impl Explain for PieceError {
    fn code(&self) -> String {
        match self {
            Self::NoEdges => "no_edges".to_owned(),
            Self::Open { .. } => "open_outline".to_owned(),
            Self::Twice { .. } => "name_twice".to_owned(),
            Self::Missing { .. } => "name_missing".to_owned(),
            Self::SideNotNamed { .. } => "side_not_named".to_owned(),
            Self::LegOffEdge { .. } => "dart_leg_off_edge".to_owned(),
            Self::NotchOffEdge { .. } => "notch_off_edge".to_owned(),
            Self::Misplaced { .. } => "misplaced".to_owned(),
            Self::Geometry(error) => error.code(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::NoEdges => None,
            Self::Open { before, after, .. } => Some(format!("{before} and {after}")),
            Self::Twice { kind, name } => Some(format!("{kind} {name}")),
            Self::Missing { whose, .. } => Some(whose.clone()),
            Self::SideNotNamed { kind, name, .. } => Some(format!("{kind} {name}")),
            Self::LegOffEdge { dart, edge, .. } => Some(format!("{dart} dart, {edge}")),
            Self::NotchOffEdge { notch, edge, .. } => Some(format!("notch {notch}, {edge}")),
            Self::Misplaced { what, .. } => Some(what.clone()),
            Self::Geometry(error) => error.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::NoEdges => "give the outline at least two edges".to_owned(),
            Self::Open { .. } => "let each edge start where the one before it ends".to_owned(),
            Self::Twice { .. } => "give each its own name".to_owned(),
            Self::Missing { kind, name, .. } => {
                format!("add {kind} {name}, or name one that there is")
            }
            Self::SideNotNamed { side, .. } => format!("let the name end in ` {side}`"),
            Self::LegOffEdge { .. } => "let the legs end on joints of the edge".to_owned(),
            Self::NotchOffEdge { .. } => "put the notch within the length of the edge".to_owned(),
            Self::Misplaced { source, .. } => source.cure(),
            Self::Geometry(error) => error.cure(),
        }
    }
}
