//! Why there is no cut line.

use crate::explain::Explain;
use crate::geometry::GeometryError;
use crate::units::rounded;
use thiserror::Error;

/// Why an allowance cannot be added.
///
/// ```
/// use blockwright::allowance::{AllowanceError, Allowances};
/// let refused = Allowances::all_round(400.0);
/// assert!(matches!(refused, Err(AllowanceError::OutOfReach { .. })));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum AllowanceError {
    /// A width that no allowance has.
    #[error("an allowance of {width} mm at {place} is out of reach; it may be 0 to {most} mm wide")]
    OutOfReach {
        /// The place it was asked for.
        place: String,
        /// The width asked for, in millimetres.
        width: f64,
        /// The greatest width there is.
        most: f64,
    },
    /// No edge has that name.
    #[error("`{place}` is no place of an allowance; it may be one of {places}")]
    NoPlace {
        /// The name found.
        place: String,
        /// The names there are.
        places: String,
    },
    /// The line beside the piece runs into itself or into the piece.
    #[error(
        "the allowance of {piece} has no room: at ({:.0}, {:.0}) mm the cut line would run \
         {distance:.2} mm from the {edge} edge instead of {width:.2} mm; ask for a narrower one",
        rounded(*x, 0), rounded(*y, 0)
    )]
    NoRoom {
        /// The piece.
        piece: String,
        /// The edge that is cut too close.
        edge: String,
        /// Where, in the piece's own coordinates.
        x: f64,
        /// Where, in the piece's own coordinates.
        y: f64,
        /// How close the cut line comes.
        distance: f64,
        /// How wide the allowance should be there.
        width: f64,
    },
    /// The cut line crosses itself.
    #[error(
        "the cut line of {piece} crosses itself at ({:.0}, {:.0}) mm; ask for a narrower allowance",
        rounded(*x, 0), rounded(*y, 0)
    )]
    Crossing {
        /// The piece.
        piece: String,
        /// Where, in the piece's own coordinates.
        x: f64,
        /// Where, in the piece's own coordinates.
        y: f64,
    },
    /// A dart runs along the edge it opens on: its folded mouth would stick out of the cut line
    /// as a spike.
    #[error(
        "the {dart} dart of {piece} runs nearly along the {edge}: folded, its mouth of {mouth:.0} mm would stick out of the cut line as a spike; bring the dart to another place, or make it a seam (dart_to_seam)"
    )]
    Spike {
        /// The piece.
        piece: String,
        /// The dart.
        dart: String,
        /// The edge it opens on.
        edge: String,
        /// How long its mouth is, in millimetres.
        mouth: f64,
    },
    /// A line that cannot be constructed.
    #[error("the cut line of {piece} cannot be constructed: {source}")]
    Geometry {
        /// The piece.
        piece: String,
        /// What cannot be made.
        source: GeometryError,
    },
}

impl Explain for AllowanceError {
    fn code(&self) -> String {
        match self {
            Self::OutOfReach { .. } => "allowance_out_of_reach",
            Self::NoPlace { .. } => "no_place_of_allowance",
            Self::Spike { .. } => "dart_along_its_edge",
            Self::NoRoom { .. } | Self::Crossing { .. } | Self::Geometry { .. } => {
                "no_room_for_allowance"
            }
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::OutOfReach { place, .. } | Self::NoPlace { place, .. } => place.clone(),
            Self::NoRoom { piece, edge, .. } => format!("{piece} {edge}"),
            Self::Spike { piece, dart, .. } => format!("{piece} {dart} dart"),
            Self::Crossing { piece, .. } | Self::Geometry { piece, .. } => piece.clone(),
        })
    }

    fn cure(&self) -> String {
        match self {
            Self::OutOfReach { most, .. } => format!("ask for 0 to {most} mm"),
            Self::NoPlace { places, .. } => format!("name one of {places}"),
            Self::Spike { .. } => {
                "bring the dart to another place, or make it a seam (dart_to_seam)".to_owned()
            }
            _ => "ask for a narrower allowance".to_owned(),
        }
    }
}
