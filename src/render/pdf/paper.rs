//! Paper and how pages are laid on it.

use kurbo::Size;

use super::PdfError;

/// The longest side of a paper, in mm: within what a page can be without a unit of its own.
pub(super) const LARGEST: f64 = 5_000.0;

/// Height of the first page on a roll, in mm: what is on it fits within any margins.
const ROLL_COVER: f64 = 340.0;

/// A size of paper.
///
/// ```
/// use blockwright::render::pdf::PaperFormat;
///
/// assert_eq!(PaperFormat::A4.portrait().height, 297.0);
/// assert_eq!(PaperFormat::Letter.landscape().width, 279.4);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum PaperFormat {
    /// 210 × 297 mm.
    A4,
    /// 8½ × 11 in: 215.9 × 279.4 mm.
    Letter,
    /// 297 × 420 mm.
    A3,
    /// 8½ × 14 in: 215.9 × 355.6 mm.
    Legal,
    /// 841 × 1189 mm.
    A0,
    /// Paper from a roll: as long as what is printed needs, at most 5 m a page.
    Roll {
        /// Width of the roll in mm.
        width: f64,
    },
    /// Any other, in mm.
    Custom {
        /// One side in mm.
        width: f64,
        /// The other side in mm.
        height: f64,
    },
}

impl PaperFormat {
    /// Width and height in mm, the longer side upright; of a roll, its width and the height of the
    /// first page, which is never turned.
    #[must_use]
    pub fn portrait(self) -> Size {
        let (a, b) = match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
            Self::A3 => (297.0, 420.0),
            Self::Legal => (215.9, 355.6),
            Self::A0 => (841.0, 1189.0),
            Self::Roll { width } => return Size::new(width, ROLL_COVER),
            Self::Custom { width, height } => (width, height),
        };
        // Not `min` and `max`, which would pass over a NaN.
        if a > b {
            Size::new(b, a)
        } else {
            Size::new(a, b)
        }
    }

    /// Width and height in mm, the longer side level.
    #[must_use]
    pub fn landscape(self) -> Size {
        if matches!(self, Self::Roll { .. }) {
            return self.portrait();
        }
        let Size { width, height } = self.portrait();
        Size::new(height, width)
    }

    pub(super) fn check(self) -> Result<(), PdfError> {
        let Size { width, height } = self.portrait();
        for value in [width, height] {
            if !(0.0..=LARGEST).contains(&value) {
                return Err(PdfError::BadOption {
                    what: "a side of the paper",
                    value,
                    expected: "a number between 0 and 5000 mm",
                });
            }
        }
        Ok(())
    }

    /// What it is called; its measures if it has no name.
    #[must_use]
    pub fn name(self) -> String {
        match self {
            Self::A4 => "A4".to_owned(),
            Self::Letter => "US Letter".to_owned(),
            Self::A3 => "A3".to_owned(),
            Self::Legal => "US Legal".to_owned(),
            Self::A0 => "A0".to_owned(),
            Self::Roll { width } => format!("a roll {width} mm wide"),
            Self::Custom { width, height } => format!("{width} × {height} mm"),
        }
    }
}

/// Which way round the pages are.
///
/// ```
/// use blockwright::render::pdf::Orientation;
///
/// assert_eq!(Orientation::default(), Orientation::FewerPages);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Orientation {
    /// Whichever needs fewer pages; portrait if it makes no difference. A roll has one way only.
    #[default]
    FewerPages,
    /// The longer side upright.
    Portrait,
    /// The longer side level.
    Landscape,
}

/// How pages are laid on the paper.
///
/// ```
/// use blockwright::render::pdf::TileOptions;
///
/// let options = TileOptions { overlap: 15.0, ..TileOptions::default() };
/// assert_eq!(options.margin, 12.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TileOptions {
    /// What stays blank along every edge of the paper, in mm: 12 to 50. Few printers reach the
    /// edge, and many shift the sheet by some millimetres.
    pub margin: f64,
    /// Width in mm of the strip that neighbouring pages share: 8 to 50.
    pub overlap: f64,
    /// Which way round the pages are.
    pub orientation: Orientation,
}

impl Default for TileOptions {
    fn default() -> Self {
        Self {
            margin: 12.0,
            overlap: 10.0,
            orientation: Orientation::FewerPages,
        }
    }
}

impl TileOptions {
    pub(super) fn check(&self) -> Result<(), PdfError> {
        // A comparison that also fails for NaN.
        if !(12.0..=50.0).contains(&self.margin) {
            return Err(PdfError::BadOption {
                what: "the margin",
                value: self.margin,
                expected: "12 to 50 mm, so that any home printer can hold it",
            });
        }
        if !(8.0..=50.0).contains(&self.overlap) {
            return Err(PdfError::BadOption {
                what: "the overlap",
                value: self.overlap,
                expected: "8 to 50 mm, enough to glue",
            });
        }
        Ok(())
    }
}
