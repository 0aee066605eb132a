//! The commands: arguments in, files read and written, reports and problems written.
//!
//! Reports go to standard output, problems to standard error. The command ends with 0 when it
//! did what was asked, 1 when the pattern or a measurement was refused, 2 when the command or
//! a file is wrong. With `--json` both the report and the problems are one JSON document each,
//! on the same two outputs.

mod args;
mod batching;
mod digest;
mod done;
mod drafting;
mod earlier;
mod fitting;
mod folder;
mod font_file;
mod grading;
mod kept;
mod laying;
mod measuring;
mod output;
mod output_names;
#[cfg(feature = "page")]
mod paging;
mod partial;
mod people_file;
mod problem;
mod progress;
mod row_files;
mod sewing;
mod signs;
mod source_file;
mod start;
mod swap;

pub(crate) use start::main;
