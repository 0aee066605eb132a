//! Reading which block is wanted.

use crate::draft::Block;
use crate::measurements::{FileCause, Node, NodeValue, Reader, nearest};

/// Blocks that are planned and cannot be drafted yet.
const LATER: [&str; 2] = ["dress", "tunic"];

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
                    names[..names.len().min(3)].join(", ")
                )
            };
            let hint = "write `bodice`, `skirt` or `[bodice, skirt]`";
            reader.wrong(node.place, "block", FileCause::Senseless { problem, hint });
            None
        }
    }
}

fn one(reader: &mut Reader, node: &Node) -> Option<Block> {
    let NodeValue::Text(text) = &node.value else {
        reader.shape(node, "block", "`bodice`, `skirt` or `[bodice, skirt]`");
        return None;
    };
    let word = text.trim().to_lowercase();
    if let Some(block) = Block::named(&word) {
        return Some(block);
    }
    let cause = if LATER.contains(&word.as_str()) {
        FileCause::NotYet {
            what: format!("a {word}"),
            hint: "write `bodice`, `skirt` or `[bodice, skirt]`",
        }
    } else {
        let names = Block::ALL.iter().map(|block| block.name());
        unknown(text, "block", names.chain(LATER))
    };
    reader.wrong(node.place, "block", cause);
    None
}

/// A word that is not one of `names`, with the one that was meant or all of them.
pub(super) fn unknown<'a>(
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
