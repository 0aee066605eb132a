//! Named body measurements: taken, estimated, doubted.

mod body;
mod catalogue;
mod doubt;
mod error;
#[rustfmt::skip]
mod estimates;
mod estimation;
mod measurement;
mod near_name;
mod order;
mod show;

pub use body::{Body, Measured, Source};
pub use catalogue::{Block, Range};
pub use doubt::{Against, Doubt, DoubtCode};
pub use error::{MeasurementError, MeasurementErrors};
pub use measurement::{Kind, Measurement, UnknownMeasurement};
