//! A graded range: every size by itself, what grows by how much, the nest.
#![cfg(feature = "yaml")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod allowances;
mod nests;
mod range;
mod table;
