//! Reading what a block is to look like: length, sleeve, darts, side seam.

use super::field::{Field, length, said, truth};
use super::read_block::unknown;
use crate::draft::{DraftOptions, Side, SleeveLength};
use crate::measurements::{Node, NodeValue, Reader};

/// The keys of a job that say what the block is to look like.
pub(super) struct ShapeFields<'a> {
    pub length: Field<'a>,
    pub sleeve: Field<'a>,
    pub cap_ease: Field<'a>,
    pub waist_darts: Field<'a>,
    pub side: Field<'a>,
}

impl ShapeFields<'_> {
    /// Reads them into the options; gives back the keys for which the block has no use.
    pub fn read(self, reader: &mut Reader, options: &mut DraftOptions) -> Vec<&'static str> {
        let block = options.block;
        let mut unused = Vec::new();
        let mut used = |key, by: bool, said: bool| {
            if said && !by {
                unused.push(key);
            }
            by
        };
        let (hem, arm, one) = (block.has_hem(), block.has_armscye(), block.is_one_piece());
        let long =
            said(self.length).and_then(|n| length(reader, n, "length", DraftOptions::LENGTHS));
        options.length = long.filter(|_| used("length", hem, long.is_some()));
        let sleeve = said(self.sleeve).and_then(|n| sleeve(reader, n));
        options.sleeve = sleeve.filter(|_| used("sleeve", arm, sleeve.is_some()));
        let cap = said(self.cap_ease)
            .and_then(|n| length(reader, n, "cap_ease", DraftOptions::CAP_EASES));
        let has_cap = options.sleeve.is_some();
        options.cap_ease = cap.filter(|_| used("cap_ease", has_cap, cap.is_some()));
        let darts = said(self.waist_darts).and_then(|n| truth(reader, n, "waist_darts"));
        options.waist_darts = darts.filter(|_| used("waist_darts", one, darts.is_some()));
        let side = said(self.side).and_then(|n| side(reader, n));
        options.side = side.filter(|_| used("side", one, side.is_some()));
        unused
    }
}

fn word<T>(
    reader: &mut Reader,
    node: &Node,
    key: &'static str,
    (words, choose): (&[&'static str], &'static str),
    named: impl Fn(&str) -> Option<T>,
) -> Option<T> {
    let NodeValue::Text(text) = &node.value else {
        reader.shape(node, key, choose);
        return None;
    };
    let found = named(&text.trim().to_lowercase());
    if found.is_none() {
        reader.wrong(node.place, key, unknown(text, key, words.iter().copied()));
    }
    found
}

/// The words for a sleeve, and how the choice is written.
const SLEEVES: (&[&str], &str) = (&["none", "short", "long"], "`none`, `short` or `long`");

fn sleeve(reader: &mut Reader, node: &Node) -> Option<SleeveLength> {
    let named = |word: &str| match word {
        "none" => Some(None),
        other => SleeveLength::named(other).map(Some),
    };
    word(reader, node, "sleeve", SLEEVES, named).flatten()
}

/// A sleeve that is there.
pub(super) fn sleeve_length(reader: &mut Reader, node: &Node) -> Option<SleeveLength> {
    let named = SleeveLength::named;
    let words = (["short", "long"].as_slice(), "`short` or `long`");
    word(reader, node, "sleeve", words, named)
}

pub(super) fn side(reader: &mut Reader, node: &Node) -> Option<Side> {
    let words = (["shaped", "straight"].as_slice(), "`shaped` or `straight`");
    word(reader, node, "side", words, Side::named)
}
