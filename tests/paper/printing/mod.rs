//! What comes out of the printer, seen from outside: pages are rendered by an independent viewer
//! and measured, glued together by the plan and laid over the sheet; the files are read by an
//! independent parser.
#![cfg(feature = "pdf")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod demo;
mod files;
mod fonts;
mod glued;
mod hostile;
mod jobs;
mod layers;
mod measured;
mod packing;
mod picture;
mod places;
mod plan_page;
mod projector;
mod size;
mod tools;
mod vector;
