//! What the test programs share: bodies to draft for, the surveyed women, and the tool run as a
//! user runs it. Each program takes of it what it needs.
#![allow(dead_code, missing_docs, clippy::unwrap_used, clippy::panic)]

pub mod bodies;
#[cfg(feature = "cli")]
pub mod command;
pub mod measures;
pub mod statistics;
pub mod survey;
