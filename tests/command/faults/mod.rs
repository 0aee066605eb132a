//! Trust: hostile input, kills, full disks and closed folders by really doing it, and the same
//! bytes for the same input.
#![cfg(feature = "cli")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod cloth;
mod files;
mod full;
mod guard;
mod jobs;
mod killed;
mod people;
mod same_bytes;
mod unwritable;
