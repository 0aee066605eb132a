//! Alterations for fit, written in the cutter's own verbs: slash the paper into panels, hinge
//! and move them, gather the outline, true it up.
//!
//! An [`Alteration`] is a value. [`alter`] applies a chain of them to a pattern, proves every
//! law and every promise after each step, and gives an [`Account`] of what changed.

mod account;
mod alteration;
mod back_length_reduction;
mod catalogue;
mod dart_division;
mod dart_finding;
mod dart_lines;
mod dart_merging;
mod dart_obstacle;
mod dart_opening;
mod dart_relocation;
mod dart_ring;
mod dart_swing;
mod dart_to_seam;
mod error;
mod panel_path;
mod panel_pieces;
mod panel_plan;
mod paper;
mod pipeline;
mod promise;
mod sketch;
mod sleeve;
mod true_up;
mod waist_edge;

pub use account::{Account, Change, Unit, changes, reading, shoulder_slope};
pub use alteration::{Alteration, Altered};
pub use back_length_reduction::{BackLengthReduction, Hinge, LEAST_HIP_EASE};
pub use catalogue::{CATALOGUE, Entry, find};
pub use dart_division::{DartDivision, DartPart};
pub use dart_merging::{APEX_REACH, CORNER_BLEND, DartMerging};
pub use dart_relocation::DartRelocation;
pub use dart_to_seam::DartToSeam;
pub use error::AlterationError;
pub use paper::{PanelId, Paper};
pub use pipeline::{Chain, Reason, Refused, alter};
pub use promise::{Broken, Promise};
pub use sketch::Sketch;
pub use sleeve::solve_sleeves;
pub use true_up::{
    blend_end, blend_start, hinged, line_of_length, turned, turned_end, with_mouth, without_mouth,
};
pub(crate) use waist_edge::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
