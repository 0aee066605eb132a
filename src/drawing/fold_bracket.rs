//! The bracket beside a fold.

use kurbo::{BezPath, Point};

use super::beside::write_beside;
use super::room::Room;
use super::strokes::{arrow_head, stroke};
use super::{Face, Text, TextStyle};
use crate::geometry::{Curve, perpendicular};

/// Distance of the bracket from the fold.
const BRACKET: f64 = 7.0;

/// A bracket beside the fold whose arrows point at it.
pub(crate) struct FoldBracket {
    /// Its line, to be stroked.
    pub line: BezPath,
    /// Its arrow heads, to be filled.
    pub heads: [BezPath; 2],
    /// Where its arrows touch the fold.
    pub tips: [Point; 2],
    long: [Point; 2],
}

impl FoldBracket {
    /// The bracket of a fold edge, whose inside lies clockwise of its direction.
    pub fn of(fold: &Curve) -> Self {
        let (from, to) = (fold.start(), fold.end());
        let along = (to - from).normalize();
        let inward = perpendicular(along);
        let inset = (from.distance(to) * 0.12).min(60.0);
        let (low, high) = (from + along * inset, to - along * inset);
        let long = [low + inward * BRACKET, high + inward * BRACKET];
        Self {
            line: stroke(&[low, long[0], long[1], high]),
            heads: [low, high].map(|tip| arrow_head(tip, -inward, 4.0)),
            tips: [low, high],
            long,
        }
    }

    /// Keeps words off the bracket.
    pub fn take(&self, room: &mut Room) {
        room.take_stroke(&self.line);
        for head in &self.heads {
            room.take_stroke(head);
        }
    }

    /// What it means, beside it, if there is room.
    pub fn words(&self, room: &mut Room) -> Option<Text> {
        let line = Curve::line(self.long[0], self.long[1]).ok()?;
        let style = TextStyle::new(Face::Regular, 3.6);
        write_beside(room, &[line], FOLD_WORDS, style, 0.5)
    }
}

/// What a fold bracket means.
pub(crate) const FOLD_WORDS: &str = "place on the fold";
