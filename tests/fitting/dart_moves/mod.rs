//! Darts moved, divided, merged and made into seams: what must stay, stays.

#![allow(clippy::unwrap_used, clippy::panic)]

mod check;
mod division;
mod followed;
mod merging;
mod people;
mod pictures;
mod relocation;
mod to_seam;
