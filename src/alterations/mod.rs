//! Alterations for fit, written in the cutter's own verbs: slash the paper into panels, hinge
//! and move them, gather the outline, true it up.
//!
//! An [`Alteration`] is a value. [`alter`] applies a chain of them to a pattern, proves every
//! law and every promise after each step, and gives an [`Account`] of what changed.

mod account;
mod aimed_shoulder;
mod alteration;
mod back_length_reduction;
#[cfg(feature = "least-distortion")]
mod back_mesh;
mod catalogue;
mod distortion;
mod error;
mod hinge;
mod lowered_armscye;
mod method_table;
mod paper;
mod pipeline;
mod promise;
#[cfg(feature = "least-distortion")]
mod relaxation;
mod shoulder_swing;
mod sketch;
mod sleeve;
mod stretch;
mod true_up;
mod waist_edge;
mod waist_wedge;

pub use account::{Account, Change, Unit, changes, reading, shoulder_slope};
pub use alteration::{Alteration, Altered};
pub use back_length_reduction::{BackLengthReduction, LEAST_HIP_EASE};
pub use catalogue::{CATALOGUE, Entry, find};
pub use error::AlterationError;
pub use hinge::Hinge;
pub use method_table::{MethodFigures, MethodOutcome, MethodRow, MethodTable, compare_methods};
pub use paper::{PanelId, Paper};
pub use pipeline::{Chain, Reason, Refused, alter};
pub use promise::{Broken, Promise};
pub use sketch::Sketch;
pub use sleeve::solve_sleeves;
pub use stretch::Stretch;
pub use true_up::{
    blend_end, blend_start, hinged, line_of_length, turned, turned_end, with_mouth, without_mouth,
};
pub(crate) use waist_edge::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
