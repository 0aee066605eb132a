//! What a demonstration of one piece holds.

use super::panel::Panel;
use super::rings::steps;
use super::words::mm;
use crate::geometry::{Point, Rigid, counted};
use crate::piece::{EdgeName, Piece};

/// A line along which the old piece is cut.
///
/// ```
/// use blockwright::demonstration::CutPath;
/// use blockwright::geometry::Point;
/// let cut = CutPath::along([(0.0, 40.0), (120.0, 40.0)].map(Point::from));
/// assert_eq!(cut.path.len(), 2);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct CutPath {
    /// Its corners in millimetres, as the old piece lies.
    pub path: Vec<Point>,
}

impl CutPath {
    /// A cut along a run.
    pub fn along(path: impl Into<Vec<Point>>) -> Self {
        Self { path: path.into() }
    }
}

/// What became of the paper along a cut.
///
/// ```
/// use blockwright::demonstration::OpeningKind;
/// assert!(OpeningKind::Gap.needs_paper() && !OpeningKind::Overlap.needs_paper());
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum OpeningKind {
    /// Two panels stand apart: paper is put under.
    Gap,
    /// One panel lies over another.
    Overlap,
    /// Paper is put on beyond the old edge.
    Added,
    /// Paper is cut away.
    CutOff,
}

impl OpeningKind {
    /// Whether paper has to be put there.
    #[must_use]
    pub fn needs_paper(self) -> bool {
        matches!(self, Self::Gap | Self::Added)
    }
}

/// A place where panels stand apart or overlap, or where paper is put on or cut away.
///
/// ```
/// use blockwright::demonstration::Opening;
/// fn widest(openings: &[Opening]) -> f64 { openings.iter().fold(0.0, |most, o| most.max(o.amount)) }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Opening {
    /// Which of these it is.
    pub kind: OpeningKind,
    /// Its ring in millimetres, after the panels were moved.
    pub ring: Vec<Point>,
    /// How wide it is where it is widest, in millimetres.
    pub amount: f64,
    /// Where that is.
    pub at: Point,
}

/// How far the trued outline lies from the taped panels along one edge.
///
/// ```
/// use blockwright::demonstration::Truing;
/// fn far(truing: &Truing) -> bool { truing.most > 1.0 }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Truing {
    /// The edge.
    pub edge: EdgeName,
    /// The most, in millimetres; measured square to the line.
    pub most: f64,
    /// Where on the panels or on the trued outline that is.
    pub at: Point,
}

/// An alteration of one piece shown on paper.
///
/// # Guarantees
/// The panels, with what was cut away, are the old outline: each was cut from it, none was lost.
/// Nothing of a panel changes but its place. The truing is measured from the panels as they lie.
///
/// ```
/// use blockwright::demonstration::Slash;
/// fn hinged(slash: &Slash) -> bool { !slash.hinges.is_empty() }
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Slash {
    /// The piece before.
    pub before: Piece,
    /// What was made of it: one piece, or two where a seam divides it.
    pub after: Vec<Piece>,
    /// How the altered piece lies on the panels: where a fold was drawn straight again it is
    /// turned a little.
    pub laid: Rigid,
    /// Where it is cut.
    pub cuts: Vec<CutPath>,
    /// Where the paper is not cut through, in millimetres.
    pub hinges: Vec<Point>,
    /// The panels, in the order in which they were cut.
    pub panels: Vec<Panel>,
    /// Gaps and overlaps, paper put on or cut away.
    pub openings: Vec<Opening>,
    /// How far the trued outline lies from the panels, an edge each.
    pub truing: Vec<Truing>,
    /// What is done in each of the three frames, a sentence or two each, with lengths in
    /// millimetres as [`speak`](crate::units::speak) reads them.
    pub sentences: [String; 3],
}

impl Slash {
    /// What the piece is called: as it is after, or as it was where a seam divides it.
    #[must_use]
    pub fn name(&self) -> &str {
        match self.after.as_slice() {
            [one] => one.name(),
            _ => self.before.name(),
        }
    }

    /// How far the trued outline lies from the taped panels where it is farthest, in
    /// millimetres.
    #[must_use]
    pub fn farthest(&self) -> f64 {
        let most = self.truing.iter().map(|t| t.most);
        most.fold(0.0, f64::max)
    }
}

impl Opening {
    /// How wide it is, in words: `8 mm`.
    #[must_use]
    pub fn words(&self) -> String {
        mm(self.amount)
    }
}

impl Truing {
    /// How far it is at most, in words: `1.2 mm`.
    #[must_use]
    pub fn words(&self) -> String {
        mm((self.most * 10.0).ceil() / 10.0)
    }
}

/// How long the bits are into which the leg of a dart is taken, in millimetres.
const BIT: f64 = 2.0;

impl Slash {
    /// The legs of the old darts as they lie on the moved panels, in straight parts.
    #[must_use]
    pub fn moved_darts(&self) -> Vec<(Point, Point)> {
        let mut found: Vec<(Point, Point)> = Vec::new();
        for dart in self.before.darts() {
            for (a, b) in steps(&dart.to_polyline()) {
                let bits = (a.distance(b) / BIT).ceil().max(1.0);
                let at = |k: usize| a.lerp(b, k as f64 / bits);
                let mut last: Option<usize> = None;
                for k in 0..counted(bits) {
                    let (from, to) = (at(k), at(k + 1));
                    let held = self
                        .panels
                        .iter()
                        .position(|p| p.surrounds(from.midpoint(to)));
                    let Some(panel) = held.and_then(|at| self.panels.get(at)) else {
                        last = None;
                        continue;
                    };
                    let (from, to) = (panel.motion().apply(from), panel.motion().apply(to));
                    match found.last_mut() {
                        Some(part) if last == held => part.1 = to,
                        _ => found.push((from, to)),
                    }
                    last = held;
                }
            }
        }
        found
    }
}
