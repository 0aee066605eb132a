//! Demonstrations: every alteration of the catalogue shown on paper, on every block it suits.

#![allow(clippy::unwrap_used, clippy::panic)]

mod amounts;
mod carried_out;
mod chains;
mod complete;

use crate::support::bodies::{set, with_usual_sleeve};
use crate::support::survey::whole;
use blockwright::alterations::{Alteration, CATALOGUE, Entry, alter};
use blockwright::demonstration::{Demonstration, Slash, demonstrate};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::piece::Pattern;
use std::sync::OnceLock;

/// One piece of one demonstration.
struct Shown {
    name: &'static str,
    block: &'static str,
    slash: Slash,
}

/// A step made on a block of a wearer, and its demonstration.
fn demonstrated(
    step: Box<dyn Alteration>,
    options: &DraftOptions,
    wearer: &str,
) -> Option<(Pattern, Pattern, Demonstration)> {
    let before = draft(set(wearer).body(), options).unwrap();
    let name = step.name();
    let after = alter(&before, &[step]).ok()?.pattern;
    let shown = demonstrate(name, &before, &after).unwrap();
    Some((before, after, shown))
}

/// The block with a long sleeve, where it can have one.
fn long_sleeved(block: Block) -> DraftOptions {
    let mut options = with_usual_sleeve(block);
    options.sleeve = options.sleeve.map(|_| SleeveLength::Long);
    options
}

/// The example of every alteration on blocks it suits: on all of them, or in a short run on the first
/// and the last.
fn everything() -> &'static [Shown] {
    static SHOWN: OnceLock<Vec<Shown>> = OnceLock::new();
    SHOWN.get_or_init(|| {
        let mut all = Vec::new();
        for entry in CATALOGUE {
            let mut suited: Vec<Block> = suited(entry).collect();
            if !whole() {
                suited = [suited.first(), suited.last()]
                    .into_iter()
                    .flatten()
                    .copied()
                    .collect();
                suited.dedup();
            }
            for block in suited {
                let made = demonstrated((entry.example)(), &long_sleeved(block), "ines");
                let (_, _, shown) = made.unwrap_or_else(|| panic!("{} on {block:?}", entry.name));
                all.extend(shown.slashes.into_iter().map(|slash| Shown {
                    name: entry.name,
                    block: block.name(),
                    slash,
                }));
            }
        }
        all
    })
}

/// The blocks that an entry suits.
fn suited(entry: &Entry) -> impl Iterator<Item = Block> + '_ {
    let all = Block::ALL.into_iter();
    all.filter(|block| entry.blocks.contains(&block.name()))
}
