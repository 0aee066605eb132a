//! Why no PDF was made.

use crate::explain::Explain;
use thiserror::Error;

use super::FontError;
use crate::drawing::DrawingError;

/// Why no PDF was made.
///
/// ```
/// use blockwright::render::pdf::PdfError;
///
/// let error = PdfError::TooManyPages { limit: 1000 };
/// assert!(error.to_string().contains("1000"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum PdfError {
    /// The paper leaves too little room within its margins.
    #[error(
        "a page of {width:.1} × {height:.1} mm is too small: with margins of {margin:.1} mm and \
         an overlap of {overlap:.1} mm it must be at least {least_width:.1} × \
         {least_height:.1} mm; choose larger paper or smaller margins"
    )]
    PaperTooSmall {
        /// Width of the page in mm.
        width: f64,
        /// Height of the page in mm.
        height: f64,
        /// Margin in mm.
        margin: f64,
        /// Overlap in mm.
        overlap: f64,
        /// The least width that would do, in mm.
        least_width: f64,
        /// The least height that would do, in mm.
        least_height: f64,
    },
    /// An option is out of range.
    #[error("{what} is {value} mm; expected {expected}")]
    BadOption {
        /// Which option.
        what: &'static str,
        /// The number found, in mm.
        value: f64,
        /// What it may be.
        expected: &'static str,
    },
    /// More pages than anyone would glue together.
    #[error(
        "the drawing needs more than {limit} pages; print it as one sheet, use larger paper, or \
         check the units"
    )]
    TooManyPages {
        /// The most pages there may be.
        limit: usize,
    },
    /// Everything in the drawing is white or blank.
    #[error("nothing in the drawing would leave ink on the paper; give its lines a colour")]
    NothingToPrint,
    /// A font cannot be used.
    #[error(transparent)]
    Font(#[from] FontError),
    /// The parts cannot be drawn together.
    #[error(transparent)]
    Drawing(#[from] DrawingError),
}

impl Explain for PdfError {
    fn code(&self) -> String {
        match self {
            Self::PaperTooSmall { .. } => "paper_too_small".to_owned(),
            Self::BadOption { .. } => "bad_print_option".to_owned(),
            Self::TooManyPages { .. } => "too_many_pages".to_owned(),
            Self::NothingToPrint => "nothing_to_print".to_owned(),
            Self::Font(error) => error.code(),
            Self::Drawing(error) => error.code(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::BadOption { what, .. } => Some((*what).to_owned()),
            Self::Drawing(error) => error.place(),
            _ => None,
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::PaperTooSmall { .. } => "choose larger paper or smaller margins".to_owned(),
            Self::BadOption { expected, .. } => format!("give {expected}"),
            Self::TooManyPages { .. } => {
                "print it as one sheet, use larger paper, or check the units".to_owned()
            }
            Self::NothingToPrint => "give its lines a colour".to_owned(),
            Self::Font(error) => error.cure(),
            Self::Drawing(error) => error.cure(),
        }
    }
}
