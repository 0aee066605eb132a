//! Alterations for fit, written in the cutter's own verbs: slash the paper into panels, hinge
//! and move them, gather the outline, true it up.
//!
//! An [`Alteration`] is a value. [`alter`] applies a chain of them to a pattern, proves every
//! law and every promise after each step, and gives an [`Account`] of what changed.

mod account;
mod aimed_shoulder;
mod alteration;
mod armscye_gape;
mod asked_ease;
mod back_length_increase;
mod back_length_reduction;
mod catalogue;
mod error;
mod forward_shoulder;
mod led;
mod neckline_gape;
mod paper;
mod pipeline;
mod promise;
mod request;
mod shoulder_slope_change;
mod shoulder_width;
mod sketch;
mod sleeve;
mod targeted;
mod true_up;
mod upper_half;
mod waist_edge;
mod waist_wedge;
mod wedge;
mod width_change;

pub use account::{Account, Change, Unit, changes, reading, shoulder_slope};
pub use alteration::{Alteration, Altered};
pub use armscye_gape::{ArmscyeGape, GapeSide};
pub use asked_ease::with_girth_ease;
pub use back_length_increase::{BackLengthIncrease, Fullness};
pub use back_length_reduction::{BackLengthReduction, Hinge, LEAST_HIP_EASE};
pub use catalogue::{CATALOGUE, Entry, find};
pub use error::AlterationError;
pub use forward_shoulder::ForwardShoulder;
pub use led::{filled, led};
pub use neckline_gape::NecklineGape;
pub use paper::{PanelId, Paper};
pub use pipeline::{Chain, Reason, Refused, alter};
pub use promise::{Broken, Promise};
pub use request::{Request, RequestError};
pub use shoulder_slope_change::{ShoulderSlope, Underarm};
pub use shoulder_width::ShoulderWidth;
pub use sketch::Sketch;
pub use sleeve::solve_sleeves;
pub use targeted::Targeted;
pub use true_up::{
    blend_end, blend_start, hinged, line_of_length, turned, turned_end, with_mouth, without_mouth,
};
pub(crate) use waist_edge::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
pub use width_change::{BackWidth, FrontWidth};
