//! How a job is printed.

use crate::job::JobFont;
use serde::{Serialize, Serializer};

/// A size of paper, by the name it has in a job file.
///
/// ```
/// use blockwright::job::PaperSize;
/// assert_eq!(PaperSize::named("letter"), Some(PaperSize::Letter));
/// assert_eq!(PaperSize::Roll914.name(), "roll-914");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[non_exhaustive]
pub enum PaperSize {
    /// 210 × 297 mm.
    #[default]
    A4,
    /// 8½ × 11 in.
    Letter,
    /// 297 × 420 mm.
    A3,
    /// 8½ × 14 in.
    Legal,
    /// 841 × 1189 mm.
    A0,
    /// A roll 594 mm wide (widths of copy-shop rolls: value from memory).
    Roll594,
    /// A roll 610 mm wide, 24 in.
    Roll610,
    /// A roll 841 mm wide.
    Roll841,
    /// A roll 914 mm wide, 36 in.
    Roll914,
    /// A roll 1067 mm wide, 42 in.
    Roll1067,
}

impl PaperSize {
    /// Every size.
    pub const ALL: [Self; 10] = [
        Self::A4,
        Self::Letter,
        Self::A3,
        Self::Legal,
        Self::A0,
        Self::Roll594,
        Self::Roll610,
        Self::Roll841,
        Self::Roll914,
        Self::Roll1067,
    ];

    /// The name in job files and file names.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
            Self::A3 => "a3",
            Self::Legal => "legal",
            Self::A0 => "a0",
            Self::Roll594 => "roll-594",
            Self::Roll610 => "roll-610",
            Self::Roll841 => "roll-841",
            Self::Roll914 => "roll-914",
            Self::Roll1067 => "roll-1067",
        }
    }

    /// Whether it comes from a roll, as long as the pieces need.
    #[must_use]
    pub const fn is_roll(self) -> bool {
        matches!(
            self,
            Self::Roll594 | Self::Roll610 | Self::Roll841 | Self::Roll914 | Self::Roll1067
        )
    }

    /// The size of that name, in any case.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|size| size.name().eq_ignore_ascii_case(name))
    }
}

impl std::fmt::Display for PaperSize {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

impl Serialize for PaperSize {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

/// Which way round pages are, by the name it has in a job file.
///
/// ```
/// use blockwright::job::PageTurn;
/// assert_eq!(PageTurn::named("landscape"), Some(PageTurn::Landscape));
/// assert_eq!(PageTurn::default().name(), "fewer_pages");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum PageTurn {
    /// Whichever needs fewer pages.
    #[default]
    FewerPages,
    /// The longer side upright.
    Portrait,
    /// The longer side level.
    Landscape,
}

impl PageTurn {
    /// Every way.
    pub const ALL: [Self; 3] = [Self::FewerPages, Self::Portrait, Self::Landscape];

    /// The name in job files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::FewerPages => "fewer_pages",
            Self::Portrait => "portrait",
            Self::Landscape => "landscape",
        }
    }

    /// The way of that name, in any case.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|turn| turn.name().eq_ignore_ascii_case(name))
    }
}

impl std::fmt::Display for PageTurn {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// By its name in job files.
impl Serialize for PageTurn {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

/// What the pattern is put onto, by the name it has in a job file.
///
/// ```
/// use blockwright::job::PrintTarget;
/// assert_eq!(PrintTarget::named("projector"), Some(PrintTarget::Projector));
/// assert_eq!(PrintTarget::default().name(), "paper");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum PrintTarget {
    /// Pages to be joined.
    #[default]
    Paper,
    /// A projector above the table: one page with bold lines over a grid.
    Projector,
}

impl PrintTarget {
    /// Every target.
    pub const ALL: [Self; 2] = [Self::Paper, Self::Projector];

    /// The name in job files.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Paper => "paper",
            Self::Projector => "projector",
        }
    }

    /// The target of that name, in any case.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|target| target.name().eq_ignore_ascii_case(name))
    }

    const fn is_paper(&self) -> bool {
        matches!(self, Self::Paper)
    }
}

/// By its name in job files.
impl Serialize for PrintTarget {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.name())
    }
}

/// How a job is printed.
///
/// ```
/// use blockwright::job::{PaperSize, PrintOptions};
/// let mut print = PrintOptions::default();
/// print.paper = PaperSize::Letter;
/// assert_eq!(print.margin, 12.0);
/// ```
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct PrintOptions {
    /// What the pattern is put onto: `for` in a job file.
    #[serde(rename = "for", skip_serializing_if = "PrintTarget::is_paper")]
    pub target: PrintTarget,
    /// The paper of the tiled file.
    pub paper: PaperSize,
    /// What stays blank along every edge of the paper, in mm.
    pub margin: f64,
    /// Width of the strip that neighbouring pages share, in mm.
    pub overlap: f64,
    /// Which way round the pages are.
    pub orientation: PageTurn,
    /// Whether the sizes of a nest have colours besides their dashes.
    #[serde(skip_serializing_if = "is_no")]
    pub colour: bool,
    /// Whether the letters that are used are embedded in printed files (feature `fonts`); no key of a
    /// job file.
    #[serde(skip)]
    pub embed: bool,
    /// The font for scripts that the built-in one lacks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub font: Option<JobFont>,
}

/// Left out where it is as usual.
#[expect(clippy::trivially_copy_pass_by_ref, reason = "serde asks for it")]
const fn is_no(said: &bool) -> bool {
    !*said
}

impl PrintOptions {
    /// The least and the greatest margin in mm, as the PDF writer takes them.
    pub const MARGINS: (f64, f64) = (12.0, 50.0);
    /// The least and the greatest overlap in mm, as the PDF writer takes them.
    pub const OVERLAPS: (f64, f64) = (8.0, 50.0);
}

impl Default for PrintOptions {
    fn default() -> Self {
        Self {
            target: PrintTarget::Paper,
            paper: PaperSize::A4,
            margin: 12.0,
            overlap: 10.0,
            orientation: PageTurn::FewerPages,
            colour: false,
            embed: true,
            font: None,
        }
    }
}
