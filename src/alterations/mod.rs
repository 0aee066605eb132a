//! Alterations for fit, written in the cutter's own verbs: slash the paper into panels, hinge
//! and move them, gather the outline, true it up.

mod error;
mod paper;
mod sketch;

pub use error::AlterationError;
pub use paper::{PanelId, Paper};
pub use sketch::Sketch;
