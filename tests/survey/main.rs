//! Drafts for many bodies: a survey of women, the open body-dimensions data, and random ones.
//!
//! Each prints what it found to standard error, whether it passes or not.

mod adults;
mod any_body;
mod armscye;
mod contradictory;
mod darts;
#[cfg(feature = "form")]
mod fit_maps;
mod fitted;
#[cfg(feature = "form")]
mod forms;
mod looks;
mod openings;
mod princess;
mod sleeves;
mod statistics;
#[path = "../support/mod.rs"]
mod support;
mod tables;
mod tally;
mod women;
