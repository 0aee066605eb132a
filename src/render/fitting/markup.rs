//! Text as it may stand in markup.

use crate::units::{Length, LengthStyle, Unit};
use std::fmt::Write as _;

/// Text for an element or a quoted attribute, without what no document may hold.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\u{fffe}' | '\u{ffff}' => out.push(' '),
            c if c.is_control() => out.push(' '),
            c => out.push(c),
        }
    }
    out
}

/// A name in snake case as words, escaped.
pub(super) fn words(name: &str) -> String {
    escaped(&name.replace('_', " "))
}

/// The same, beginning with a capital.
pub(super) fn title_words(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(char::to_uppercase);
    let text: String = first.into_iter().flatten().chain(letters).collect();
    words(&text)
}

/// A length on paper in the wearer's unit. To a thousandth first, as reports have it, so that
/// both round to the same.
pub(super) fn length(mm: f64, unit: Unit) -> String {
    Length::from_mm((mm * 1000.0).round() / 1000.0).map_or_else(
        |_| "none".to_owned(),
        |length| length.to_text(LengthStyle::fine(unit)).replace('-', "−"),
    )
}

/// How the cells of a table are set.
#[derive(Clone, Copy)]
pub(super) enum Cells {
    /// Numbers, each on one line.
    Numbers,
    /// A short value, then words.
    Facts,
    /// Words.
    Words,
}

impl Cells {
    fn class(self) -> &'static str {
        match self {
            Self::Numbers => "numbers",
            Self::Facts => "facts",
            Self::Words => "words",
        }
    }
}

/// A table: its caption, its heads, and rows whose first cell names the row.
pub(super) fn table(
    out: &mut String,
    cells: Cells,
    caption: &str,
    heads: &[&str],
    rows: &[Vec<String>],
) {
    let class = cells.class();
    // Writing to a string cannot fail.
    let _ = write!(
        out,
        "<div class=\"table\"><table class=\"{class}\">\n<caption>{caption}</caption>\n<thead><tr>"
    );
    for head in heads {
        let _ = write!(out, "<th scope=\"col\">{head}</th>");
    }
    out.push_str("</tr></thead>\n<tbody>\n");
    for row in rows {
        out.push_str("<tr>");
        for (index, cell) in row.iter().enumerate() {
            let _ = if index == 0 {
                write!(out, "<th scope=\"row\">{cell}</th>")
            } else {
                write!(out, "<td>{cell}</td>")
            };
        }
        out.push_str("</tr>\n");
    }
    out.push_str("</tbody>\n</table></div>\n");
}

#[cfg(test)]
mod tests {
    use super::{escaped, title_words};

    #[test]
    fn nothing_of_the_user_is_markup() {
        assert_eq!(
            escaped("<b a=\"x\" c='y'>&\u{1}"),
            "&lt;b a=&quot;x&quot; c=&#39;y&#39;&gt;&amp; "
        );
        assert_eq!(
            title_words("back_length_reduction"),
            "Back length reduction"
        );
        assert_eq!(title_words(""), "");
    }
}
