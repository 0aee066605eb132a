//! Why a range cannot be graded or overlaid.

use crate::drawing::SheetError;
use crate::explain::Explain;
use crate::recipe::MakeError;
use thiserror::Error;

/// Why a range cannot be graded.
///
/// ```
/// use blockwright::grading::GradingError;
/// use blockwright::recipe::MakeError;
/// let source = MakeError::Unprovable { violations: vec!["the sides differ".into()] };
/// let error = GradingError::Size { size: "46".into(), source };
/// assert!(error.to_string().starts_with("size 46"));
/// assert_eq!(error.size(), Some("46"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum GradingError {
    /// A range of no sizes.
    #[error("there is no size to grade; give a table with at least one")]
    NoSizes,
    /// Whoever called stopped it.
    #[error("grading was stopped after {done} of {sizes} sizes")]
    Stopped {
        /// How many sizes were made.
        done: usize,
        /// How many there are.
        sizes: usize,
    },
    /// A size gives no pattern.
    #[error("size {size}: {source}")]
    Size {
        /// The size's label.
        size: String,
        /// What stands against it.
        source: MakeError,
    },
}

impl GradingError {
    /// The label of the size that gives no pattern.
    #[must_use]
    pub fn size(&self) -> Option<&str> {
        match self {
            Self::Size { size, .. } => Some(size),
            Self::NoSizes | Self::Stopped { .. } => None,
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

impl Explain for GradingError {
    fn code(&self) -> String {
        match self {
            Self::NoSizes => "no_sizes".to_owned(),
            Self::Stopped { .. } => "stopped".to_owned(),
            Self::Size { source, .. } => source.code(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::NoSizes | Self::Stopped { .. } => None,
            Self::Size { size, source } => Some(match source.place() {
                Some(place) => format!("size {size}: {place}"),
                None => format!("size {size}"),
            }),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::NoSizes => "give a table with at least one size".to_owned(),
            Self::Stopped { .. } => "grade it again and let it finish".to_owned(),
            Self::Size { source, .. } => source.cure(),
        }
    }
}

impl Explain for NestError {
    fn code(&self) -> String {
        match self {
            Self::TooMany { .. } => "too_many_sizes",
            Self::Sheet(_) => "cannot_be_laid_out",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::TooMany { .. } => None,
            Self::Sheet(error) => error.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::TooMany { .. } => format!("grade at most {} sizes at once", super::MOST_SIZES),
            Self::Sheet(error) => error.cure(),
        }
    }
}
