//! The pattern document: what is written comes back, and nothing else is taken for it.
#![allow(clippy::unwrap_used, clippy::panic)]

mod bounds;
mod garments;
mod mutated;
mod refused;
mod round_trip;
mod schemas;

/// A message without what it quotes from the document.
fn own_words(said: &str) -> String {
    said.split('`').step_by(2).collect()
}
