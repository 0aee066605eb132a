//! The page: the messages behind it, its server under hostile requests, and a whole session in a real
//! browser.
#![cfg(feature = "page")]
#![allow(missing_docs, clippy::panic, clippy::unwrap_used)]

mod browser;
mod driver;
mod guarded;
mod messages;
mod served;
mod session;
mod statics;
#[path = "../support/mod.rs"]
mod support;
