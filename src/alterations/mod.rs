//! Alterations for fit, written in the cutter's own verbs: slash the paper into panels, hinge
//! and move them, gather the outline, true it up.
//!
//! An [`Alteration`] is a value. [`alter`] applies a chain of them to a pattern, proves every
//! law and every promise after each step, and gives an [`Account`] of what changed.
//!
//! The settings of a [`Request`] are a [`serde_json::Value`]; that crate is handed on here.

mod chain;
mod cutting;
mod darts;
mod lengths;
mod panels;
mod shoulders;
mod sleeves;
mod widths;

pub use chain::account::{Account, Change, changes};
pub use chain::alteration::{Alteration, Altered};
pub use chain::catalogue::{CATALOGUE, Entry, find};
pub use chain::error::AlterationError;
pub use chain::girths::with_girth_ease;
pub use chain::one_sided::OneSided;
pub(crate) use chain::pipeline::earlier_place;
pub use chain::pipeline::{Chain, alter};
pub use chain::promise::{Broken, Promise};
pub use chain::readings::Readings;
pub use chain::refused::{EarlierStep, Reason, Refused};
pub use chain::request::{Request, RequestError};
pub use chain::structure::{Part, StructureChange, Undeclared};
pub use chain::targeted::Targeted;
pub use cutting::led::{filled, led};
pub use cutting::paper::{PanelId, Paper};
pub use cutting::sketch::Sketch;
pub use cutting::stations::{Station, moved_at};
pub use cutting::true_up::{hinged, line_of_length, turned_end, with_mouth, without_mouth};
pub use darts::dart_division::{DartDivision, DartPart};
pub use darts::dart_merging::{APEX_REACH, DartMerging};
pub use darts::dart_relocation::DartRelocation;
pub use lengths::back_length_increase::{BackLengthIncrease, Fullness};
pub use lengths::back_length_reduction::{BackLengthReduction, LEAST_HIP_EASE};
pub use lengths::front_length::FrontLength;
pub use lengths::hinge::Hinge;
pub use lengths::length::{LengthAt, LengthChange};
pub use lengths::method_choice::MethodChoice;
pub use lengths::method_table::{
    MethodFigures, MethodOutcome, MethodRow, MethodTable, compare_methods,
};
pub use lengths::stretch::LocalStretch;
pub use panels::dart_to_seam::DartToSeam;
pub use serde_json;
pub use shoulders::armscye_depth::ArmscyeDepth;
pub use shoulders::armscye_gape::{ArmscyeGape, GapeSide};
pub use shoulders::back_neck_gape::BackNeckGape;
pub use shoulders::forward_shoulder::ForwardShoulder;
pub use shoulders::neckline_depth::NecklineDepth;
pub use shoulders::neckline_gape::NecklineGape;
pub use shoulders::neckline_width::NecklineWidth;
pub use shoulders::shoulder_blade::ShoulderBlade;
pub use shoulders::shoulder_drop::ShoulderDrop;
pub use shoulders::shoulder_slope_change::{ShoulderSlope, Underarm};
pub use shoulders::shoulder_width::ShoulderWidth;
pub use sleeves::elbow_width::ElbowWidth;
pub use sleeves::forearm_width::ForearmWidth;
pub use sleeves::sleeve::solve_sleeves;
pub use sleeves::sleeve_pitch::SleevePitch;
pub use sleeves::upper_arm::UpperArm;
pub use sleeves::wrist::WristWidth;
pub use widths::abdomen::Abdomen;
pub use widths::bust::Bust;
pub use widths::bust_girth::BustGirth;
pub use widths::bust_point::{BustDirection, BustPoint};
pub use widths::high_hip::HighHip;
pub use widths::hip_girth::HipGirth;
pub use widths::seat::Seat;
pub use widths::side_seam::SideSeam;
pub(crate) use widths::waist_edge::{DartWanted, DartsPoint, WaistSpec, Waistline, waistline};
pub use widths::waist_girth::WaistGirth;
pub use widths::width_change::{BackShoulder, BackWidth, FrontWidth};
