//! Measurements and units against what was published elsewhere, and against any input.
//!
//! Marks: *read* stood in the source named; *computed* was computed from published raw
//! data; *value from memory* is a plausible range and never the only witness.

#![cfg(feature = "yaml")]

#[allow(dead_code)]
#[path = "../../../examples/derive_estimates.rs"]
mod derive_estimates;

mod any_input;
mod bodies;
mod estimates;
mod files;
mod joint;
mod known;
mod lengths;
mod reports;
mod size_tables;
