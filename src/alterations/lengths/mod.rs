//! Back and front lengths, and lengths of skirt and sleeve.

pub(super) mod back_length_increase;
pub(super) mod back_length_reduction;
#[cfg(feature = "least-distortion")]
pub(super) mod back_mesh;
pub(super) mod centre_opening;
pub(super) mod centre_truing;
pub(super) mod distortion;
pub(super) mod front_length;
pub(super) mod hinge;
pub(super) mod length;
pub(super) mod length_below;
pub(super) mod length_sleeve;
pub(super) mod method_choice;
pub(super) mod method_table;
#[cfg(feature = "least-distortion")]
pub(super) mod relaxation;
pub(super) mod stretch;
