//! The whole family of blocks: what a cutter expects of each, and bodies at the ends.
#![allow(clippy::unwrap_used)]

mod bodies;
mod lengths;
mod sleeve;

use crate::support::bodies::body_with as body;
use blockwright::draft::{Block, DraftOptions, SleeveLength};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::measurements::Body;
use blockwright::piece::Pattern;

/// Three bodies of very different build.
fn builds() -> [Body; 3] {
    [
        body([1560.0, 800.0, 620.0, 870.0], &[]),
        body([1660.0, 930.0, 770.0, 1010.0], &[]),
        body([1700.0, 1180.0, 1060.0, 1220.0], &[]),
    ]
}

fn with_sleeve(block: Block, length: SleeveLength) -> DraftOptions {
    let mut options = DraftOptions::of(block);
    options.sleeve = Some(length);
    options
}

fn must_be_lawful(pattern: &Pattern, what: &str) {
    let broken = check_all(pattern, &Tolerances::drafted());
    assert!(broken.is_empty(), "{what}: {}", broken[0]);
}

const WITH_ARMSCYE: [Block; 4] = [Block::Bodice, Block::Dress, Block::Tunic, Block::Shirt];
