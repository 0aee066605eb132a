//! The tool from outside: commands, folders, exit codes, every way a file can be wrong.
#![cfg(feature = "cli")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod allowances;
mod alterations;
mod any_job;
mod document;
mod drafting;
mod exchange;
mod fitting;
mod folders;
mod grading;
mod handed_on;
mod hostile;
mod job_files;
mod laying;
mod measuring;
mod messages;
mod outputs;
mod own_block;
mod own_drawing;
mod range_cloth;
mod seams;
mod sewing;
mod standard_input;
