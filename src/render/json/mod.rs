//! The pattern document: a whole pattern as JSON, written for other programs and read back.
//!
//! Lengths are millimetres. Whatever the pattern is made of is written with as many digits as
//! bring the same number back, so that reading a document gives an equal [`Pattern`], and writing
//! that gives the same bytes; what is only derived from it (finished girths, accounts) is rounded
//! to a ten-thousandth. Paths are SVG path data; each edge starts where the one before it ended,
//! and an edge that carries a dart is given with the dart open.
//!
//! [`Pattern`]: crate::piece::Pattern

mod error;
mod exact_path;
mod fault;
mod fit_map_record;
mod from_tree;
mod pattern_document;
mod read;
#[cfg(feature = "schema")]
mod schema;
mod shape;
mod to_shape;
mod tree;
mod write;

pub use error::DocumentError;
pub use fault::ShapeFault;
pub use fit_map_record::{AdviceRecord, FitMapRecord, RoundRecord, StationRecord};
pub use pattern_document::PatternDocument;
#[cfg(feature = "schema")]
pub use schema::schema;
pub use write::{document, document_to_cut, render, render_to_cut};
