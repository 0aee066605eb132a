//! Why a range cannot be graded or overlaid.

use crate::allowance::AllowanceError;
use crate::alterations::{Refused, RequestError};
use crate::draft::DraftError;
use crate::drawing::SheetError;
use thiserror::Error;

/// Why a range cannot be graded; what lies with one size names it.
///
/// ```
/// use blockwright::grading::GradingError;
/// let error = GradingError::Unprovable { size: "46".into(), violations: vec!["the sides differ".into()] };
/// assert!(error.to_string().starts_with("size 46"));
/// assert_eq!(error.size(), Some("46"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum GradingError {
    /// A range of no sizes.
    #[error("there is no size to grade; give a table with at least one")]
    NoSizes,
    /// A size cannot be drafted.
    #[error("size {size} cannot be drafted: {source}")]
    Draft {
        /// The size's label.
        size: String,
        /// What stands against it.
        source: DraftError,
    },
    /// A size breaks laws that a pattern must keep to be sewn.
    #[error(
        "size {size} was refused, since it cannot be sewn as it is drafted: {}. This is a fault \
         in the draft; please report it with the measurements",
        .violations.join("; ")
    )]
    Unprovable {
        /// The size's label.
        size: String,
        /// What was found, a sentence each.
        violations: Vec<String>,
    },
    /// An alteration that there is not, or not with such settings.
    #[error("an alteration cannot be read: {0}")]
    Request(#[from] RequestError),
    /// An alteration was refused for a size.
    #[error("size {size}: the alterations were refused at {source}")]
    Alteration {
        /// The size's label.
        size: String,
        /// What stands against it.
        source: Box<Refused>,
    },
    /// A size has no cut line with the allowances asked for.
    #[error("size {size}: the seam allowance cannot be added: {source}")]
    Allowance {
        /// The size's label.
        size: String,
        /// What stands against it.
        source: AllowanceError,
    },
}

impl GradingError {
    /// The label of the size with which it lies.
    #[must_use]
    pub fn size(&self) -> Option<&str> {
        match self {
            Self::Draft { size, .. }
            | Self::Unprovable { size, .. }
            | Self::Alteration { size, .. }
            | Self::Allowance { size, .. } => Some(size),
            Self::NoSizes | Self::Request(_) => None,
        }
    }

    /// A short name in snake case, for programs and for counting.
    #[must_use]
    pub fn code(&self) -> String {
        match self {
            Self::NoSizes => "no_sizes".to_owned(),
            Self::Draft { source, .. } => source.name(),
            Self::Unprovable { .. } => "law_broken".to_owned(),
            Self::Request(_) => "bad_alteration".to_owned(),
            Self::Alteration { .. } => "alteration_refused".to_owned(),
            Self::Allowance { .. } => "no_room_for_allowance".to_owned(),
        }
    }
}

/// Why sizes cannot be laid over one another.
///
/// ```
/// use blockwright::grading::{MOST_SIZES, NestError};
/// let error = NestError::TooMany { sizes: 40 };
/// assert!(error.to_string().contains(&MOST_SIZES.to_string()));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum NestError {
    /// More sizes than there are line styles.
    #[error(
        "{sizes} sizes cannot be told apart in one nest; at most {} can, so grade a part of them",
        super::MOST_SIZES
    )]
    TooMany {
        /// How many sizes there are.
        sizes: usize,
    },
    /// The nests cannot be laid out or drawn.
    #[error("the nest cannot be laid out: {0}")]
    Sheet(#[from] SheetError),
}
