//! A pattern with unlike sides as one with all its pieces: each for one side of the body.

use super::error::ToileError;
use crate::piece::{BodySide, EdgeName, EdgeRef, Pattern, PatternParts, Piece, PieceError, Seam};

/// The pattern with a left and a right one of every piece and seam that served both sides, joined down
/// the middle of back and front.
///
/// # Errors
/// [`ToileError::Unsewable`] when its parts do not hold together.
pub(super) fn both_sides(pattern: &Pattern) -> Result<Pattern, ToileError> {
    doubled(pattern).map_err(|_| ToileError::unsewable("the pattern", "middle"))
}

fn doubled(pattern: &Pattern) -> Result<Pattern, PieceError> {
    let mut pieces = Vec::new();
    for piece in pattern.pieces() {
        if piece.side().is_some() {
            pieces.push(piece.clone());
            continue;
        }
        for side in BodySide::BOTH {
            let mut parts = piece.clone().into_parts();
            parts.name = side.name_of(piece.name());
            parts.side = Some(side);
            pieces.push(Piece::new(parts)?);
        }
    }
    let is_shared = |name: &str| pattern.piece(name).is_some_and(|p| p.side().is_none());
    let mut seams: Vec<Seam> = Vec::new();
    for seam in pattern.seams() {
        let shared = seam.a.iter().chain(&seam.b).any(|e| is_shared(&e.piece));
        if !shared {
            seams.push(seam.clone());
            continue;
        }
        for side in BodySide::BOTH
            .into_iter()
            .filter(|s| seam.side.is_none_or(|of| of == *s))
        {
            let mut one = seam.clone();
            one.name = side.name_of(seam.base_name());
            one.side = Some(side);
            for edge in one.a.iter_mut().chain(&mut one.b) {
                if is_shared(&edge.piece) {
                    edge.piece = side.name_of(&edge.piece);
                }
            }
            seams.push(one);
        }
    }
    for middle in [EdgeName::CENTRE_BACK, EdgeName::CENTRE_FRONT] {
        let is_sewn = |name: &str| {
            let mut sewn = seams.iter().flat_map(|s| s.a.iter().chain(&s.b));
            sewn.any(|e| e.piece == name && e.edge == middle)
        };
        let mut joins = Vec::new();
        for left in pieces
            .iter()
            .filter(|p: &&Piece| p.side() == Some(BodySide::Left))
        {
            let other = BodySide::Right.name_of(left.base_name());
            let right = pieces.iter().find(|p| p.name() == other);
            let both = [Some(left), right];
            let has = |p: &Option<&Piece>| {
                p.is_some_and(|p| p.outline().edge(&middle).is_some() && !is_sewn(p.name()))
            };
            if both.iter().all(has) {
                joins.push(Seam::plain(
                    format!("{middle} of {}", left.base_name()),
                    EdgeRef::new(left.name(), middle.clone()),
                    EdgeRef::new(other, middle.clone()),
                ));
            }
        }
        seams.extend(joins);
    }
    Pattern::new(PatternParts {
        block: pattern.block().to_owned(),
        pieces,
        seams,
        girths: Vec::new(),
        warnings: Vec::new(),
    })
}
