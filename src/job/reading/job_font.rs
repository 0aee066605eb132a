//! The font of a job for scripts that the built-in one lacks.

use std::sync::Arc;

use serde::{Serialize, Serializer};

/// The font of a job for scripts that the built-in one lacks: the path of its file as written, and the
/// bytes once they are at hand. Of a job that is written the path remains, and whoever reads it gives
/// the bytes again.
///
/// ```
/// use blockwright::job::JobFont;
/// let font = JobFont::new("fonts/hand.ttf");
/// assert_eq!((font.path(), font.bytes()), ("fonts/hand.ttf", None));
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobFont {
    path: String,
    bytes: Option<Arc<[u8]>>,
}

impl JobFont {
    /// A font that has still to be read.
    #[must_use]
    pub fn new(path: impl Into<String>) -> Self {
        let path = path.into();
        Self { path, bytes: None }
    }

    /// The same with what is in its file.
    #[must_use]
    pub fn with_bytes(mut self, bytes: impl Into<Arc<[u8]>>) -> Self {
        self.bytes = Some(bytes.into());
        self
    }

    /// The path as written, meant from where the job file stands.
    #[must_use]
    pub fn path(&self) -> &str {
        &self.path
    }

    /// What is in the file, once it is at hand.
    #[must_use]
    pub const fn bytes(&self) -> Option<&Arc<[u8]>> {
        self.bytes.as_ref()
    }
}

impl Serialize for JobFont {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.path)
    }
}
