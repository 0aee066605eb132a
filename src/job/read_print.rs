//! Reading how a job is printed.

use super::field::length;
use super::read_block::unknown;
use super::{PageTurn, PaperSize, PrintOptions};
use crate::measurements::{Node, NodeValue, Reader};

/// What stands under `print`; what is left out is as usual.
pub(super) fn print(reader: &mut Reader, node: &Node) -> PrintOptions {
    let mut print = PrintOptions::default();
    let expected = "a mapping such as `{paper: a4}`";
    let keys = ["paper", "margin", "overlap", "orientation"];
    let [paper, margin, overlap, turn] = reader.fields(node, "print", keys, expected);
    if let Some((_, node)) = paper {
        let names = PaperSize::ALL.iter().map(|size| size.name());
        let read = word(reader, node, "print.paper", "paper", names);
        print.paper = read.and_then(PaperSize::named).unwrap_or_default();
    }
    if let Some((_, node)) = turn {
        let names = PageTurn::ALL.iter().map(|turn| turn.name());
        let read = word(reader, node, "print.orientation", "orientation", names);
        print.orientation = read.and_then(PageTurn::named).unwrap_or_default();
    }
    if let Some((_, node)) = margin {
        let read = length(reader, node, "print.margin", PrintOptions::MARGINS);
        print.margin = read.unwrap_or(print.margin);
    }
    if let Some((_, node)) = overlap {
        let read = length(reader, node, "print.overlap", PrintOptions::OVERLAPS);
        print.overlap = read.unwrap_or(print.overlap);
    }
    print
}

/// One of `names`, in any case.
fn word(
    reader: &mut Reader,
    node: &Node,
    path: &str,
    what: &'static str,
    names: impl Iterator<Item = &'static str> + Clone,
) -> Option<&'static str> {
    let NodeValue::Text(text) = &node.value else {
        reader.shape(node, path, "one word");
        return None;
    };
    let found = names
        .clone()
        .find(|name| name.eq_ignore_ascii_case(text.trim()));
    if found.is_none() {
        reader.wrong(node.place, path, unknown(text, what, names));
    }
    found
}
