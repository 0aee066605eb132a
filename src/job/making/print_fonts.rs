//! What the words of a job are written with, and what of them cannot be.

use std::sync::Arc;

use crate::job::{JobFont, PrintOptions};
use crate::render::pdf::{FontFile, Fonts, PdfError};

/// What the words of a job are written with.
pub(in crate::job) fn fonts(print: &PrintOptions) -> Result<Fonts, PdfError> {
    if !print.embed {
        return Ok(Fonts::of_viewers());
    }
    let bytes = print.font.as_ref().and_then(JobFont::bytes);
    bytes.map_or_else(
        || Ok(Fonts::default()),
        |bytes| Ok(Fonts::with(FontFile::new(Arc::clone(bytes))?)),
    )
}

/// What cannot be shown of the words that a job brings, each with where it stands.
pub(in crate::job) fn letters_lacking<'a>(
    fonts: &Fonts,
    words: impl IntoIterator<Item = (&'a str, &'a str)>,
) -> Vec<String> {
    let mut warnings = Vec::new();
    for (what, text) in words {
        let lacking: Vec<String> = fonts
            .lacking(text)
            .iter()
            .map(|l| format!("`{l}`"))
            .collect();
        if lacking.is_empty() {
            continue;
        }
        warnings.push(format!(
            "the fonts of the printed files have no {} ({what}), and show a box instead: name a TrueType font that has them with `print: {{font: FILE}}`",
            lacking.join(" ")
        ));
    }
    warnings
}
