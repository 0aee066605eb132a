//! The ways round a page can be laid, and what each shows of the drawing.

use crate::geometry::counted;
use kurbo::{Rect, Size};

use super::grid::FOOTER;
use super::paper::LARGEST;
use super::{Orientation, PaperFormat, PdfError, TileOptions};

/// The least width and height in mm of what a page shows, so that its marks and its scale bar
/// have room.
const LEAST: Size = Size::new(160.0, 100.0);

/// A page one way round.
#[derive(Debug, Clone, Copy)]
pub(super) struct PageShape {
    /// Whether the longer side lies level.
    pub(super) landscape: bool,
    /// Width and height of the page in mm.
    pub(super) size: Size,
    /// The step of the grid in mm, whole numbers.
    pub(super) pitch: Size,
    /// The strip that neighbouring pages share, in mm.
    pub(super) overlap: f64,
}

impl PageShape {
    /// The ways that are allowed and large enough. A page from a roll is as long as a drawing of
    /// `high` mm needs.
    pub(super) fn all(
        paper: PaperFormat,
        options: &TileOptions,
        high: f64,
    ) -> Result<Vec<Self>, PdfError> {
        options.check()?;
        paper.check()?;
        let ways = match (paper, options.orientation) {
            (PaperFormat::Roll { width }, _) => return Ok(vec![Self::roll(width, options, high)?]),
            (_, Orientation::FewerPages) => vec![paper.portrait(), paper.landscape()],
            (_, Orientation::Portrait) => vec![paper.portrait()],
            (_, Orientation::Landscape) => vec![paper.landscape()],
        };
        let mut found = Vec::new();
        let mut failure = None;
        for size in ways {
            match Self::of(size, options) {
                Ok(shape) => found.push(Self {
                    landscape: size == paper.landscape() && size != paper.portrait(),
                    ..shape
                }),
                Err(error) => failure = failure.or(Some(error)),
            }
        }
        match failure {
            Some(failure) if found.is_empty() => Err(failure),
            _ => Ok(found),
        }
    }

    fn roll(width: f64, options: &TileOptions, high: f64) -> Result<Self, PdfError> {
        let around = 2.0 * options.margin + FOOTER;
        // Whole millimetres; a little more than the drawing, which may begin between two.
        let long = (high.ceil() + 1.0).max(LEAST.height) + around;
        Self::of(Size::new(width, long.min(LARGEST)), options)
    }

    fn of(size: Size, options: &TileOptions) -> Result<Self, PdfError> {
        let TileOptions {
            margin, overlap, ..
        } = *options;
        let pitch = Size::new(
            (size.width - 2.0 * margin - overlap).floor(),
            (size.height - 2.0 * margin - overlap - FOOTER).floor(),
        );
        if pitch.width + overlap < LEAST.width || pitch.height + overlap < LEAST.height {
            return Err(PdfError::PaperTooSmall {
                width: size.width,
                height: size.height,
                margin,
                overlap,
                least_width: LEAST.width + 2.0 * margin,
                least_height: LEAST.height + FOOTER + 2.0 * margin,
            });
        }
        Ok(Self {
            landscape: false,
            size,
            pitch,
            overlap,
        })
    }

    /// The width in mm of what so many pages side by side show.
    pub(super) fn width_of(&self, pages: usize) -> f64 {
        pages as f64 * self.pitch.width + self.overlap
    }

    /// How many pages a plain grid laid over a drawing has, none left out: columns and rows.
    pub(super) fn plain(&self, bounds: Rect) -> (usize, usize) {
        let count = |size: f64, pitch: f64| counted(((size - self.overlap) / pitch).ceil()).max(1);
        let bounds = bounds.expand();
        (
            count(bounds.width(), self.pitch.width),
            count(bounds.height(), self.pitch.height),
        )
    }
}
