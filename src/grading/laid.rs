//! One size of a piece where it lies in the nest.

use crate::piece::Piece;
use kurbo::Vec2;

/// One size of a piece, moved so that the aligned point is the origin.
pub(super) struct Laid<'a> {
    /// Which size of the range it is, counted from 0.
    pub number: usize,
    pub label: &'a str,
    pub piece: &'a Piece,
    pub by: Vec2,
}
