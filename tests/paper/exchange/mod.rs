//! DXF files: their structure, and what a reader of another make finds in them.
#![cfg(feature = "cli")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod files;
mod groups;
mod range;
mod refused;
mod reread;
mod structure;
