//! Reading which block is wanted.

use crate::draft::Block;
use crate::measurements::{FileCause, Node, NodeValue, Reader, nearest};

/// A block by name, or a list of those to be joined at the waist.
pub(super) fn block(reader: &mut Reader, node: &Node) -> Option<Block> {
    let NodeValue::List(items) = &node.value else {
        return one(reader, node);
    };
    let before = reader.problems.len();
    let blocks: Vec<Block> = items.iter().filter_map(|item| one(reader, item)).collect();
    if reader.problems.len() > before {
        return None;
    }
    match blocks.as_slice() {
        [block] => Some(*block),
        [Block::Bodice, Block::Skirt] | [Block::Skirt, Block::Bodice] => {
            Some(Block::BodiceAndSkirt)
        }
        _ => {
            let names: Vec<&str> = blocks.iter().map(|block| block.name()).collect();
            let problem = if names.is_empty() {
                "the list of blocks is empty".to_owned()
            } else {
                // A list can be as long as the file.
                let more = if names.len() > 3 { " and more" } else { "" };
                format!(
                    "{}{more} do not join",
                    names.iter().take(3).copied().collect::<Vec<_>>().join(", ")
                )
            };
            let hint = "only `[bodice, skirt]` join; write the others alone";
            reader.wrong(node.place, "block", FileCause::Senseless { problem, hint });
            None
        }
    }
}

fn one(reader: &mut Reader, node: &Node) -> Option<Block> {
    let NodeValue::Text(text) = &node.value else {
        reader.shape(
            node,
            "block",
            "a block, such as `dress` or `[bodice, skirt]`",
        );
        return None;
    };
    let word = text.trim().to_lowercase();
    if let Some(block) = Block::named(&word) {
        return Some(block);
    }
    let names = Block::ALL.iter().map(|block| block.name());
    let cause = unknown(text, "block", names);
    reader.wrong(node.place, "block", cause);
    None
}

/// A word that is not one of `names`, with the one that was meant or all of them.
pub(crate) fn unknown<'a>(
    word: &str,
    what: &'static str,
    names: impl Iterator<Item = &'a str> + Clone,
) -> FileCause {
    let hint = nearest(word.trim(), names.clone()).map_or_else(
        || format!("write one of `{}`", names.collect::<Vec<_>>().join("`, `")),
        |near| format!("did you mean `{near}`?"),
    );
    FileCause::UnknownWord {
        word: word.trim().chars().take(40).collect(),
        what,
        hint,
    }
}
