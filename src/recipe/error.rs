//! Why a recipe gives no pattern for a body.

use super::OwnBlockError;
use crate::allowance::AllowanceError;
use crate::alterations::{Refused, RequestError};
use crate::draft::DraftError;
use crate::explain::Explain;
use crate::piece::PieceError;
use crate::units::{Unit, speak};
use thiserror::Error;

/// Why a recipe gives no pattern for a body.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::recipe::MakeError;
/// let error = MakeError::Unprovable { violations: vec!["the side seams differ".into()] };
/// assert!(error.to_string().contains("the side seams differ"));
/// assert_eq!(error.code(), "law_broken");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum MakeError {
    /// The block cannot be drafted for this body.
    #[error("the block cannot be drafted for this body: {}", source.in_unit(*unit))]
    Draft {
        /// Why.
        source: DraftError,
        /// The unit in which measurements of the body are given.
        unit: Unit,
    },
    /// The draft breaks a rule that every sewable pattern must meet.
    #[error(
        "the draft was refused, since it cannot be sewn as it stands: {}. This is a fault in \
         the draft; please report it with the measurements",
        .violations.join("; ")
    )]
    Unprovable {
        /// What was found, a sentence each.
        violations: Vec<String>,
    },
    /// The block of one's own cannot be used.
    #[error(transparent)]
    OwnBlock(#[from] OwnBlockError),
    /// An alteration that does not exist, or has no such settings.
    #[error("an alteration cannot be read: {0}")]
    Request(#[from] RequestError),
    /// An alteration was refused.
    #[error("the alterations were refused at {}", speak(&refused.to_string(), *unit))]
    Alteration {
        /// Which, and why.
        #[source]
        refused: Box<Refused>,
        /// The unit in which lengths are said.
        unit: Unit,
    },
    /// There is no cut line with the allowances asked for.
    #[error("the seam allowance cannot be added: {}", speak(&source.to_string(), *unit))]
    Allowance {
        /// Why.
        source: AllowanceError,
        /// The unit in which lengths are said.
        unit: Unit,
    },
    /// Parts that make no pattern: a fault of this crate.
    #[error("the pattern does not hold together: {0}; please report it with the measurements")]
    Piece(#[from] PieceError),
}

impl From<Box<Refused>> for MakeError {
    fn from(refused: Box<Refused>) -> Self {
        Self::Alteration {
            refused,
            unit: Unit::Mm,
        }
    }
}

impl From<AllowanceError> for MakeError {
    fn from(source: AllowanceError) -> Self {
        Self::Allowance {
            source,
            unit: Unit::Mm,
        }
    }
}

impl MakeError {
    /// The same, said in another unit.
    #[must_use]
    pub fn in_unit(mut self, wanted: Unit) -> Self {
        match &mut self {
            Self::Draft { unit, .. }
            | Self::Alteration { unit, .. }
            | Self::Allowance { unit, .. } => *unit = wanted,
            Self::Unprovable { violations } => {
                for violation in violations {
                    *violation = speak(violation, wanted);
                }
            }
            Self::Request(_) | Self::Piece(_) | Self::OwnBlock(_) => {}
        }
        self
    }
}

impl Explain for MakeError {
    fn code(&self) -> String {
        match self {
            Self::Draft { source, .. } => source.code(),
            Self::Unprovable { .. } => "law_broken".to_owned(),
            Self::OwnBlock(error) => error.code(),
            Self::Request(_) => "bad_alteration".to_owned(),
            Self::Alteration { refused, .. } => refused.code(),
            Self::Allowance { .. } => "no_room_for_allowance".to_owned(),
            Self::Piece(_) => "pattern_does_not_hold".to_owned(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Draft { source, .. } => source.place(),
            Self::Unprovable { .. } => None,
            Self::OwnBlock(error) => error.place(),
            Self::Request(error) => error.place(),
            Self::Alteration { refused, .. } => refused.place(),
            Self::Allowance { source, .. } => source.place(),
            Self::Piece(error) => error.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Draft { source, unit } => speak(&source.cure(), *unit),
            Self::Unprovable { .. } | Self::Piece(_) => {
                "It is a fault of the program, not of the measurements: report it with them"
                    .to_owned()
            }
            Self::OwnBlock(error) => error.cure(),
            Self::Request(error) => error.cure(),
            Self::Alteration { refused, unit } => speak(&refused.cure(), *unit),
            Self::Allowance { source, unit } => speak(&source.cure(), *unit),
        }
    }
}
