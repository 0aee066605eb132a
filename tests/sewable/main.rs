//! What makes a pattern sewable: the rules with sound and spoiled garments, allowances, sizes.
#![allow(missing_docs)]

mod allowance;
mod grading;
mod laws;
#[path = "../support/mod.rs"]
mod support;
