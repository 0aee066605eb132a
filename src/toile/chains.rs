//! Which panels lie round the body, and in which order.

#![expect(
    clippy::indexing_slicing,
    reason = "panels are numbered by the garment"
)]

use super::garment::Garment;
use crate::piece::{BodySide, EdgeName};

/// Panels of one storey and one side of the body, from the middle of the back to that of the front.
#[derive(Debug, Clone)]
pub(super) struct Chain {
    /// Those before the side seam.
    pub back: Vec<usize>,
    /// Those past it; the one at the middle of the front comes first.
    pub front: Vec<usize>,
    pub side: Option<BodySide>,
}

/// Panels round the body from the middle of the back to that of the front, in back and front.
pub(super) fn chains(garment: &Garment) -> Vec<Chain> {
    let mut chains = Vec::new();
    let has = |p: usize, name: &EdgeName| garment.panels[p].edges.iter().any(|(n, _, _)| n == name);
    for start in 0..garment.panels.len() {
        if !has(start, &EdgeName::CENTRE_BACK) {
            continue;
        }
        let side = garment.panels[start].side;
        let (mut back, mut front) = (vec![start], Vec::new());
        let mut at = start;
        let mut seen = vec![start];
        let mut past_side = false;
        while let Some((next, by_side)) = garment.beside.iter().find_map(|(a, b, by_side)| {
            let other = if *a == at {
                *b
            } else if *b == at {
                *a
            } else {
                return None;
            };
            (!seen.contains(&other) && garment.panels[other].side == side)
                .then_some((other, *by_side))
        }) {
            past_side |= by_side;
            if past_side {
                front.push(next)
            } else {
                back.push(next)
            }
            seen.push(next);
            at = next;
        }
        front.reverse();
        chains.push(Chain { back, front, side });
    }
    chains
}
