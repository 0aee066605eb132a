//! What is wrong with an element of the drawing.

use super::TracedError;
use roxmltree::Node;

/// An element that is wrong.
pub(super) fn fault(
    node: Node<'_, '_>,
    problem: impl Into<String>,
    cure: impl Into<String>,
) -> TracedError {
    let at = node.document().text_pos_at(node.range().start);
    let id = node.attribute("id").map(|id| format!("`{}`", short(id)));
    TracedError::Element {
        line: at.row,
        column: at.col,
        name: id.unwrap_or_else(|| format!("a `{}`", short(node.tag_name().name()))),
        problem: problem.into(),
        cure: cure.into(),
    }
}

/// A name that may be as long as the file.
pub(super) fn short(text: &str) -> String {
    text.chars().take(60).collect()
}
