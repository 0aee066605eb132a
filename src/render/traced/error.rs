//! Why a drawing is no block.

use crate::draft::DraftError;
use crate::explain::Explain;
use crate::geometry::Point;
use crate::piece::PieceError;
use crate::units::Unit;
use thiserror::Error;

/// Why a drawing is no block. Places are lines and columns of its text, and millimetres from its top
/// left corner.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::render::traced::TracedError;
/// let error = TracedError::NoSize { line: 1, column: 1 };
/// assert_eq!(error.code(), "drawing_without_size");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum TracedError {
    /// The text is no SVG.
    #[error("line {line}, column {column}: this is not an SVG drawing: {problem}")]
    NotSvg {
        /// Line of the fault, from 1.
        line: u32,
        /// Column of the fault.
        column: u32,
        /// What is wrong there.
        problem: String,
    },
    /// The drawing does not say how large it is.
    #[error(
        "line {line}, column {column}: the drawing does not say how large it is; give the outermost \
         `svg` a `width` and a `height` with a unit, such as `width=\"600mm\"`"
    )]
    NoSize {
        /// Line of the outermost element.
        line: u32,
        /// Column of it.
        column: u32,
    },
    /// An element is wrong.
    #[error("line {line}, column {column}: {name}: {problem}; {cure}")]
    Element {
        /// Its line.
        line: u32,
        /// Its column.
        column: u32,
        /// Its name, or what it is.
        name: String,
        /// What is wrong.
        problem: String,
        /// What to do.
        cure: String,
    },
    /// A path is missing.
    #[error("the drawing has no `{name}`: {place}")]
    Missing {
        /// The name it should have.
        name: String,
        /// Where it is looked for.
        place: String,
    },
    /// Two edges do not meet.
    #[error(
        "`{before}` and `{after}` are {gap:.1} mm apart near ({:.1}, {:.1}) mm of the drawing; edges \
         are closed over at most {} mm", at.x, at.y, super::CLOSED_WITHIN
    )]
    Open {
        /// The one edge.
        before: String,
        /// The one after it.
        after: String,
        /// How far their ends are apart, in millimetres.
        gap: f64,
        /// Where, in millimetres of the drawing.
        at: Point,
    },
    /// The draft of its kind, with which the drawing is compared, cannot be made.
    #[error("the drawing cannot be compared with a draft of its kind for this body: {}", source.in_unit(*unit))]
    Draft {
        /// Why.
        source: DraftError,
        /// The unit of measurements.
        unit: Unit,
    },
    /// What was drawn makes no piece or pattern.
    #[error("{name}: {source}")]
    Parts {
        /// The piece, or the block.
        name: String,
        /// What does not fit.
        source: PieceError,
    },
}

impl Explain for TracedError {
    fn code(&self) -> String {
        match self {
            Self::NotSvg { .. } => "not_a_drawing".to_owned(),
            Self::NoSize { .. } => "drawing_without_size".to_owned(),
            Self::Element { .. } => "bad_element".to_owned(),
            Self::Missing { .. } => "missing_in_drawing".to_owned(),
            Self::Open { .. } => "open_in_drawing".to_owned(),
            Self::Draft { source, .. } => source.code(),
            Self::Parts { source, .. } => source.code(),
        }
    }

    fn place(&self) -> Option<String> {
        let at = |line: &u32, column: &u32| Some(format!("line {line}, column {column}"));
        match self {
            Self::NotSvg { line, column, .. }
            | Self::NoSize { line, column }
            | Self::Element { line, column, .. } => at(line, column),
            Self::Missing { name, .. } | Self::Parts { name, .. } => Some(name.clone()),
            Self::Open { at, .. } => Some(format!("({:.1}, {:.1}) mm", at.x, at.y)),
            Self::Draft { source, .. } => source.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::NotSvg { .. } => "save the drawing as plain SVG".to_owned(),
            Self::NoSize { .. } => "give `width` and `height` with a unit".to_owned(),
            Self::Element { cure, .. } => cure.clone(),
            Self::Missing { .. } => {
                "draw it, or name the path that it is, by its `id` or under `edges`".to_owned()
            }
            Self::Open { .. } => "let the two edges meet there".to_owned(),
            Self::Draft { source, .. } => source.cure(),
            Self::Parts { source, .. } => source.cure(),
        }
    }
}
