//! Darts: found, moved, divided, merged.

pub(super) mod dart_aim;
pub(super) mod dart_division;
pub(super) mod dart_finding;
pub(super) mod dart_follow;
pub(super) mod dart_home;
pub(super) mod dart_lines;
pub(super) mod dart_merging;
pub(super) mod dart_obstacle;
pub(super) mod dart_opening;
pub(super) mod dart_relocation;
pub(super) mod dart_ring;
pub(super) mod dart_room;
pub(super) mod dart_swing;
pub(super) mod dart_tip;
