//! What a pattern is made from, and the one way in which every command makes it.
//!
//! A [`Recipe`] says which block with which options, which alterations and which allowances, and
//! what is written on the pieces; it says nothing of whom, of sizes, paper or files. [`make`] makes
//! it for a body. Drafting, checking, grading, laying on cloth and making for a table of people all
//! call it, so that what holds in one holds in all.
//!
//! In place of a draft a recipe may have a block of one's own ([`OwnBlock`]).
//!
//! Recipes, and the options, ease, allowances and alterations in them, deserialise from JSON with
//! the keys and units of a job file; the same code reads both. They are written with the same keys.

mod chain;
mod definition;
mod error;
mod field;
mod from_json;
mod make;
mod one_line;
mod own_block;
mod own_block_error;
mod prove;
mod read_allowance;
mod read_alterations;
mod read_block;
mod read_ease;
mod read_inscription;
mod read_observed;
mod read_options;
mod read_own_block;
mod read_recipe;
mod read_shape;
mod step_order;
mod to_json;
mod warnings;

pub use chain::Ways;
pub use definition::{LONGEST_TITLE, Recipe};
pub use error::MakeError;
pub(crate) use field::{length, said, truth};
pub(crate) use from_json::whole;
pub use make::{MadePattern, make, make_for};
pub(crate) use one_line::one_line;
pub use own_block::OwnBlock;
pub use own_block_error::OwnBlockError;
pub(crate) use read_block::unknown;
pub(crate) use read_recipe::RecipeFields;
pub(crate) use to_json::optional;
