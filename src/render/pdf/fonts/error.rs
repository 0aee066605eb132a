//! Why a font cannot be used.

use crate::explain::Explain;
use thiserror::Error;

/// Why a font cannot be used.
///
/// ```
/// use blockwright::render::pdf::{FontError, FontFile};
/// assert_eq!(FontFile::new(b"no font".to_vec()), Err(FontError::NotAFont));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum FontError {
    /// The bytes are no font, or a damaged one.
    #[error("the file is no font that can be read; give a TrueType font, whose name ends in .ttf")]
    NotAFont,
    /// The letters are drawn otherwise than in TrueType.
    #[error(
        "the letters of this font are not TrueType outlines; give the TrueType version of it, whose \
         name ends in .ttf"
    )]
    NotTrueType,
    /// Its licence forbids to embed it.
    #[error("the font says that it must not be embedded; give one whose licence allows it")]
    MustNotBeEmbedded,
    /// It is larger than any font need be.
    #[error("the font has more than {most} bytes; give a smaller one")]
    TooLarge {
        /// The most bytes that are read.
        most: usize,
    },
    /// The library was built without the feature `fonts`.
    #[error("this build cannot embed fonts; use one with the feature `fonts`")]
    NoFonts,
}

impl Explain for FontError {
    fn code(&self) -> String {
        match self {
            Self::NotAFont => "not_a_font",
            Self::NotTrueType => "font_not_truetype",
            Self::MustNotBeEmbedded => "font_must_not_be_embedded",
            Self::TooLarge { .. } => "font_too_large",
            Self::NoFonts => "no_fonts",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        None
    }

    fn cure(&self) -> String {
        match self {
            Self::NotAFont | Self::NotTrueType => "give a TrueType font, whose name ends in .ttf",
            Self::MustNotBeEmbedded => "give a font whose licence allows to embed it",
            Self::TooLarge { .. } => "give a smaller font",
            Self::NoFonts => "use a build with the feature `fonts`",
        }
        .to_owned()
    }
}
