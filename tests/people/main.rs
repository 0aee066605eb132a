//! Bodies of every build: what is measured and estimated on them, and what a cutter expects of
//! their blocks.
#![allow(missing_docs)]

mod family;
mod from_json;
mod measurements;
#[path = "../support/mod.rs"]
mod support;
