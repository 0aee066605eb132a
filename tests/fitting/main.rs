//! Alterations for fit: each by itself, in chains, on one side, on surveyed women.
#![allow(missing_docs)]

mod back_length;
mod chains;
mod dart_moves;
mod demonstrations;
mod least_distortion;
mod lower_alterations;
mod one_sided;
#[cfg(feature = "cli")]
mod pairs;
mod proofs;
mod signs;
#[path = "../support/mod.rs"]
mod support;
mod upper_alterations;
