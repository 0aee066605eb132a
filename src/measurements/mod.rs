//! Named body measurements: taken, estimated, doubted.
//!
//! What reads files (`MeasurementSet::parse`, `SizeTable::parse`, `Node`) and tells what is wrong
//! with them (`FileErrors`) needs the feature `yaml`.

mod body;
mod catalogue;
mod doubt;
mod error;
#[rustfmt::skip]
mod estimates;
mod estimation;
mod measurement;
mod near_name;
#[cfg(feature = "yaml")]
mod node;
mod order;
#[cfg(feature = "yaml")]
mod problem;
#[cfg(feature = "yaml")]
mod reader;
mod report;
mod set_file;
mod show;
mod size_table;
#[cfg(feature = "yaml")]
mod size_table_file;

pub use body::{Body, Measured, Source};
pub use catalogue::{Block, Range};
pub use doubt::{Against, Doubt, DoubtCode};
pub use error::{MeasurementError, MeasurementErrors};
pub use measurement::{Kind, Measurement, UnknownMeasurement};
pub(crate) use near_name::nearest;
#[cfg(feature = "yaml")]
pub use node::{Key, Node, NodeValue};
#[cfg(feature = "yaml")]
pub use problem::{FileCause, FileErrors, FileProblem, Place};
#[cfg(feature = "yaml")]
pub(crate) use reader::{Reader, join};
pub use report::{CatalogueEntry, ReportRow, SetReport, catalogue_text};
pub use set_file::MeasurementSet;
pub use size_table::{Size, SizeTable, UnknownSize};
