//! Widths and girths: bust, waist, hips, seat, abdomen, and the side seam.

pub(super) mod abdomen;
pub(super) mod bust;
pub(super) mod bust_girth;
pub(super) mod bust_point;
pub(super) mod bust_spread;
pub(super) mod high_hip;
pub(super) mod hip_girth;
pub(super) mod redrawn_waist;
pub(super) mod seat;
pub(super) mod side_seam;
pub(super) mod undarted_waist;
pub(super) mod waist_edge;
pub(super) mod waist_girth;
pub(super) mod waist_wedge;
pub(super) mod waist_wider;
pub(super) mod width_change;
