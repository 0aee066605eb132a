//! Every ordered pair of the catalogue on every block it suits: how often it is made, whether the
//! order matters, and whether an amount and its opposite lead back to the start.
#![allow(clippy::unwrap_used)]

mod differences;
mod one_side;
mod reported;
mod steps;
mod sweep;
mod table;
mod walked;
