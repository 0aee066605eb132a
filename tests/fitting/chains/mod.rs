//! Alterations on many bodies and blocks, alone and in chains: every law and every promise
//! holds after each step, or the step is refused by name.
#![cfg(feature = "cli")]
#![allow(clippy::unwrap_used)]

mod catalogue;
mod everyday;
mod random;
mod survey;

use crate::support::bodies::body;
use blockwright::alterations::{Alteration, CATALOGUE, Entry};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::measurements::Body;
use blockwright::piece::Pattern;

/// The pattern of a block, with a long sleeve where it can have one.
fn drafted(body: &Body, block: Block) -> Option<Pattern> {
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(SleeveLength::Long);
    draft(body, &options).ok()
}

/// The blocks that an entry suits.
fn suited(entry: &Entry) -> impl Iterator<Item = Block> + '_ {
    Block::ALL
        .into_iter()
        .filter(|b| entry.blocks.contains(&b.name()))
}

/// The example of an entry by a share of its amount.
fn scaled(entry: &Entry, share: f64) -> Box<dyn Alteration> {
    let example = (entry.example)();
    match example.amount() {
        Some(amount) => example.with_amount(amount * share),
        None => example,
    }
}

#[test]
fn the_catalogue_names_each_alteration_once() {
    for (index, entry) in CATALOGUE.iter().enumerate() {
        assert!(
            CATALOGUE[..index].iter().all(|e| e.name != entry.name),
            "{}",
            entry.name
        );
        assert!(suited(entry).count() > 0, "{} suits no block", entry.name);
        assert!(
            !entry.says.is_empty() && !entry.keeps.is_empty(),
            "{}",
            entry.name
        );
    }
}
