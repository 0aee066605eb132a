//! Why a block cannot be fitted to a wearer.

use crate::draft::DraftError;
use crate::explain::Explain;
use crate::units::Unit;
use thiserror::Error;

/// Why a block cannot be fitted to a wearer.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::fit::FitError;
/// let error = FitError::NothingShared { block: "cape".into() };
/// assert_eq!(error.code(), "nothing_to_fit");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum FitError {
    /// The block cannot be drafted for one of the two bodies, so that they cannot be compared.
    #[error("{whose} gives no draft to compare with: {}", source.in_unit(*unit))]
    Draft {
        /// Whose body it is: `the body that the block is made for`, or `the wearer`.
        whose: &'static str,
        /// Why.
        source: DraftError,
        /// The unit in which measurements are given.
        unit: Unit,
    },
    /// The block has no edge or girth by a name that a draft of it has.
    #[error(
        "the {block} block has no edge and no girth that a draft of it has, so that nothing can be \
         fitted; name its pieces, edges and girths as in a pattern document"
    )]
    NothingShared {
        /// The block.
        block: String,
    },
}

impl Explain for FitError {
    fn code(&self) -> String {
        match self {
            Self::Draft { source, .. } => source.code(),
            Self::NothingShared { .. } => "nothing_to_fit".to_owned(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Draft { whose, source, .. } => Some(match source.place() {
                Some(place) => format!("{whose}: {place}"),
                None => (*whose).to_owned(),
            }),
            Self::NothingShared { .. } => None,
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Draft { source, .. } => source.cure(),
            Self::NothingShared { .. } => {
                "name pieces, edges and girths as in a pattern document".to_owned()
            }
        }
    }
}
