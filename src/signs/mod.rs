//! From what a fitter sees to what she does.
//!
//! [`SIGNS`] holds what the cloth shows and where, what to rule out first, how the amount is
//! measured on the toile, the alteration that follows, and what it changes elsewhere; each with its
//! source, or marked as common practice. [`search`] finds by words, [`observed`] makes the step of a
//! pinned, opened or marked amount, [`drawing`](drawing::drawing) shows the folds on a figure.

#![warn(clippy::indexing_slicing)]

mod all;
pub mod drawing;
mod error;
mod lower;
mod observed;
mod rounded;
mod search;
mod sign;
mod sleeve;
mod upper;

pub use all::SIGNS;
pub use error::ObservedError;
pub use observed::{Observed, observed};
pub use search::search;
pub use sign::{BodyPlace, Found, Mark, Sign, View};
