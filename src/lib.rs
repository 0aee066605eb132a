//! Drafts sewing blocks from body measurements, alters them for fit, proves that they
//! can still be sewn, and prints them full size.

pub mod draft;
pub mod drawing;
pub mod geometry;
pub mod invariants;
pub mod job;
pub mod measurements;
pub mod piece;
pub mod render;
pub mod units;
