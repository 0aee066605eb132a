//! Seam allowances: the cut line of every block is where it should be.

#![allow(clippy::unwrap_used)]

mod corners;
mod garments;
mod room;
mod widths;
