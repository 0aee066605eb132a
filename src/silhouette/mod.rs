//! A wearer's outline, drawn from her own numbers, and where the tape runs for each measurement.
//!
//! It is a sketch to take measurements by. Heights, lengths, girths and the slope of the shoulders are
//! hers; how a girth divides into breadth and depth, and what no measurement says, is our own choice.

mod frame;
mod outline;
mod picture;
mod tape;
mod trace;

pub use outline::Silhouette;
pub use picture::silhouette_svg;
pub use tape::{Stance, TapeRun, stance};
