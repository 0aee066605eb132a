//! Keys that are understood and cannot be done yet: refused, never passed over.

use crate::measurements::{FileCause, Key, Node, NodeValue, Reader};

/// Refuses what stands at such a key, unless it asks for nothing.
pub(super) fn not_yet(reader: &mut Reader, key: &Key, node: &Node) {
    let asks_for_nothing = match &node.value {
        NodeValue::Empty => true,
        NodeValue::Text(text) => text.trim().eq_ignore_ascii_case("none"),
        NodeValue::List(items) => items.is_empty(),
        NodeValue::Map(entries) => entries.is_empty(),
        NodeValue::Truth(_) | NodeValue::Number(_) => false,
    };
    if asks_for_nothing {
        return;
    }
    let what = "seam allowances".to_owned();
    let hint = "leave `allowance` out and add them to the stitching line when cutting";
    reader.wrong(node.place, &key.text, FileCause::NotYet { what, hint });
}
