//! Lays on cloth, each checked by a general library (`geo`) that knows nothing of how it was made.
#![cfg(feature = "lay")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

mod any_body;
mod check;
mod garments;
mod pictures;
mod refused;
mod seeds;
mod shapes;
