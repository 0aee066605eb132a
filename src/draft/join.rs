//! Bodice and skirt as one pattern, sewn at the waist.

use super::{Block, DraftError};
use crate::piece::{EdgeName, EdgeRef, Pattern, PatternParts, Piece, Seam};

/// Joins a bodice and a skirt: their pieces are named apart and a waist seam is added for the
/// back and the front quarter.
pub(super) fn join_at_waist(bodice: Pattern, skirt: Pattern) -> Result<Pattern, DraftError> {
    let (mut upper, mut lower) = (renamed(bodice)?, renamed(skirt)?);
    // The waist is measured on both; under its own name on the skirt.
    for girth in &mut lower.girths {
        if upper.girths.iter().any(|g| g.name == girth.name) {
            girth.name = format!("skirt_{}", girth.name);
        }
    }
    // The bodice's outline reaches its waist from the side, the skirt's from the fold.
    let waist = |side: &str| {
        Seam::plain(
            format!("{side} waist"),
            EdgeRef::against(format!("bodice {side}"), EdgeName::WAIST),
            EdgeRef::new(format!("skirt {side}"), EdgeName::WAIST),
        )
    };
    upper.block = Block::BodiceAndSkirt.name().to_owned();
    upper.pieces.append(&mut lower.pieces);
    upper.seams.append(&mut lower.seams);
    upper.seams.extend([waist("back"), waist("front")]);
    upper.girths.append(&mut lower.girths);
    upper.warnings.append(&mut lower.warnings);
    Ok(Pattern::new(upper)?)
}

/// The parts with the block's name before every piece and seam.
fn renamed(pattern: Pattern) -> Result<PatternParts, DraftError> {
    let mut parts = pattern.into_parts();
    let block = parts.block.clone();
    let with_block = |name: &mut String| *name = format!("{block} {name}");
    let mut pieces = Vec::with_capacity(parts.pieces.len());
    for piece in parts.pieces {
        let mut piece_parts = piece.into_parts();
        with_block(&mut piece_parts.name);
        pieces.push(Piece::new(piece_parts)?);
    }
    parts.pieces = pieces;
    for seam in &mut parts.seams {
        with_block(&mut seam.name);
        seam.a
            .iter_mut()
            .chain(&mut seam.b)
            .for_each(|edge| with_block(&mut edge.piece));
    }
    for run in parts.girths.iter_mut().flat_map(|g| &mut g.runs) {
        with_block(&mut run.piece);
    }
    Ok(parts)
}
