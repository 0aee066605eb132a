//! DXF for the exchange of pattern pieces, by the open practice of the trade (ASTM D6673 and
//! ANSI/AAMA-292).
//!
//! Every piece and size is a block of its own with one insert. What the layers mean is listed in
//! `layer.rs`. The file is plain ASCII and has no entities but `POLYLINE`, `LINE`, `POINT`, `TEXT`
//! and `INSERT`; curves are chords ([`Curve::chords`](crate::geometry::Curve::chords)). Millimetres;
//! y runs up, as everywhere in DXF, so that a piece is seen as on the printed page.
//!
//! A piece on the fold is its half, with the fold as mirror line. A piece for which the printed
//! pattern is laid face down is written as it lies in the garment: the mirror of the print, once.
//! Otherwise a reader that passes over how often and which way round a piece is cut would cut it
//! for the wrong side of the body.

mod block_name;
mod boundary;
mod document;
mod error;
mod groups;
mod layer;
mod letters;
mod notches;
mod piece_block;
mod rows;
mod style;
mod view;
mod words;

pub use document::render;
pub use error::DxfError;
pub use style::{SizedPattern, Style};
