//! Why a body cannot be drafted, by name and with numbers.

use crate::geometry::GeometryError;
use crate::piece::PieceError;
use thiserror::Error;

/// A body for which the block cannot be drafted.
///
/// ```
/// use blockwright::draft::DraftError;
/// let e = DraftError::OutOfReach {
///     what: "shoulder slope", found: 44.0, low: 4.0, high: 38.0, unit: "degrees",
///     advice: "measure it again: the shoulder point may have been taken on the arm",
/// };
/// assert_eq!(e.name(), "shoulder_slope_out_of_reach");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum DraftError {
    /// A measurement, or something that follows from several, cannot be made into a block.
    #[error(
        "{what} is {found:.1} {unit}; a block can be drafted from {low:.1} to {high:.1} {unit}. {advice}"
    )]
    OutOfReach {
        /// What is out of reach.
        what: &'static str,
        /// What it is.
        found: f64,
        /// The least that can be drafted.
        low: f64,
        /// The most that can be drafted.
        high: f64,
        /// The unit of the three numbers.
        unit: &'static str,
        /// What to do about it.
        advice: &'static str,
    },
    /// A construction has no solution for this body.
    #[error(
        "{step} cannot be constructed for this body: {source}. Check the measurements it follows from: {from}"
    )]
    Construction {
        /// The step that failed.
        step: &'static str,
        /// The measurements it follows from.
        from: &'static str,
        /// What geometry said.
        source: GeometryError,
    },
    /// Parts that do not make a piece: a fault of the draft, not of the body.
    #[error(
        "the draft does not close: {0}. This is a fault in the draft; please report it with the measurements"
    )]
    Piece(#[from] PieceError),
}

impl DraftError {
    /// A short name in snake case, for programs and for counting.
    #[must_use]
    pub fn name(&self) -> String {
        match self {
            Self::OutOfReach { what, .. } => format!("{}_out_of_reach", what.replace(' ', "_")),
            Self::Construction { step, .. } => {
                format!("{}_not_constructible", step.replace(' ', "_"))
            }
            Self::Piece(_) => "draft_does_not_close".to_owned(),
        }
    }
}

impl From<GeometryError> for DraftError {
    fn from(source: GeometryError) -> Self {
        Self::Piece(PieceError::Geometry(source))
    }
}

/// Refuses a value outside `low..=high`, and any that is not a number.
pub(super) fn within(
    what: &'static str,
    found: f64,
    (low, high): (f64, f64),
    unit: &'static str,
    advice: &'static str,
) -> Result<(), DraftError> {
    if (low..=high).contains(&found) {
        Ok(())
    } else {
        Err(DraftError::OutOfReach {
            what,
            found,
            low,
            high,
            unit,
            advice,
        })
    }
}
