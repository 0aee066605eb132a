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

mod making;
mod reading;
mod reports;

#[cfg(feature = "fit")]
pub use making::batch_fit::{BatchFit, FitFrom};
pub use making::batch_record::BatchRecord;
#[cfg(feature = "fit")]
pub use making::fit_run::{FitOutcome, run_fit};
#[cfg(feature = "lay")]
pub use making::lay_run::{LayOutcome, LayRun, LayWearer};
pub use making::outcome::{Outcome, OutputFile};
pub use making::range_run::{RangeOutcome, run_range, run_range_watched};
pub use making::run::run;
#[cfg(feature = "toile")]
pub use making::toile_case::ToileCase;
#[cfg(feature = "toile")]
pub use making::toile_run::{ToileOutcome, ToileRun};
pub use reading::batch_columns::{BatchColumns, BatchColumnsError, PassedOver};
pub use reading::batch_definition::BatchJob;
pub use reading::batch_row::BatchRefusal;
pub use reading::definition::Job;
pub use reading::error::{Fault, JobError, ResolveError};
pub use reading::file::JobFile;
#[cfg(feature = "fit")]
pub use reading::fit_definition::FitJob;
pub use reading::job_font::JobFont;
pub use reading::outputs::{Output, Outputs};
pub use reading::print::{PageTurn, PaperSize, PrintOptions, PrintTarget};
pub use reading::range_definition::RangeJob;
#[cfg(feature = "schema")]
pub use reading::schema::schema;
pub use reports::batch_report::{BatchReport, BatchTally, RefusalCount, RepeatedId};
pub use reports::compared::ComparedReport;
#[cfg(feature = "message")]
pub(crate) use reports::fit_map_report::lean_words;
#[cfg(feature = "form")]
pub use reports::fit_map_report::{FitMapReport, FormReport};
#[cfg(feature = "fit")]
pub use reports::fit_report::{
    AskedReport, DifferenceReport, FitReport, FitStepReport, LeftReport, SizeChoiceReport,
};
#[cfg(feature = "lay")]
pub use reports::lay_report::{ClothReport, LaidReport, LayReport, StretchReport};
pub use reports::pages_report::PagesReport;
pub use reports::range_report::{IncrementReport, RangeReport, RangeWarning, SizeReport};
pub use reports::report::{DartReport, GirthReport, JobReport, SeamReport, WarningReport};
pub use reports::report_accounts::{AccountReport, ChangeReport};
pub use reports::report_methods::{MethodFiguresReport, MethodRowReport, MethodsReport};
#[cfg(feature = "toile")]
pub use reports::toile_report::{ToileCaseReport, ToileReport};
