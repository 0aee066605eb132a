//! A font for scripts that the built-in one lacks.

use std::sync::Arc;

use super::FontError;

/// A TrueType font for scripts that the built-in one lacks: its bytes, checked. Only the letters that
/// are used come into a file.
///
/// ```
/// use blockwright::render::pdf::{FontError, FontFile};
/// assert!(matches!(FontFile::new(Vec::new()), Err(FontError::NotAFont | FontError::NoFonts)));
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FontFile {
    bytes: Arc<[u8]>,
}

impl FontFile {
    /// The most bytes that a font may have: 32 MiB.
    pub const MOST_BYTES: usize = 32 * 1024 * 1024;

    /// Checks the bytes of a font; of a collection the first font counts.
    ///
    /// # Errors
    /// [`FontError`] if they are no TrueType font, or one that must not be embedded; always where the
    /// feature `fonts` is off.
    #[cfg(feature = "fonts")]
    pub fn new(bytes: impl Into<Arc<[u8]>>) -> Result<Self, FontError> {
        let bytes = bytes.into();
        if bytes.len() > Self::MOST_BYTES {
            let most = Self::MOST_BYTES;
            return Err(FontError::TooLarge { most });
        }
        let face = ttf_parser::Face::parse(&bytes, 0).map_err(|_| FontError::NotAFont)?;
        if face.tables().cmap.is_none() || face.units_per_em() == 0 {
            return Err(FontError::NotAFont);
        }
        if face.tables().glyf.is_none() {
            return Err(FontError::NotTrueType);
        }
        if face.permissions() == Some(ttf_parser::Permissions::Restricted) {
            return Err(FontError::MustNotBeEmbedded);
        }
        Ok(Self { bytes })
    }

    /// This build cannot embed fonts.
    ///
    /// # Errors
    /// [`FontError::NoFonts`], always.
    #[cfg(not(feature = "fonts"))]
    pub fn new(bytes: impl Into<Arc<[u8]>>) -> Result<Self, FontError> {
        drop(bytes.into());
        Err(FontError::NoFonts)
    }

    /// The bytes.
    #[must_use]
    pub fn bytes(&self) -> &[u8] {
        &self.bytes
    }
}
