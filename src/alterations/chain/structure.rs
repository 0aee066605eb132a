//! What a pattern consists of by name, and what an alteration declares to remove or add.

use super::halves::{are_unlike, joins_sides};
use crate::explain::Explain;
use crate::piece::{BodySide, Cut, EdgeName, EdgeRef, Pattern, Piece};
use std::fmt;
use thiserror::Error;

/// A named part of a pattern; pieces, seams and girths by what they are called where both sides
/// are alike.
///
/// ```
/// use blockwright::alterations::Part;
/// assert_eq!(Part::dart("front", "bust").to_string(), "the bust dart of the front");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Part {
    /// A piece with everything on it.
    Piece(String),
    /// How a piece is cut where both sides are alike: on the fold, as a pair.
    Cut(String, Cut),
    /// An edge of a piece: piece, edge.
    Edge(String, EdgeName),
    /// A dart: piece, dart.
    Dart(String, String),
    /// A notch: piece, notch.
    Notch(String, String),
    /// A balance line: piece, line.
    Line(String, String),
    /// A named point: piece, point.
    Point(String, String),
    /// A seam.
    Seam(String),
    /// An edge of a piece in a seam: seam, piece, edge.
    InSeam(String, String, EdgeName),
    /// A girth.
    Girth(String),
}

impl Part {
    /// The piece of that name.
    #[must_use]
    pub fn piece(name: impl Into<String>) -> Self {
        Self::Piece(name.into())
    }

    /// A dart of a piece.
    #[must_use]
    pub fn dart(piece: impl Into<String>, dart: impl Into<String>) -> Self {
        Self::Dart(piece.into(), dart.into())
    }

    /// A notch of a piece.
    #[must_use]
    pub fn notch(piece: impl Into<String>, notch: impl Into<String>) -> Self {
        Self::Notch(piece.into(), notch.into())
    }

    /// The seam of that name.
    #[must_use]
    pub fn seam(name: impl Into<String>) -> Self {
        Self::Seam(name.into())
    }

    /// The piece it is on, or whose edge it names.
    fn on(&self) -> Option<&str> {
        match self {
            Self::Piece(piece)
            | Self::Cut(piece, _)
            | Self::Edge(piece, _)
            | Self::Dart(piece, _)
            | Self::Notch(piece, _)
            | Self::Line(piece, _)
            | Self::Point(piece, _)
            | Self::InSeam(_, piece, _) => Some(piece),
            Self::Seam(_) | Self::Girth(_) => None,
        }
    }

    /// Whether it comes and goes with another part: what is on a piece with the piece, an edge in
    /// a seam with the seam too.
    fn belongs_to(&self, whole: &Self) -> bool {
        match whole {
            Self::Piece(piece) => self.on() == Some(piece),
            Self::Seam(seam) => matches!(self, Self::InSeam(of, ..) if of == seam),
            _ => false,
        }
    }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Piece(name) => write!(f, "the piece {name}"),
            Self::Cut(piece, cut) => write!(f, "the instruction `{}` of the {piece}", cut.words()),
            Self::Edge(piece, edge) => write!(f, "the {edge} edge of the {piece}"),
            Self::Dart(piece, dart) => write!(f, "the {dart} dart of the {piece}"),
            Self::Notch(piece, notch) => write!(f, "the {notch} notch of the {piece}"),
            Self::Line(piece, line) => write!(f, "the {line} line of the {piece}"),
            Self::Point(piece, point) => write!(f, "the point {point} of the {piece}"),
            Self::Seam(name) => write!(f, "the seam {name}"),
            Self::InSeam(seam, piece, edge) => write!(f, "the {piece} {edge} in the seam {seam}"),
            Self::Girth(name) => write!(f, "the girth {name}"),
        }
    }
}

/// What an alteration may remove from a pattern and add to it. By default nothing: pieces, edges,
/// darts, notches, lines, points, seams and girths survive by name.
///
/// What is declared may happen and need not. A piece takes everything on it along.
///
/// ```
/// use blockwright::alterations::{Part, StructureChange};
/// let merged = StructureChange::none().removes(Part::dart("front", "bust"));
/// assert_ne!(merged, StructureChange::none());
/// ```
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct StructureChange {
    removed: Vec<Declared>,
    added: Vec<Declared>,
}

/// A part, on one side of the body or on both.
type Declared = (Part, Option<BodySide>);

impl StructureChange {
    /// Everything stays, nothing is added.
    #[must_use]
    pub fn none() -> Self {
        Self::default()
    }

    /// A part may be removed.
    #[must_use]
    pub fn removes(mut self, part: Part) -> Self {
        self.removed.push((part, None));
        self
    }

    /// A part may be added.
    #[must_use]
    pub fn adds(mut self, part: Part) -> Self {
        self.added.push((part, None));
        self
    }

    /// The same on one side of the body only.
    pub(in crate::alterations) fn on(mut self, side: BodySide) -> Self {
        for (_, of) in self.removed.iter_mut().chain(&mut self.added) {
            *of = Some(side);
        }
        self
    }

    /// Both together.
    pub(in crate::alterations) fn and(mut self, other: Self) -> Self {
        self.removed.extend(other.removed);
        self.added.extend(other.added);
        self
    }

