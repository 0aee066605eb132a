//! What is wanted, read with all its errors at once: job files, sets, blocks, tables of people, printing.

pub(super) mod bare_lengths;
pub(super) mod batch_columns;
pub(super) mod batch_definition;
pub(super) mod batch_row;
pub(super) mod definition;
pub(super) mod error;
pub(super) mod file;
pub(super) mod file_uses;
#[cfg(feature = "fit")]
pub(super) mod fit_definition;
pub(super) mod font_of_file;
pub(super) mod job_font;
pub(super) mod outputs;
pub(super) mod print;
pub(super) mod range_definition;
pub(super) mod read_block;
pub(super) mod read_body;
#[cfg(feature = "toile")]
pub(super) mod read_cloth;
pub(super) mod read_job;
pub(super) mod read_print;
#[cfg(feature = "schema")]
pub(super) mod schema;
pub(super) mod written;
