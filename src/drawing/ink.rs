//! What a line is drawn with.

/// A colour: a grey or an RGB value, 0 dark to 255 light.
///
/// ```
/// use blockwright::drawing::Ink;
///
/// assert_eq!(Ink::BLACK, Ink::Grey(0));
/// assert_eq!(Ink::Rgb(255, 0, 0).rgb(), (255, 0, 0));
/// assert!(Ink::Rgb(255, 255, 255).is_white());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Ink {
    /// A grey, 0 black to 255 white. Prints with the black cartridge only.
    Grey(u8),
    /// Red, green and blue.
    Rgb(u8, u8, u8),
}

impl Ink {
    /// Black.
    pub const BLACK: Self = Self::Grey(0);
    /// White: paper. A white fill hides what lies below and counts as no content.
    pub const WHITE: Self = Self::Grey(255);

    /// The colour as red, green and blue.
    #[must_use]
    pub fn rgb(self) -> (u8, u8, u8) {
        match self {
            Self::Grey(g) => (g, g, g),
            Self::Rgb(r, g, b) => (r, g, b),
        }
    }

    /// Whether the colour is that of the paper.
    #[must_use]
    pub fn is_white(self) -> bool {
        self.rgb() == (255, 255, 255)
    }
}

/// How a path is stroked: width and dashes in millimetres, and a colour.
///
/// Ends are cut square to the path (so that a line is as long as it was drawn) and corners are
/// rounded (so that a sharp one does not overshoot).
///
/// ```
/// use blockwright::drawing::{Ink, Pen};
///
/// let seam = Pen::solid(0.5);
/// let hidden = Pen::solid(0.25).dashed(&[3.0, 1.5]).ink(Ink::Grey(96));
/// assert!(seam.dash.is_empty());
/// assert_eq!(hidden.dash, [3.0, 1.5]);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Pen {
    /// Width of the line in mm, greater than 0.
    pub width: f64,
    /// Lengths of dash, gap, dash, … in mm; empty for a solid line. None negative, not all 0.
    pub dash: Vec<f64>,
    /// Colour of the line.
    pub ink: Ink,
}

impl Pen {
    /// A solid black line of `width` mm.
    #[must_use]
    pub fn solid(width: f64) -> Self {
        Self {
            width,
            dash: Vec::new(),
            ink: Ink::BLACK,
        }
    }

    /// The same pen with dashes: lengths of dash, gap, dash, … in mm.
    #[must_use]
    pub fn dashed(mut self, dash: &[f64]) -> Self {
        self.dash = dash.to_vec();
        self
    }

    /// The same pen in another colour.
    #[must_use]
    pub fn ink(mut self, ink: Ink) -> Self {
        self.ink = ink;
        self
    }
}
