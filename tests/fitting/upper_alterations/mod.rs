//! Alterations of shoulder, back and neck, on every block with shoulders and on bodies of very
//! different build.
#![allow(clippy::unwrap_used, clippy::panic)]

mod back_length;
mod back_neck;
mod bust_girth;
mod bust_point;
mod chains;
mod forward_shoulder;
mod front_length;
mod gapes;
mod openings;
mod rules;
mod shoulder_blade;
mod shoulder_slope;
mod shoulder_width;
mod wardrobe;
mod widths;
