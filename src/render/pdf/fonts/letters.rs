//! Which letters a file can show, and by which font.

use super::{FontFile, Run, Which};
use crate::drawing::{Face, encode_winansi, is_printable};

/// What words in a file are written with. With the feature `fonts` the built-in font is embedded, so
/// that a copy shop needs none: Latin, Greek, Cyrillic and Vietnamese; and another font for the letters
/// that it lacks, if one is given. Without the feature the words are those of the standard faces.
///
/// ```
/// use blockwright::render::pdf::Fonts;
/// assert_eq!(Fonts::default().lacking("Rock für Ines 裁缝 裁"), ['裁', '缝']);
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fonts {
    embedded: bool,
    other: Option<FontFile>,
}

#[cfg_attr(
    not(feature = "fonts"),
    expect(
        clippy::derivable_impls,
        reason = "with the feature it is not what can be derived"
    )
)]
impl Default for Fonts {
    fn default() -> Self {
        Self {
            embedded: cfg!(feature = "fonts"),
            other: None,
        }
    }
}

impl Fonts {
    /// The two faces that every viewer carries, of which nothing is embedded: Western European letters
    /// alone, in the smallest files.
    ///
    /// ```
    /// use blockwright::render::pdf::Fonts;
    /// assert_eq!(Fonts::of_viewers().lacking("Ines Марія").len(), 5);
    /// ```
    #[must_use]
    pub const fn of_viewers() -> Self {
        Self {
            embedded: false,
            other: None,
        }
    }

    /// With a font for the letters that the built-in one lacks.
    #[must_use]
    pub fn with(other: FontFile) -> Self {
        Self {
            other: Some(other),
            ..Self::default()
        }
    }

    /// The font for the letters that the built-in one lacks.
    #[must_use]
    pub const fn other(&self) -> Option<&FontFile> {
        self.other.as_ref()
    }

    /// Whether the letters of a file are embedded in it.
    #[must_use]
    pub const fn are_embedded(&self) -> bool {
        self.embedded
    }

    /// The letters of a text that none of the fonts has, each once: a box or a point stands for them.
    #[must_use]
    pub fn lacking(&self, text: &str) -> Vec<char> {
        let mut lacking: Vec<char> = Vec::new();
        for letter in text.chars() {
            if !self.has(letter) && !lacking.contains(&letter) {
                lacking.push(letter);
            }
        }
        lacking
    }

    /// The text in stretches of one font, from left to right.
    pub(in crate::render::pdf) fn runs(&self, text: &str, face: Face) -> Vec<Run> {
        let font = Which::of(face);
        #[cfg(feature = "fonts")]
        if self.embedded {
            return self.stretches(text, font);
        }
        vec![Run {
            font,
            bytes: encode_winansi(text),
            letters: Vec::new(),
            width: None,
        }]
    }

    fn has(&self, letter: char) -> bool {
        #[cfg(feature = "fonts")]
        if self.embedded {
            return is_unseen(letter)
                || letter.is_control()
                || self.font_of(letter, Which::Regular).is_some();
        }
        is_printable(letter)
    }
}

#[cfg(feature = "fonts")]
impl Fonts {
    /// The font that has a letter, if there is one.
    fn font_of(&self, letter: char, face: Which) -> Option<Which> {
        // Letters beyond the basic plane take two units, which no reader of ours needs.
        let in_plane = u16::try_from(u32::from(letter)).is_ok();
        if in_plane && super::subset::built_in_has(letter) {
            return Some(face);
        }
        let other = self.other.as_ref().filter(|_| in_plane)?;
        super::subset::has(other.bytes(), letter).then_some(Which::Other)
    }

    fn stretches(&self, text: &str, face: Which) -> Vec<Run> {
        let mut runs: Vec<Run> = Vec::new();
        for letter in super::order::left_to_right(text).chars() {
            let letter = if letter.is_control() { ' ' } else { letter };
            if is_unseen(letter) {
                continue;
            }
            let (font, shown) = match self.font_of(letter, face) {
                Some(font) => (font, letter),
                None => (face, super::subset::NO_LETTER),
            };
            let same = runs.last().is_some_and(|run| run.font == font);
            if !same {
                runs.push(Run {
                    font,
                    bytes: Vec::new(),
                    letters: Vec::new(),
                    width: None,
                });
            }
            if let (Some(run), Ok(unit)) = (runs.last_mut(), u16::try_from(u32::from(shown))) {
                run.bytes.extend(unit.to_be_bytes());
                run.letters.push(shown);
            }
        }
        let simple = runs.len() <= 1 && runs.iter().all(|run| run.font != Which::Other);
        if !simple {
            for run in &mut runs {
                run.width = Some(super::subset::width(run, self.other.as_ref()));
            }
        }
        runs
    }
}

/// What has no picture and no width: marks of direction, joiners, soft hyphens.
#[cfg(feature = "fonts")]
const fn is_unseen(letter: char) -> bool {
    matches!(
        letter,
        '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}'
    )
}
