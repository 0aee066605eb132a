//! Seam allowances: the cut line of every block is where it should be.

#![allow(clippy::unwrap_used)]

mod altered;
mod armscye_darts;
mod corners;
mod garments;
mod reference;
mod room;
mod widths;
