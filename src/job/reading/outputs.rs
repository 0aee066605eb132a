//! Which files are made of a job.

/// A kind of file that can be made of a job, a range or a lay.
///
/// ```
/// use blockwright::job::Output;
/// assert_eq!(Output::named("svg"), Some(Output::Svg));
/// assert_eq!(Output::Fitting.name(), "fitting");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Output {
    /// Pages for a home printer, as PDF (feature `pdf`). They take most of the time of a job.
    Pages,
    /// Everything on one sheet, as PDF (feature `pdf`).
    Sheet,
    /// The picture, as SVG.
    Svg,
    /// The pattern document; of a range also the table of increments.
    Document,
    /// The pieces for exchange, as DXF.
    Dxf,
    /// The page for the fitting. A range has none.
    Fitting,
    /// Every alteration shown on paper, a page a piece, as PDF (feature `pdf`). A range has none.
    Demonstration,
}

impl Output {
    /// Every kind, in the order in which files are named to the user.
    pub const ALL: [Self; 7] = [
        Self::Pages,
        Self::Sheet,
        Self::Svg,
        Self::Document,
        Self::Dxf,
        Self::Fitting,
        Self::Demonstration,
    ];

    /// Its name, in lower case.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Pages => "pages",
            Self::Sheet => "sheet",
            Self::Svg => "svg",
            Self::Document => "document",
            Self::Dxf => "dxf",
            Self::Fitting => "fitting",
            Self::Demonstration => "demonstration",
        }
    }

    /// The kind of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|output| output.name() == name)
    }

    const fn bit(self) -> u8 {
        1 << self as u8
    }
}

impl std::fmt::Display for Output {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// Which files are made: what is not asked for costs nothing.
///
/// ```
/// use blockwright::job::{Output, Outputs};
/// let preview = Outputs::none().with(Output::Svg);
/// assert!(!preview.has(Output::Pages) && preview.has(Output::Svg));
/// let all_but_pages = Outputs::usual().without(Output::Pages);
/// assert_eq!(all_but_pages.iter().map(Output::name).collect::<Vec<_>>(), ["sheet", "svg", "document", "fitting"]);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Outputs(u8);

impl Outputs {
    /// All but DXF and the demonstration.
    #[must_use]
    pub fn usual() -> Self {
        Output::ALL
            .into_iter()
            .filter(|output| !matches!(output, Output::Dxf | Output::Demonstration))
            .collect()
    }

    /// No file: the pattern and its report alone.
    #[must_use]
    pub const fn none() -> Self {
        Self(0)
    }

    /// These and one more.
    #[must_use]
    pub const fn with(self, output: Output) -> Self {
        Self(self.0 | output.bit())
    }

    /// These without one.
    #[must_use]
    pub const fn without(self, output: Output) -> Self {
        Self(self.0 & !output.bit())
    }

    /// Whether it is made.
    #[must_use]
    pub const fn has(self, output: Output) -> bool {
        self.0 & output.bit() != 0
    }

    /// Whether a drawing is needed for any of them.
    pub(in crate::job) const fn draw(self) -> bool {
        self.has(Output::Svg) || self.print()
    }

    /// Whether any of them is printed.
    pub(in crate::job) const fn print(self) -> bool {
        cfg!(feature = "pdf") && (self.has(Output::Pages) || self.has(Output::Sheet))
    }

    /// Those that are made, in the order in which files are named to the user.
    pub fn iter(self) -> impl Iterator<Item = Output> {
        Output::ALL
            .into_iter()
            .filter(move |output| self.has(*output))
    }
}

impl Default for Outputs {
    fn default() -> Self {
        Self::usual()
    }
}

impl FromIterator<Output> for Outputs {
    fn from_iter<I: IntoIterator<Item = Output>>(outputs: I) -> Self {
        outputs.into_iter().fold(Self::none(), Self::with)
    }
}
