//! What a pattern is made from, and the one way in which every command makes it.
//!
//! A [`Recipe`] says which block with which options, which alterations and which allowances, and
//! what is written on the pieces; it says nothing of whom, of sizes, paper or files. [`make`] makes
//! it for a body. Drafting, checking, grading, laying on cloth and making for a table of people all
//! call it, so that what holds in one holds in all.

mod chain;
mod definition;
mod error;
mod make;
mod one_line;
mod prove;
mod warnings;

pub use chain::Ways;
pub use definition::{LONGEST_TITLE, Recipe};
pub use error::MakeError;
pub use make::{MadePattern, make};
pub(crate) use one_line::one_line;
