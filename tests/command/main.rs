//! The command from outside: what it does, what it refuses, and how it behaves under hostile input
//! and failing machines.
#![cfg(feature = "cli")]
#![allow(missing_docs)]

mod batch;
mod command_line;
mod corpus;
mod extremes;
mod faults;
mod shown;
#[path = "../support/mod.rs"]
mod support;
mod written;
