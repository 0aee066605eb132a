//! Text that goes on one line.

/// The text on one line, without control characters.
pub(crate) fn one_line(text: &str) -> String {
    let words = text.split(|c: char| c.is_whitespace() || c.is_control());
    words
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}
