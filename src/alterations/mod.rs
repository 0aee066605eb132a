//! Alterations for fit, written in the cutter's own verbs: slash the paper into panels, hinge
//! and move them, gather the outline, true it up.
//!
//! An [`Alteration`] is a value. [`alter`] applies a chain of them to a pattern, proves every
//! law and every promise after each step, and gives an [`Account`] of what changed.
//!
//! The settings of a [`Request`] are a [`serde_json::Value`]; that crate is handed on here.

mod abdomen;
mod account;
mod aimed_shoulder;
mod alteration;
mod amounts;
mod armscye_gape;
mod asked_ease;
mod back_length_increase;
mod back_length_reduction;
#[cfg(feature = "least-distortion")]
mod back_mesh;
mod bust;
mod bust_spread;
mod catalogue;
mod centre_opening;
mod centre_truing;
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
mod distortion;
mod error;
mod forward_shoulder;
mod girths;
mod halves;
mod hinge;
mod hip_girth;
mod joined_halves;
mod led;
mod length;
mod length_below;
mod length_sleeve;
mod lowered_armscye;
mod method_choice;
mod method_table;
mod neckline_gape;
mod one_sided;
mod panel_path;
mod panel_pieces;
mod panel_plan;
mod paper;
mod pipeline;
mod promise;
mod quarter;
mod readings;
mod redrawn_waist;
#[cfg(feature = "least-distortion")]
mod relaxation;
mod request;
mod seat;
mod shoulder_slope_change;
mod shoulder_swing;
mod shoulder_width;
mod sketch;
mod sleeve;
mod stations;
mod stretch;
mod structure;
mod targeted;
mod true_up;
mod upper_arm;
mod upper_half;
mod waist_edge;
mod waist_girth;
mod waist_wedge;
mod waist_wider;
mod wedge;
mod wider_sleeve;
mod width_change;

pub use abdomen::Abdomen;
pub use account::{Account, Change, changes};
pub use alteration::{Alteration, Altered};
pub use armscye_gape::{ArmscyeGape, GapeSide};
pub use back_length_increase::{BackLengthIncrease, Fullness};
pub use back_length_reduction::{BackLengthReduction, LEAST_HIP_EASE};
pub use bust::Bust;
pub use catalogue::{CATALOGUE, Entry, find};
pub use dart_division::{DartDivision, DartPart};
pub use dart_merging::{APEX_REACH, CORNER_BLEND, DartMerging};
pub use dart_relocation::DartRelocation;
pub use dart_to_seam::DartToSeam;
pub use error::AlterationError;
pub use forward_shoulder::ForwardShoulder;
pub use girths::with_girth_ease;
pub use hinge::Hinge;
pub use hip_girth::HipGirth;
pub use led::{filled, led};
pub use length::{LengthAt, LengthChange};
pub use method_choice::MethodChoice;
pub use method_table::{MethodFigures, MethodOutcome, MethodRow, MethodTable, compare_methods};
pub use neckline_gape::NecklineGape;
pub use one_sided::OneSided;
pub use paper::{PanelId, Paper};
pub use pipeline::{Chain, Reason, Refused, alter};
pub use promise::{Broken, Promise};
pub use readings::Readings;
pub use request::{Request, RequestError};
pub use seat::Seat;
pub use serde_json;
pub use shoulder_slope_change::{ShoulderSlope, Underarm};
pub use shoulder_width::ShoulderWidth;
pub use sketch::Sketch;
pub use sleeve::solve_sleeves;
pub use stations::{Station, moved_at};
pub use stretch::LocalStretch;
pub use structure::{Part, StructureChange, Undeclared};
pub use targeted::Targeted;
pub use true_up::{
    blend_end, blend_start, hinged, line_of_length, turned_end, with_mouth, without_mouth,
};
pub use upper_arm::UpperArm;
pub(crate) use waist_edge::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
pub use waist_girth::WaistGirth;
pub use width_change::{BackWidth, FrontWidth};
