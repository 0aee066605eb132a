//! Finished positions: strokes, text and layers in millimetres, y running down the page.
//!
//! A [`Drawing`] is all a renderer ever sees. It knows nothing of garments: whatever makes one
//! has already decided where every line and every word goes. [`Text`] can be measured before it
//! is placed ([`Face::width`]), so that nothing need overlap, and [`place_on_sheet`] lays several parts
//! out on a sheet.

mod arrange;
mod balance_lines;
mod beside;
mod dart_marks;
mod edge_words;
mod error;
mod finished_girths;
mod fold_bracket;
mod grain_line;
mod ink;
mod item;
mod label;
mod layer;
mod lengthen_lines;
mod letter_widths;
mod metrics;
mod notch_marks;
mod open_darts;
mod opening_marks;
mod outline_lines;
mod parts;
mod path_names;
mod pattern_sheet;
mod pens;
mod piece_layers;
mod piece_marks;
mod point_marks;
mod room;
mod sewing_order;
mod sheet;
mod strokes;
mod text;
mod winansi;

pub use arrange::ArrangeError;
pub(crate) use arrange::{Footprint, arrange};
pub(crate) use beside::write_beside;
pub(crate) use dart_marks::{dart_legs, dart_notches, drill_mark, leg_notches};
pub(crate) use edge_words::edge_text;
pub use error::DrawingError;
pub(crate) use fold_bracket::FoldBracket;
pub(crate) use grain_line::grain_text;
pub use ink::{Ink, Pen};
pub use item::{DrawnPath, Item};
pub use layer::Layer;
pub use metrics::Face;
pub(crate) use notch_marks::{NOTCH, notch_cuts};
pub(crate) use open_darts::outside_darts;
pub use parts::{Placement, SHEET_GAP_MM, SHEET_WIDTH_MM, SheetPart, lay, place_on_sheet};
pub(crate) use pattern_sheet::listed;
pub use pattern_sheet::{
    PatternLabels, SheetError, contents, pattern_parts, pattern_sheet, pattern_sheet_to_cut,
};
pub(crate) use point_marks::bust_mark;
pub(crate) use room::{Room, misses};
pub use sewing_order::sewing_order;
pub use sheet::Drawing;
pub(crate) use strokes::{arrow_head, closed, ring, stroke};
pub use text::{Anchor, Level, Text, TextStyle};
pub use winansi::printable;
#[cfg(feature = "pdf")]
pub(crate) use winansi::{encode_winansi, is_printable};
