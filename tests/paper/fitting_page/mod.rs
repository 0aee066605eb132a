//! The fitting page: whole, self-contained, readable without styles or scripts.
#![cfg(feature = "cli")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod browser;
#[cfg(feature = "form")]
mod fit_map;
mod page;
mod tools;
