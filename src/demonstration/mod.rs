//! What an alteration does to paper, shown as whoever teaches fitting shows it: with scissors
//! and tape.
//!
//! [`demonstrate`] takes a pattern before and after one alteration and gives the slash that it stands
//! for: where the old piece is cut, where the paper hinges, how its panels move, what opens and what
//! overlaps, and how far the trued outline lies from the taped panels. The panels are real: the old
//! outline is cut along the lines and each panel is moved as a whole. Where they go is read from the
//! altered piece, so that the demonstration is always of this wearer's piece and this amount.
//!
//! The slashes are common practice of fitting.

mod bench;
mod bodice_slashes;
mod bust_slashes;
mod change;
mod dart_slashes;
mod demonstrate;
mod error;
mod hip_slashes;
mod instruction;
mod length_slashes;
mod neck_slashes;
mod openings;
mod panel;
mod panel_slashes;
mod redrawn;
mod rings;
mod slash;
mod sleeve_edges;
mod sleeve_slashes;
mod truing;
mod width_slashes;
mod words;

pub use demonstrate::{Demonstration, demonstrate};
pub use error::DemonstrationError;
pub use panel::Panel;
pub use slash::{CutPath, Opening, OpeningKind, Slash, Truing};
