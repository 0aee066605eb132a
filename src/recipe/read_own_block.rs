//! Reading which file holds a block of one's own.

use super::OwnBlock;
use super::field::{Field, said};
use super::read_block::block;
use crate::measurements::{FileCause, Node, NodeValue, Reader, join};

/// Whether a job's `block` is one of one's own: a mapping with `file`.
pub(super) fn is_own(block: Field<'_>) -> Option<&Node> {
    said(block).filter(|node| matches!(node.value, NodeValue::Map(_)))
}

/// `{file: my-block.json}`, or `{file: my-block.svg, kind: dress, edges: {path12: back.hem}}`. `drafted` are the keys beside it that only a draft has.
pub(super) fn own_block(
    reader: &mut Reader,
    node: &Node,
    drafted: &[Field<'_>],
) -> Option<OwnBlock> {
    for (key, _) in drafted.iter().flatten() {
        let problem = format!(
            "`{}` is for a draft, and this job has a block of its own",
            key.text
        );
        let hint = "leave it out: the block keeps its own ease, length, sleeve and line";
        reader.wrong(key.place, "", FileCause::Senseless { problem, hint });
    }
    let expected = "a mapping with `file`, such as `{file: my-block.json}`";
    let [file, kind, edges] = reader.fields(node, "block", ["file", "kind", "edges"], expected);
    let Some((_, file)) = file else {
        let (key, hint) = ("file", "write `file:` and the path of a pattern document");
        reader.wrong(node.place, "block", FileCause::MissingKey { key, hint });
        return None;
    };
    let path = reader.text(file, "block.file")?;
    if path.is_empty() {
        let expected = "the path of a pattern document, such as `my-block.json`";
        reader.shape(file, "block.file", expected);
        return None;
    }
    let before = reader.problems.len();
    let kind = said(kind).and_then(|node| block(reader, node));
    let names = said(edges).map_or_else(Vec::new, |node| names(reader, node));
    (reader.problems.len() == before).then(|| OwnBlock::in_drawing(path, kind, names))
}

/// Names of paths by their ids.
fn names(reader: &mut Reader, node: &Node) -> Vec<(String, String)> {
    let Some(entries) = node.entries() else {
        let expected = "names by ids of the drawing, such as `{path12: back.side_seam}`";
        reader.shape(node, "block.edges", expected);
        return Vec::new();
    };
    let named = entries.iter().filter_map(|(id, name)| {
        let at = join("block.edges", &id.text);
        Some((id.text.clone(), reader.text(name, &at)?))
    });
    named.collect()
}
