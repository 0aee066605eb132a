//! Finished positions: strokes, text and layers in millimetres, y running down the page.
//!
//! A [`Drawing`] is all a renderer ever sees. It knows nothing of garments: whatever makes one
//! has already decided where every line and every word goes. [`Text`] can be measured before it
//! is placed ([`Face::width`]), so that nothing need overlap, and [`arrange`] lays several boxes
//! out on a sheet.

mod arrange;
mod error;
mod ink;
mod item;
mod layer;
mod metrics;
mod parts;
mod pattern_sheet;
mod piece_marks;
mod room;
mod sheet;
mod text;
mod winansi;

pub use arrange::{ArrangeError, Arrangement, Footprint, arrange};
pub use error::DrawingError;
pub use ink::{Ink, Pen};
pub use item::{Figure, Item};
pub use layer::Layer;
pub use metrics::Face;
pub use parts::{Placement, SHEET_GAP_MM, SHEET_WIDTH_MM, SheetPart, lay, place_on_sheet};
pub use pattern_sheet::{
    PatternLabels, SheetError, contents, pattern_parts, pattern_sheet, pattern_sheet_to_cut,
};
pub(crate) use piece_marks::ring;
pub(crate) use room::Room;
pub use sheet::Drawing;
pub use text::{Anchor, Level, Text, TextStyle};
pub use winansi::{encode_winansi, printable};
