//! What is to be said about the pages of the tiled file.

use serde::Serialize;

use crate::job::PaperSize;

/// The pages of the tiled file.
///
/// ```
/// use blockwright::job::{PagesReport, PaperSize};
/// let pages = PagesReport {
///     file: "pattern-a4.pdf".into(), paper: PaperSize::A4,
///     pages: 12, plain_grid: 20, rows: 3, columns: 4, landscape: false,
/// };
/// assert!(pages.text().ends_with("12 pages; a plain grid would take 20"));
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct PagesReport {
    /// The name of the file.
    pub file: String,
    /// The paper.
    pub paper: PaperSize,
    /// How many pages, the first with the plan included.
    pub pages: usize,
    /// How many there would be, the first included, if the pieces as they lie on the sheet were
    /// cut by a plain grid and every page of the grid printed.
    pub plain_grid: usize,
    /// Rows of pages glued together.
    pub rows: usize,
    /// Columns of pages glued together.
    pub columns: usize,
    /// Whether the pages lie with the longer side level.
    pub landscape: bool,
}

impl PagesReport {
    /// One line for a person.
    #[must_use]
    pub fn text(&self) -> String {
        let way = if self.landscape { ", landscape" } else { "" };
        format!(
            "{} on {}{way}, {} rows of {}, the first page with the plan: {} pages; a plain grid \
             would take {}",
            self.file,
            self.paper.name(),
            self.rows,
            self.columns,
            self.pages,
            self.plain_grid,
        )
    }
}
