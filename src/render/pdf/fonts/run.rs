//! A stretch of letters written with one font.

use super::Which;

/// A stretch of letters written with one font.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::render::pdf) struct Run {
    pub(in crate::render::pdf) font: Which,
    /// The letters as the file holds them: two bytes a letter where the font is embedded, else one.
    pub(in crate::render::pdf) bytes: Vec<u8>,
    /// Its letters.
    pub(in crate::render::pdf) letters: Vec<char>,
    /// Its width as a part of the size; none where it is what the drawing took it for.
    pub(in crate::render::pdf) width: Option<f64>,
}
