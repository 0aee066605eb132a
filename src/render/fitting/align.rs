//! How a piece before its alterations is laid over the one after.

use crate::geometry::{Curve, Point, Vec2};
use crate::piece::{EdgeName, EdgeRole, Piece};

/// What of a piece is laid on the same of the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Align {
    /// Centre and waist line.
    Waist,
    /// The neck at the centre.
    Neck,
    /// Centre and underarm line.
    Underarm,
    /// The hem at the centre.
    Hem,
    /// As the numbers stand.
    Drafted,
}

impl Align {
    /// All, the usual one first.
    pub(crate) const ALL: [Self; 5] = [
        Self::Waist,
        Self::Neck,
        Self::Underarm,
        Self::Hem,
        Self::Drafted,
    ];

    /// Name in the page's own styles.
    pub(crate) fn key(self) -> &'static str {
        match self {
            Self::Waist => "waist",
            Self::Neck => "neck",
            Self::Underarm => "underarm",
            Self::Hem => "hem",
            Self::Drafted => "drafted",
        }
    }

    /// What the reader sees named.
    pub(crate) fn label(self) -> &'static str {
        match self {
            Self::Waist => "centre and waist line",
            Self::Neck => "neck at the centre",
            Self::Underarm => "centre and underarm line",
            Self::Hem => "centre and hem",
            Self::Drafted => "as drafted",
        }
    }

    /// The place of a piece that is laid on the same place of another; nothing where the piece
    /// has none.
    fn place(self, piece: &Piece) -> Option<Point> {
        let fold = fold(piece);
        let x = fold.map_or(piece.grain()[0].x, |fold| fold.start().x);
        let near = |curve: &Curve| {
            let (start, end) = (curve.start(), curve.end());
            let end_is_nearer = (end.x - x).abs() < (start.x - x).abs();
            Point::new(x, if end_is_nearer { end.y } else { start.y })
        };
        let line = |name: &str| piece.line(name).map(|line| near(&line.curve));
        let edge = |name: &EdgeName| piece.outline().edge(name).map(|edge| near(edge.curve()));
        let ends = fold.map(|fold| {
            let (a, b) = (fold.start().y, fold.end().y);
            (a.min(b), a.max(b))
        });
        let bounds = piece.outline().bounds();
        match self {
            Self::Waist => line("waist").or_else(|| edge(&EdgeName::WAIST)),
            Self::Neck => Some(Point::new(x, ends.map_or(bounds.y0, |e| e.0))),
            Self::Underarm => line("underarm"),
            Self::Hem => Some(Point::new(x, ends.map_or(bounds.y1, |e| e.1))),
            Self::Drafted => Some(Point::ORIGIN),
        }
    }

    /// By how much the piece before is shifted; a piece that has no such place is laid on its
    /// first balance line, or stays as drafted.
    pub(crate) fn shift(self, before: &Piece, after: &Piece) -> Vec2 {
        if let (Some(from), Some(to)) = (self.place(before), self.place(after)) {
            let apart = to - from;
            // A panel or a half of its own lies where it lay in the whole.
            return if fold(before).is_some() == fold(after).is_some() {
                apart
            } else {
                Vec2::new(0.0, apart.y)
            };
        }
        let first = |piece: &Piece| piece.lines().first().map(|line| line.curve.start().y);
        match (first(before), first(after)) {
            (Some(from), Some(to)) => Vec2::new(0.0, to - from),
            _ => Vec2::ZERO,
        }
    }
}

/// The edge on the fold.
fn fold(piece: &Piece) -> Option<&Curve> {
    piece
        .outline()
        .edges()
        .iter()
        .find(|edge| edge.role() == EdgeRole::Fold)
        .map(|edge| edge.curve())
}
