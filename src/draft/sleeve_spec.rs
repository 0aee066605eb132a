//! What a sleeve is drafted from besides figure and ease.

use super::SleeveLength;
use super::arm_ease::ArmEase;

/// The armscye a sleeve is set into: seam lengths of its halves, and how far from the shoulder
/// each half's notch lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Armhole {
    pub back: f64,
    pub front: f64,
    pub back_notch: f64,
    pub front_notch: f64,
}

/// What a sleeve follows from besides figure and ease.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SleeveSpec {
    pub length: SleeveLength,
    /// By how much the cap is longer than the armscye.
    pub cap_ease: f64,
    /// Whether a long sleeve is shaped at the elbow.
    pub fitted: bool,
    /// How the ease of the upper arm is chosen.
    pub arm: ArmEase,
}
