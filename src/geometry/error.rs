//! What can go wrong in pure geometry.

use crate::explain::Explain;
use thiserror::Error;

/// A geometric construction that cannot be made.
///
/// ```
/// use blockwright::geometry::{Curve, GeometryError, Point};
/// let refused = Curve::line(Point::new(0.0, f64::NAN), Point::ORIGIN);
/// assert!(matches!(refused, Err(GeometryError::NotFinite { .. })));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum GeometryError {
    /// A coordinate is NaN or infinite.
    #[error("a point has a coordinate that is not a number; every coordinate must be finite")]
    NotFinite {
        /// The x coordinate found.
        x: f64,
        /// The y coordinate found.
        y: f64,
    },
    /// A point lies farther out than any cloth.
    #[error(
        "a point lies at ({x:.0}, {y:.0}) mm; every coordinate must lie within {farthest:.0} mm of the origin"
    )]
    TooFar {
        /// The x coordinate found.
        x: f64,
        /// The y coordinate found.
        y: f64,
        /// The farthest a coordinate may lie.
        farthest: f64,
    },
    /// A curve without a segment.
    #[error("a curve needs at least one segment")]
    Empty,
    /// A segment does not start where the one before it ended.
    #[error("segment {index} starts {gap:.6} mm from where the one before it ended")]
    Broken {
        /// Position of the segment that does not join on.
        index: usize,
        /// Distance between the two ends, in millimetres.
        gap: f64,
    },
    /// A length along a curve that the curve does not have.
    #[error("asked for the point {at:.3} mm along a curve that is {length:.3} mm long")]
    PastEnd {
        /// Length asked for, in millimetres.
        at: f64,
        /// Length there is, in millimetres.
        length: f64,
    },
    /// No value between the bounds gives what was asked.
    #[error(
        "no {what} between {low:.3} and {high:.3} gives what was asked: the ends miss it by {miss_low:.3} and {miss_high:.3}"
    )]
    NoSolution {
        /// What was sought.
        what: &'static str,
        /// Lower bound of the search.
        low: f64,
        /// Upper bound of the search.
        high: f64,
        /// How far the lower bound misses.
        miss_low: f64,
        /// How far the upper bound misses.
        miss_high: f64,
    },
    /// A value that was tried gives nothing that could be measured.
    #[error("no {what} gives what was asked: at {at:.3} it cannot be drawn at all")]
    Undefined {
        /// What was sought.
        what: &'static str,
        /// The value at which there is nothing.
        at: f64,
    },
    /// A tolerance that no chain of straight lines is made to.
    #[error(
        "a curve is to be followed within {tolerance} mm; the tolerance must be a number of at least {least} mm"
    )]
    Tolerance {
        /// The tolerance asked for, in millimetres.
        tolerance: f64,
        /// The smallest that is made, in millimetres.
        least: f64,
    },
    /// Two lines that never meet, or are the same line.
    #[error("two lines are parallel and have no point in common")]
    Parallel,
}

impl Explain for GeometryError {
    fn code(&self) -> String {
        match self {
            Self::NotFinite { .. } => "not_finite",
            Self::TooFar { .. } => "too_far",
            Self::Empty => "no_segment",
            Self::Broken { .. } => "broken_curve",
            Self::PastEnd { .. } => "past_end",
            Self::NoSolution { .. } => "no_solution",
            Self::Undefined { .. } => "undefined",
            Self::Tolerance { .. } => "tolerance_out_of_range",
            Self::Parallel => "parallel",
        }
        .to_owned()
    }

    fn cure(&self) -> String {
        match self {
            Self::NotFinite { .. } => "give finite coordinates",
            Self::TooFar { .. } => "check the units, or move the drawing nearer to its origin",
            Self::Empty => "give at least one segment",
            Self::Broken { .. } => "let each segment start where the one before it ends",
            Self::PastEnd { .. } => "ask for a place within the length of the curve",
            Self::NoSolution { .. } | Self::Undefined { .. } => {
                "check the lengths that it follows from against each other"
            }
            Self::Tolerance { .. } => "give a larger tolerance, such as 0.1 mm",
            Self::Parallel => "give two lines that cross",
        }
        .to_owned()
    }
}