    /// Compares a pattern with what became of it.
    ///
    /// # Errors
    /// [`Undeclared`] names the first part that is gone or new without having been declared.
    pub(in crate::alterations) fn check(
        &self,
        before: &Pattern,
        after: &Pattern,
    ) -> Result<(), Undeclared> {
        let alike = !are_unlike(before) && !are_unlike(after);
        let sides = if alike {
            &BodySide::BOTH[..1]
        } else {
            &BodySide::BOTH[..]
        };
        for side in sides {
            let (old, new) = (parts_on(before, *side), parts_on(after, *side));
            let shown = (!alike).then_some(*side);
            if let Some(part) = missing(&old, &new, &self.removed, *side) {
                return Err(Undeclared::Removed { part, side: shown });
            }
            if let Some(part) = missing(&new, &old, &self.added, *side) {
                return Err(Undeclared::Added { part, side: shown });
            }
        }
        Ok(())
    }
}

/// The first of `these` that is not among `those` and was not declared.
fn missing(these: &[Part], those: &[Part], declared: &[Declared], on: BodySide) -> Option<Part> {
    let declared: Vec<&Part> = declared
        .iter()
        .filter(|(_, side)| side.is_none_or(|side| side == on))
        .map(|(part, _)| part)
        .collect();
    let mut left: Vec<&Part> = those.iter().collect();
    for part in these {
        if let Some(at) = left.iter().position(|p| *p == part) {
            left.swap_remove(at);
        } else if !declared.iter().any(|d| *d == part || part.belongs_to(d)) {
            return Some(part.clone());
        }
    }
    None
}

/// Everything that one side of a pattern consists of.
fn parts_on(pattern: &Pattern, side: BodySide) -> Vec<Part> {
    let mine = |of: Option<BodySide>| of.is_none_or(|of| of == side);
    let mut found = Vec::new();
    for piece in pattern.pieces().iter().filter(|p| mine(p.side())) {
        parts_of(piece, &mut found);
        let name = piece.base_name().to_owned();
        found.push(Part::Cut(name, cut_when_alike(pattern, piece)));
    }
    for seam in pattern.seams().iter().filter(|s| mine(s.side)) {
        // What holds left and right together is there as long as they are unlike.
        if joins_sides(pattern, seam) {
            continue;
        }
        let name = seam.base_name().to_owned();
        found.push(Part::Seam(name.clone()));
        for EdgeRef { piece, edge, .. } in seam.a.iter().chain(&seam.b) {
            let base = pattern
                .piece(piece)
                .map_or(piece.as_str(), Piece::base_name);
            found.push(Part::InSeam(name.clone(), base.to_owned(), edge.clone()));
        }
    }
    let girths = pattern.girths().iter().filter(|g| mine(g.side));
    found.extend(girths.map(|g| Part::Girth(g.base_name().to_owned())));
    found
}

/// How a piece would be cut if both sides were like its own.
fn cut_when_alike(pattern: &Pattern, piece: &Piece) -> Cut {
    if piece.side().is_none() {
        return piece.cut();
    }
    let touches = |e: &EdgeRef| e.piece == piece.name();
    let in_middle = pattern
        .seams()
        .iter()
        .any(|seam| seam.a.iter().chain(&seam.b).any(touches) && joins_sides(pattern, seam));
    if in_middle { Cut::Fold } else { Cut::Pair }
}

fn parts_of(piece: &Piece, found: &mut Vec<Part>) {
    let name = || piece.base_name().to_owned();
    found.push(Part::Piece(name()));
    let edges = piece.outline().edges().iter();
    found.extend(edges.map(|e| Part::Edge(name(), e.name().clone())));
    found.extend(piece.darts().iter().map(|d| Part::dart(name(), &d.name)));
    found.extend(piece.notches().iter().map(|n| Part::notch(name(), &n.name)));
    let lines = piece.lines().iter();
    found.extend(lines.map(|l| Part::Line(name(), l.name.clone())));
    let points = piece.points().iter();
    found.extend(points.map(|p| Part::Point(name(), p.name.clone())));
}

/// A part that came or went without having been declared.
///
/// ```
/// use blockwright::alterations::{Part, Undeclared};
/// let lost = Undeclared::Removed { part: Part::piece("sleeve"), side: None };
/// assert_eq!(lost.to_string(), "it removes the piece sleeve without declaring so");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[non_exhaustive]
pub enum Undeclared {
    /// A part is gone.
    #[error("it removes {part}{} without declaring so", on_side(*side))]
    Removed {
        /// The part.
        part: Part,
        /// The side of the body, where left and right are unlike.
        side: Option<BodySide>,
    },
    /// A part is new.
    #[error("it adds {part}{} without declaring so", on_side(*side))]
    Added {
        /// The part.
        part: Part,
        /// The side of the body, where left and right are unlike.
        side: Option<BodySide>,
    },
}

fn on_side(side: Option<BodySide>) -> String {
    side.map_or_else(String::new, |side| format!(" on the {side}"))
}

impl Explain for Undeclared {
    fn code(&self) -> String {
        "undeclared_change".to_owned()
    }

    fn place(&self) -> Option<String> {
        let (Self::Removed { part, side } | Self::Added { part, side }) = self;
        Some(format!("{part}{}", on_side(*side)))
    }

    fn cure(&self) -> String {
        "declare in the alteration's structure what it removes and adds".to_owned()
    }
}
