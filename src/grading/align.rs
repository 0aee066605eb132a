//! On which point the sizes of a piece are laid over one another.

use super::points::named_points;
use crate::geometry::Point;
use crate::piece::Piece;

/// The point on which the sizes of a piece are laid over one another. A piece that has it not
/// is laid on the waist at the centre, a sleeve on its cap line below the top of the cap.
///
/// ```
/// use blockwright::grading::Align;
/// assert_eq!(Align::named("hem_centre"), Some(Align::HemCentre));
/// assert_eq!(Align::default().name(), "waist_centre");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[non_exhaustive]
pub enum Align {
    /// The waist at the centre: lengths grow up and down from it, girths sideways.
    #[default]
    WaistCentre,
    /// The nape; on a front the neck point at the centre.
    Nape,
    /// The top of the side seam.
    Underarm,
    /// The hem at the centre.
    HemCentre,
}

impl Align {
    /// Every point.
    pub const ALL: [Self; 4] = [
        Self::WaistCentre,
        Self::Nape,
        Self::Underarm,
        Self::HemCentre,
    ];

    /// The name in commands.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::WaistCentre => "waist_centre",
            Self::Nape => "nape",
            Self::Underarm => "underarm",
            Self::HemCentre => "hem_centre",
        }
    }

    /// The point of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|align| align.name() == name)
    }

    /// Where it is on a piece.
    pub(super) fn on(self, piece: &Piece) -> Point {
        let points = named_points(piece);
        let find = |name: &str| points.iter().find(|(n, _)| n == name).map(|(_, p)| *p);
        let wanted: &[&str] = match self {
            Self::WaistCentre => &[],
            Self::Nape => &["nape", "front neck point"],
            Self::Underarm => &["underarm"],
            Self::HemCentre => &["hem centre"],
        };
        let sleeve = || {
            let line = &piece.line("biceps")?.curve;
            Some(Point::new(find("cap top")?.x, line.start().y))
        };
        wanted
            .iter()
            .find_map(|name| find(name))
            .or_else(|| find("waist centre"))
            .or_else(sleeve)
            .or_else(|| piece.line("waist").map(|line| line.curve.start()))
            .unwrap_or_else(|| piece.outline().bounds().origin())
    }
}

impl std::fmt::Display for Align {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}
