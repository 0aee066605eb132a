//! `batch`: a job made for every row of a table of people, from outside.
#![cfg(feature = "cli")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod company;
mod contract;
mod guide;
mod header;
mod hostile;
mod memory;
mod resumed;
mod row_files;
mod survey;
