//! Sleeves: cap and armscye, pitch, and the widths of an arm.

pub(super) mod elbow_width;
pub(super) mod forearm_width;
pub(super) mod sleeve;
pub(super) mod sleeve_pitch;
pub(super) mod sleeve_seams;
pub(super) mod sleeve_width;
pub(super) mod upper_arm;
pub(super) mod wider_sleeve;
pub(super) mod wrist;
