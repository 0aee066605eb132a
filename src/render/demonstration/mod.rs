//! Demonstrations drawn: three frames a piece, with what is done below each, for the fitting page,
//! a printed sheet, or a picture of its own.

mod clip;
mod frame;
mod hatch;
mod key;
mod row;
mod sheet;
mod window;

pub use row::row;
pub use sheet::{DemonstrationLabels, Step, sheets};
