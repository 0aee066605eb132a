//! The font that a job file names.

#[cfg(feature = "pdf")]
use std::sync::Arc;

use crate::job::{JobFile, JobFont};

impl JobFile {
    /// The path of the font that the job names for other scripts, if it names one; it is meant from
    /// where the job file stands. [`with_font`](Self::with_font) takes its bytes.
    #[must_use]
    pub fn font_path(&self) -> Option<&str> {
        self.print.font.as_ref().map(JobFont::path)
    }

    /// The same with the bytes of the font that [`font_path`](Self::font_path) names, checked (feature
    /// `pdf`); as it is if it names none.
    ///
    /// # Errors
    /// [`FontError`](crate::render::pdf::FontError) if it cannot be used.
    #[cfg(feature = "pdf")]
    pub fn with_font(
        mut self,
        bytes: impl Into<Arc<[u8]>>,
    ) -> Result<Self, crate::render::pdf::FontError> {
        if let Some(font) = self.print.font.take() {
            let bytes = bytes.into();
            crate::render::pdf::FontFile::new(Arc::clone(&bytes))?;
            self.print.font = Some(font.with_bytes(bytes));
        }
        Ok(self)
    }
}
