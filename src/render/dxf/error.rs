//! Why a pattern makes no DXF file.

use crate::explain::Explain;
use thiserror::Error;

/// Why a pattern makes no DXF file.
///
/// ```
/// use blockwright::render::dxf::{DxfError, Style, render};
/// let style = Style { title: "Nothing", sample_size: "40", date: None };
/// assert_eq!(render(&style, &[]), Err(DxfError::NoPieces));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum DxfError {
    /// There is nothing to write.
    #[error("there is no piece to write; give at least one pattern with a piece")]
    NoPieces,
    /// A coordinate is not a finite number.
    #[error(
        "the {what} of piece {piece} has a coordinate that is not a finite number; give the piece \
         a {what} that can be drawn"
    )]
    NotFinite {
        /// Name of the piece.
        piece: String,
        /// What of it cannot be written.
        what: String,
    },
}

impl Explain for DxfError {
    fn code(&self) -> String {
        match self {
            Self::NoPieces => "no_pieces",
            Self::NotFinite { .. } => "not_finite",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::NoPieces => None,
            Self::NotFinite { piece, what } => Some(format!("{piece} {what}")),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::NoPieces => "give at least one pattern with a piece".to_owned(),
            Self::NotFinite { what, .. } => format!("give the piece a {what} that can be drawn"),
        }
    }
}
