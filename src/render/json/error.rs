//! Why a document cannot be read.

use super::fault::{Fault, ShapeFault};
use crate::allowance::AllowanceError;
use crate::explain::Explain;
use crate::geometry::GeometryError;
use crate::invariants::Violation;
use crate::piece::PieceError;
use thiserror::Error;

/// Why a pattern document cannot be read, or must not be trusted.
///
/// Places are JSON pointers: `/pieces/0/edges/2/path` is the path of the third edge of the first
/// piece.
///
/// ```
/// use blockwright::render::json::{DocumentError, PatternDocument};
/// let read = PatternDocument::read(br#"{"format": "blockwright-pattern", "version": 1}"#);
/// let error = read.err().ok_or("it was read")?;
/// assert!(matches!(error, DocumentError::Version { .. }));
/// assert!(error.to_string().contains("draft the pattern again"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum DocumentError {
    /// Longer than any pattern is.
    #[error("the document has {bytes} bytes; no pattern needs more than {most}")]
    TooLong {
        /// Its length in bytes.
        bytes: usize,
        /// The longest that is read.
        most: usize,
    },
    /// The text ends in the middle.
    #[error(
        "the document ends in the middle, at line {line}, column {column}: a part of it was lost; copy it again from where it came"
    )]
    EndsEarly {
        /// Line of the end, from 1.
        line: usize,
        /// Column of the end.
        column: usize,
    },
    /// The text is no JSON.
    #[error(
        "the document is damaged at line {line}, column {column}: what stands there is not JSON; copy it again from where it came"
    )]
    NotJson {
        /// Line of the fault, from 1.
        line: usize,
        /// Column of the fault.
        column: usize,
    },
    /// It is JSON, but no pattern document.
    #[error(
        "this is not a pattern document: its `format` is {found}, not `blockwright-pattern`; read the pattern.json of a pattern"
    )]
    NotAPattern {
        /// What the format is.
        found: String,
    },
    /// It is of another version.
    #[error("the document is of version {found}; this program reads version {expected}: {cure}")]
    Version {
        /// The version found.
        found: String,
        /// The version that is read.
        expected: u32,
        /// What to do.
        cure: &'static str,
    },
    /// A part of it is not what belongs there.
    #[error("{}: {fault}", place_or_whole(place))]
    Shape {
        /// Where, as a JSON pointer.
        place: String,
        /// What is wrong there.
        fault: ShapeFault,
    },
    /// A path is no curve.
    #[error("{place}: {source}")]
    Path {
        /// Where, as a JSON pointer.
        place: String,
        /// What is wrong with the curve.
        source: GeometryError,
    },
    /// A piece or the pattern does not hold together.
    #[error(
        "{}: {source}; the document was changed by hand or damaged",
        place_or_whole(place)
    )]
    Parts {
        /// Where, as a JSON pointer.
        place: String,
        /// What does not fit.
        source: PieceError,
    },
    /// The allowance cannot be what it says, or has no room on a piece.
    #[error("{place}: {source}")]
    Allowance {
        /// Where, as a JSON pointer.
        place: String,
        /// What is wrong with it.
        source: AllowanceError,
    },
    /// A figure that follows from the pieces is another than they give.
    #[error(
        "{place}: {written:.2} mm is written, but the pieces measure {measured:.2} mm; the document was changed by hand or damaged"
    )]
    Figure {
        /// Where, as a JSON pointer.
        place: String,
        /// The figure in the document, in millimetres.
        written: f64,
        /// What the pieces give, in millimetres.
        measured: f64,
    },
    /// A cut line is not the one that the allowance gives.
    #[error(
        "{place}: the line to cut along is not the stitching line with the allowance; leave both out, or write the document again"
    )]
    CutLine {
        /// Where, as a JSON pointer.
        place: String,
    },
    /// The pattern is whole, but it cannot be sewn.
    #[error("the pattern in the document cannot be sewn: {}", listed(violations))]
    Unsewable {
        /// Every rule that it breaks.
        violations: Vec<Violation>,
    },
}

impl From<Fault> for DocumentError {
    fn from(fault: Fault) -> Self {
        Self::Shape {
            place: fault.pointer(),
            fault: fault.fault,
        }
    }
}

fn place_or_whole(place: &str) -> &str {
    if place.is_empty() {
        "the document"
    } else {
        place
    }
}

/// The first few violations; a spoiled pattern can have hundreds.
fn listed(violations: &[Violation]) -> String {
    const MOST: usize = 3;
    let first = violations.iter().take(MOST);
    let mut text: Vec<String> = first.map(ToString::to_string).collect();
    if violations.len() > MOST {
        text.push(format!("and {} more", violations.len() - MOST));
    }
    text.join("; ")
}

impl Explain for DocumentError {
    fn code(&self) -> String {
        match self {
            Self::TooLong { .. } => "document_too_long".to_owned(),
            Self::EndsEarly { .. } => "document_ends_early".to_owned(),
            Self::NotJson { .. } => "document_not_json".to_owned(),
            Self::NotAPattern { .. } => "not_a_pattern_document".to_owned(),
            Self::Version { .. } => "document_version".to_owned(),
            Self::Shape { fault, .. } => fault.code(),
            Self::Path { source, .. } => source.code(),
            Self::Parts { source, .. } => source.code(),
            Self::Allowance { source, .. } => source.code(),
            Self::Figure { .. } => "document_figure_differs".to_owned(),
            Self::CutLine { .. } => "document_cut_line_differs".to_owned(),
            Self::Unsewable { .. } => "document_unsewable".to_owned(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::TooLong { .. } | Self::NotAPattern { .. } | Self::Unsewable { .. } => None,
            Self::EndsEarly { line, column } | Self::NotJson { line, column } => {
                Some(format!("line {line}, column {column}"))
            }
            Self::Version { .. } => Some("/version".to_owned()),
            Self::Parts { place, source } if place.is_empty() => source.place(),
            Self::Shape { place, .. }
            | Self::Path { place, .. }
            | Self::Parts { place, .. }
            | Self::Allowance { place, .. }
            | Self::Figure { place, .. }
            | Self::CutLine { place } => Some(place.clone()),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::TooLong { most, .. } => format!("read a document of at most {most} bytes"),
            Self::EndsEarly { .. } | Self::NotJson { .. } => {
                "copy the document again from where it came".to_owned()
            }
            Self::NotAPattern { .. } => "read the pattern.json of a pattern".to_owned(),
            Self::Version { cure, .. } => (*cure).to_owned(),
            Self::Shape { fault, .. } => fault.cure(),
            Self::Path { source, .. } => source.cure(),
            Self::Parts { source, .. } => source.cure(),
            Self::Allowance { source, .. } => source.cure(),
            Self::Figure { .. } => "copy the document again, or draft the pattern again".to_owned(),
            Self::CutLine { .. } => {
                "leave `allowance` and every `cut_line` out, or write the document again".to_owned()
            }
            Self::Unsewable { .. } => "draft the pattern again from its job".to_owned(),
        }
    }
}
