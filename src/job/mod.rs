//! The job: what is wanted of whom, read from a file with all its errors at once, and run
//! without touching a file.
//!
//! Reading takes two steps, so that whoever calls decides where files come from:
//! [`JobFile::from_json`] or `JobFile::parse` (feature `yaml`) says which measurement set is wanted
//! ([`JobFile::body_path`]), [`JobFile::resolve`] takes its text and gives a [`Job`]; a block of
//! one's own goes in before ([`JobFile::block_path`], [`JobFile::with_block`]). [`run`] drafts, alters, proves, draws and renders it into named files in memory;
//! [`run_range`] does so with every size of a table, and `LayRun` (feature `lay`) lays the pieces
//! on cloth. [`BatchJob::record`] makes the pattern for a row of a table of people and draws
//! nothing.

mod bare_lengths;
mod batch_columns;
mod batch_definition;
mod batch_files;
#[cfg(feature = "fit")]
mod batch_fit;
mod batch_record;
mod batch_report;
mod batch_row;
#[cfg(feature = "pdf")]
mod cloth_words;
mod compared;
mod definition;
#[cfg(feature = "pdf")]
mod demonstration_pdf;
mod error;
mod file;
mod file_uses;
#[cfg(feature = "fit")]
mod fit_definition;
#[cfg(feature = "form")]
mod fit_map_report;
#[cfg(feature = "fit")]
mod fit_report;
#[cfg(feature = "fit")]
mod fit_report_text;
#[cfg(feature = "fit")]
mod fit_run;
mod font_of_file;
mod job_font;
mod laid_parts;
#[cfg(feature = "lay")]
mod lay_report;
#[cfg(feature = "lay")]
mod lay_report_text;
#[cfg(feature = "lay")]
mod lay_run;
mod outcome;
mod outputs;
mod pages_report;
mod print;
#[cfg(feature = "pdf")]
mod print_fonts;
#[cfg(feature = "pdf")]
mod print_pdf;
mod range_block;
mod range_charts;
#[cfg(feature = "lay")]
mod range_cloth;
mod range_definition;
mod range_names;
mod range_report;
mod range_run;
mod read_block;
mod read_body;
#[cfg(feature = "toile")]
mod read_cloth;
mod read_job;
mod read_print;
mod report;
mod report_accounts;
mod report_methods;
mod report_methods_text;
mod report_text;
mod rounding;
mod run;
#[cfg(feature = "schema")]
mod schema;
#[cfg(feature = "toile")]
mod toile_case;
#[cfg(feature = "toile")]
mod toile_models;
#[cfg(feature = "toile")]
mod toile_page;
#[cfg(feature = "toile")]
mod toile_report;
#[cfg(feature = "toile")]
mod toile_run;
mod written;

pub use batch_columns::{BatchColumns, BatchColumnsError, PassedOver};
pub use batch_definition::BatchJob;
#[cfg(feature = "fit")]
pub use batch_fit::{BatchFit, FitFrom};
pub use batch_record::BatchRecord;
pub use batch_report::{BatchReport, BatchTally, RefusalCount, RepeatedId};
pub use batch_row::BatchRefusal;
pub use compared::ComparedReport;
pub use definition::Job;
pub use error::{Fault, JobError, ResolveError};
pub use file::JobFile;
#[cfg(feature = "fit")]
pub use fit_definition::FitJob;
#[cfg(feature = "message")]
pub(crate) use fit_map_report::lean_words;
#[cfg(feature = "form")]
pub use fit_map_report::{FitMapReport, FormReport};
#[cfg(feature = "fit")]
pub use fit_report::{
    AskedReport, DifferenceReport, FitReport, FitStepReport, LeftReport, SizeChoiceReport,
};
#[cfg(feature = "fit")]
pub use fit_run::{FitOutcome, run_fit};
pub use job_font::JobFont;
#[cfg(feature = "lay")]
pub use lay_report::{ClothReport, LaidReport, LayReport, StretchReport};
#[cfg(feature = "lay")]
pub use lay_run::{LayOutcome, LayRun, LayWearer};
pub use outcome::{Outcome, OutputFile};
pub use outputs::{Output, Outputs};
pub use pages_report::PagesReport;
pub use print::{PageTurn, PaperSize, PrintOptions, PrintTarget};
pub use range_definition::RangeJob;
pub use range_report::{IncrementReport, RangeReport, RangeWarning, SizeReport};
pub use range_run::{RangeOutcome, run_range, run_range_watched};
pub use report::{DartReport, GirthReport, JobReport, SeamReport, WarningReport};
pub use report_accounts::{AccountReport, ChangeReport};
pub use report_methods::{MethodFiguresReport, MethodRowReport, MethodsReport};
pub use run::run;
#[cfg(feature = "schema")]
pub use schema::schema;
#[cfg(feature = "toile")]
pub use toile_case::ToileCase;
#[cfg(feature = "toile")]
pub use toile_report::{ToileCaseReport, ToileReport};
#[cfg(feature = "toile")]
pub use toile_run::{ToileOutcome, ToileRun};
