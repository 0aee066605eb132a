//! What is said about a drawing where it is printed.

use super::Fonts;

/// What is said about a drawing where it is printed.
///
/// ```
/// use blockwright::render::pdf::PrintInfo;
///
/// let info = PrintInfo::new("Linen tunic")
///     .subtitle("for Ines, second toile")
///     .contents(["Back, cut 1 on the fold", "Front, cut 1 on the fold", "Sleeve, cut a pair"]);
/// assert_eq!(info.contents.len(), 3);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Default)]
#[non_exhaustive]
pub struct PrintInfo {
    /// The title: on every page, and in the document's properties.
    pub title: String,
    /// A line below the title on the first page; may be empty.
    pub subtitle: String,
    /// What is on the drawing, one entry a line.
    pub contents: Vec<String>,
    /// How much cloth it takes, one width a line.
    pub cloth: Vec<String>,
    /// In which order it is sewn, one step a line.
    pub sewing: Vec<String>,
    /// What the words are written with.
    pub fonts: Fonts,
    /// The date of the job, such as `2026-03-14`, for the document's properties.
    pub date: Option<String>,
}

impl PrintInfo {
    /// A title alone.
    pub fn new(title: impl Into<String>) -> Self {
        Self {
            title: title.into(),
            ..Self::default()
        }
    }

    /// The same with a line below the title.
    #[must_use]
    pub fn subtitle(mut self, subtitle: impl Into<String>) -> Self {
        self.subtitle = subtitle.into();
        self
    }

    /// The same with a list of what is on the drawing.
    #[must_use]
    pub fn contents<S: Into<String>>(mut self, lines: impl IntoIterator<Item = S>) -> Self {
        self.contents = lines.into_iter().map(Into::into).collect();
        self
    }

    /// The same with how much cloth it takes and in which order it is sewn, one entry a line.
    #[must_use]
    pub fn sewing(mut self, cloth: Vec<String>, steps: Vec<String>) -> Self {
        (self.cloth, self.sewing) = (cloth, steps);
        self
    }

    /// The same written with other fonts.
    #[must_use]
    pub fn fonts(mut self, fonts: Fonts) -> Self {
        self.fonts = fonts;
        self
    }

    /// The same with the date of the job.
    #[must_use]
    pub fn date(mut self, date: Option<String>) -> Self {
        self.date = date;
        self
    }
}
