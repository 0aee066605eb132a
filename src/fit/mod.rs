//! A block fitted to a wearer: the alterations that her measurements ask for.
//!
//! What she needs is the difference between two drafts of the same block, one for the body the
//! block was made for and one for her. [`fit`] finds the amounts of the catalogue's alterations that
//! make this difference out of the block as it stands, so that a block of one's own keeps its own
//! ease and line: solved together by least squares, few and small steps preferred, each bounded
//! by what it bears, then made in a fitter's order and proved step by step. What is left is said.
//!
//! For a block drafted here the altered block has to meet the direct draft for her: two roads to
//! one pattern, which the tests hold against one another.

mod aim;
mod asked;
mod balance;
mod error;
mod fitting;
mod lever;
mod made;
mod nearest_size;
mod settings;

pub use aim::Aimed;
pub use asked::Asked;
pub use error::FitError;
pub use fitting::{FitStep, Fitted, Left, LeftBecause, fit};
pub use nearest_size::{NearestSize, SizeDistance, nearest_size};
pub use settings::FitSettings;
