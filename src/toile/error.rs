//! Why nothing can be sewn on screen.

use crate::explain::Explain;
use thiserror::Error;

/// Why a pattern cannot be sewn on screen.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::toile::{Fabric, ToileError};
/// let error = Fabric::new(4.0, 20.0).unwrap_err();
/// assert!(matches!(error, ToileError::Cloth { what: "weight", .. }));
/// assert_eq!(error.code(), "cloth_out_of_range");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ToileError {
    /// A number that no cloth has.
    #[error("the {what} of the cloth is {value} {unit}; it must be {least} to {most} {unit}")]
    Cloth {
        /// Which.
        what: &'static str,
        /// As given.
        value: f64,
        /// The least there is.
        least: f64,
        /// The most there is.
        most: f64,
        /// Their unit.
        unit: &'static str,
    },
    /// A distance between points of the mesh that is out of range.
    #[error(
        "points of the cloth {edge} mm apart are out of range; it must be {least} to {most} mm"
    )]
    Edge {
        /// As given, in mm.
        edge: f64,
        /// The least there is.
        least: f64,
        /// The most there is.
        most: f64,
    },
    /// A sheet without triangles.
    #[error("the pattern has no piece that hangs on the body")]
    Nothing,
    /// A triangle of a sheet that is none.
    #[error("triangle {index} of the sheet has no area, or names a point that is not there")]
    BadTriangle {
        /// Its number.
        index: usize,
    },
    /// Places, pins or flat shapes that do not belong to a sheet.
    #[error("a sheet of {points} points needs as many places, all finite, and pins at its points")]
    BadPlaces {
        /// The points it has.
        points: usize,
    },
    /// An edge or seam that cannot be followed.
    #[error("the {edge} of {piece} cannot be sewn on screen: it is not there, or has no length")]
    Unsewable {
        /// The piece.
        piece: String,
        /// Its edge.
        edge: String,
    },
    /// A piece whose outline or darts cross.
    #[error("{piece} cannot be divided into triangles: its outline or its darts cross")]
    Crossed {
        /// The piece.
        piece: String,
    },
    /// The watcher stopped it.
    #[error("sewing was stopped before the cloth came to rest")]
    Stopped,
    /// The cloth did not come to rest.
    #[error("the cloth did not come to rest: forces of {left:.0} % of its weight are left")]
    Restless {
        /// Forces left, in percent of the weight.
        left: f64,
    },
}

impl ToileError {
    pub(super) fn unsewable(piece: &str, edge: &str) -> Self {
        Self::Unsewable {
            piece: piece.to_owned(),
            edge: edge.to_owned(),
        }
    }
}

impl Explain for ToileError {
    fn code(&self) -> String {
        match self {
            Self::Cloth { .. } => "cloth_out_of_range",
            Self::Edge { .. } => "edge_out_of_range",
            Self::Nothing => "nothing_to_sew",
            Self::BadTriangle { .. } => "bad_triangle",
            Self::BadPlaces { .. } => "bad_places",
            Self::Unsewable { .. } => "unsewable_edge",
            Self::Crossed { .. } => "crossed_outline",
            Self::Stopped => "stopped",
            Self::Restless { .. } => "restless_cloth",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Unsewable { piece, edge } => Some(format!("{piece} {edge}")),
            Self::Crossed { piece } => Some(piece.clone()),
            _ => None,
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Cloth { .. } => "give the cloth's own weight and bending length, or none",
            Self::Edge { .. } => "take draft or usual quality",
            Self::Nothing => "take a block with a back and a front",
            Self::BadTriangle { .. } => "number corners from 0, anticlockwise in the flat",
            Self::BadPlaces { .. } => "give one place for each point",
            Self::Unsewable { .. } => "check the seams of the pattern with `check`",
            Self::Crossed { .. } => "check the pattern with `check`; darts must not meet",
            Self::Stopped => "start again",
            Self::Restless { .. } => "try draft quality, or a stiffer cloth",
        }
        .to_owned()
    }
}
