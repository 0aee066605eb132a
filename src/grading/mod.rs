//! A range of sizes: every size drafted, altered and proved for itself, then laid over the
//! others.
//!
//! No point is pushed: a size is the whole path from measurements to pattern once more, so its
//! seams match as those of any pattern do. [`grade`] makes the range; [`Graded::increments`]
//! says what grows by how much and where a step stands out; [`nest`] overlays the sizes.

mod align;
mod error;
mod graded;
mod increments;
mod jumps;
mod laid;
mod leaders;
mod line_style;
mod nest;
mod nest_labels;
mod nest_words;
mod points;

pub use align::Align;
pub use error::{GradingError, NestError};
pub use graded::{Graded, GradedSize, grade, grade_by, grade_watched};
pub(crate) use increments::field;
pub use increments::{Grown, Increment, Increments};
pub use jumps::{JUMP, LEAST_JUMP};
pub use line_style::{COLOURS, DASHES, MOST_SIZES, line_colour, line_style};
pub use nest::{NEST_GAP_MM, nest, nest_parts};
pub use nest_labels::NestLabels;
