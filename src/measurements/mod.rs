//! Named body measurements: taken, estimated, doubted.
//!
//! Sets and size tables are read from JSON ([`MeasurementSet::from_json`],
//! [`SizeTable::from_json`]) or, with the feature `yaml`, from YAML; both have the same keys, and
//! [`FileErrors`] say all that is wrong.

mod body;
mod body_record;
mod by_measurement;
mod catalogue;
mod cholesky;
mod doubt;
mod error;
#[rustfmt::skip]
mod estimates;
mod estimation;
mod file_kind;
mod joint;
mod judgement;
mod measurement;
mod measurement_file;
mod near_name;
mod node;
mod order;
mod problem;
mod reader;
mod report;
#[cfg(feature = "schema")]
mod schema;
mod set_file;
mod set_written;
mod show;
mod size_table;
mod size_table_file;
#[cfg(feature = "yaml")]
mod syntax;
mod usual;
#[cfg(feature = "yaml")]
mod yaml;

pub use body::{Body, Measured, Source};
pub use body_record::BodyRecord;
pub use catalogue::{MeasuredBlock, Range};
pub use doubt::{Against, Doubt, DoubtCode};
pub use error::{MeasurementError, MeasurementErrors};
pub use file_kind::FileKind;
pub use measurement::{Kind, Measurement, UnknownMeasurement};
pub use measurement_file::MeasurementFile;
pub(crate) use near_name::nearest;
pub(crate) use node::{Key, Node, NodeValue};
pub use problem::{FileCause, FileErrors, FileProblem, Place};
pub(crate) use reader::{Reader, join};
pub use report::{CatalogueEntry, ReportRow, SetReport, catalogue_text};
#[cfg(feature = "schema")]
pub(crate) use schema::{SchemaLabel, SchemaLength, SetInDocument, by_name, one_of};
#[cfg(feature = "schema")]
pub use schema::{set_schema, table_schema};
pub use set_file::MeasurementSet;
#[cfg(feature = "yaml")]
pub(crate) use set_written::yaml_text;
pub use size_table::{Size, SizeTable, UnknownSize};
pub use usual::likely_required;
