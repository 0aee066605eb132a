//! Darts made into seams: the path of a seam through a piece, and the panels on both sides of it.

pub(super) mod dart_to_seam;
pub(super) mod panel_back;
pub(super) mod panel_bow;
pub(super) mod panel_calm;
pub(super) mod panel_corner;
pub(super) mod panel_leg;
pub(super) mod panel_lines;
pub(super) mod panel_path;
pub(super) mod panel_pieces;
pub(super) mod panel_plan;
