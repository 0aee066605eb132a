//! How far long work has come, and how it is stopped.

mod report;

pub use report::{Ending, Progress};
