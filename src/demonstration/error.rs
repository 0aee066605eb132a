//! Why there is nothing to show.

use crate::explain::Explain;
use thiserror::Error;

/// Why an alteration cannot be demonstrated.
///
/// ```
/// use blockwright::demonstration::DemonstrationError;
/// let error = DemonstrationError::Unknown { alteration: "pleats".into() };
/// assert!(error.to_string().contains("pleats"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum DemonstrationError {
    /// The catalogue has no alteration of that name.
    #[error("`{alteration}` has no demonstration: it is not in the catalogue of alterations")]
    Unknown {
        /// What was asked for.
        alteration: String,
    },
}

impl Explain for DemonstrationError {
    fn code(&self) -> String {
        "no_demonstration".to_owned()
    }

    fn cure(&self) -> String {
        "name an alteration of the catalogue".to_owned()
    }
}

/// What a piece lacks to be cut as is usual.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Missing(pub String);

/// What was tried on a piece.
pub(super) type Tried<T> = Result<T, Missing>;

/// The answer where something is missing.
pub(super) fn missing<T>(what: impl Into<String>) -> Tried<T> {
    Err(Missing(what.into()))
}
