//! Why pieces cannot be laid.

use crate::drawing::DrawingError;
use crate::explain::Explain;
use thiserror::Error;

/// Why pieces cannot be laid on cloth.
///
/// ```
/// use blockwright::lay::{Cloth, LayError};
/// assert!(matches!(Cloth::new(20.0), Err(LayError::Width { .. })));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum LayError {
    /// A width that no cloth has.
    #[error(
        "cloth {width} mm wide is out of reach; give the width between selvedges, {least} to {most} mm"
    )]
    Width {
        /// The width asked for, in millimetres.
        width: f64,
        /// The least there is.
        least: f64,
        /// The greatest there is.
        most: f64,
    },
    /// A gap out of reach.
    #[error("a gap of {gap} mm between pieces is out of reach; it may be 0 to {most} mm")]
    Gap {
        /// The gap asked for, in millimetres.
        gap: f64,
        /// The greatest there is.
        most: f64,
    },
    /// A piece that does not fit across the cloth.
    #[error(
        "{piece} does not fit: it needs {needs:.0} mm across ({across:.0} mm and the gap) and \
         the cloth gives {gives:.0} mm {}; take cloth at least {cloth:.0} mm wide{}",
        if *.folded { "folded" } else { "between the selvedges" },
        if *.open_fits { ", or open it out (it fits on this cloth not folded)" } else { "" }
    )]
    TooNarrow {
        /// The piece.
        piece: String,
        /// Its width across the cloth, in millimetres.
        across: f64,
        /// That and the gaps it keeps.
        needs: f64,
        /// What the cloth gives.
        gives: f64,
        /// Whether the cloth is folded.
        folded: bool,
        /// The narrowest cloth it would fit on in the same way.
        cloth: f64,
        /// Whether it would fit on this cloth if that were not folded.
        open_fits: bool,
    },
    /// Nothing to lay.
    #[error("there is nothing to lay; give at least one piece")]
    Nothing,
    /// More than one lay holds.
    #[error("{count} pieces are more than a lay holds, {most}; lay them in parts")]
    TooMany {
        /// How many there are.
        count: usize,
        /// The most.
        most: usize,
    },
    /// Points that make no outline to lay.
    #[error("these points make no outline to lay: {problem}")]
    Shape {
        /// What is wrong with them.
        problem: String,
    },
    /// A piece that is cut on the fold and has none, or one that is not straight.
    #[error("{piece} is cut on the fold, but {problem}; it cannot be laid")]
    Fold {
        /// The piece.
        piece: String,
        /// What is wrong with its fold.
        problem: &'static str,
    },
    /// The picture cannot be drawn.
    #[error("the lay cannot be drawn: {0}")]
    Drawing(#[from] DrawingError),
}

impl Explain for LayError {
    fn code(&self) -> String {
        match self {
            Self::Width { .. } | Self::Gap { .. } => "bad_cloth",
            Self::TooNarrow { .. } => "cloth_too_narrow",
            Self::Nothing => "nothing_to_lay",
            Self::TooMany { .. } => "too_many_pieces",
            Self::Shape { .. } | Self::Fold { .. } | Self::Drawing(_) => "cannot_be_laid",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::TooNarrow { piece, .. } | Self::Fold { piece, .. } => Some(piece.clone()),
            Self::Drawing(error) => error.place(),
            _ => None,
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Width { least, most, .. } => format!("give {least} to {most} mm"),
            Self::Gap { most, .. } => format!("give 0 to {most} mm"),
            Self::TooNarrow {
                cloth, open_fits, ..
            } => {
                let open = if *open_fits {
                    ", or open this cloth out"
                } else {
                    ""
                };
                format!("take cloth at least {cloth:.0} mm wide{open}")
            }
            Self::Nothing => "give at least one piece".to_owned(),
            Self::TooMany { most, .. } => format!("lay at most {most} pieces at once"),
            Self::Shape { .. } => "give points that surround some cloth once".to_owned(),
            Self::Fold { .. } => "give the piece one straight fold".to_owned(),
            Self::Drawing(error) => error.cure(),
        }
    }
}
