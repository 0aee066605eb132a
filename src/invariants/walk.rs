//! One side of a seam, walked from the seam's start with its darts closed.

use super::corner::End;
use crate::piece::{Edge, EdgeRef, Pattern, Piece, Seam};

/// One edge of the walk.
pub(super) struct Step<'p> {
    pub piece: &'p Piece,
    pub edge: &'p Edge,
    /// Sewn length of the edge, in millimetres.
    pub length: f64,
    /// Sewn length walked before it, in millimetres.
    pub before: f64,
    /// Whether it is walked against the outline's direction.
    pub backward: bool,
}

impl Step<'_> {
    /// How far from the seam's start a place on the open edge comes to lie.
    pub(super) fn walked_to(&self, at: f64) -> f64 {
        let sewn = self.piece.sewn_position(self.edge.name(), at);
        self.before
            + if self.backward {
                self.length - sewn
            } else {
                sewn
            }
    }

    /// The end of the edge at which the walk enters it.
    pub(super) fn entered(&self) -> End {
        End::entered(self.backward)
    }

    pub(super) fn edge_ref(&self) -> EdgeRef {
        EdgeRef::new(self.piece.name(), self.edge.name().clone())
    }
}

/// One side of a seam.
pub(super) struct Walk<'p> {
    pub steps: Vec<Step<'p>>,
    /// Sewn length of the whole side, in millimetres.
    pub length: f64,
}

/// Both sides of a seam, `a` first.
pub(super) fn sides<'p>(pattern: &'p Pattern, seam: &Seam) -> [Walk<'p>; 2] {
    [walk(pattern, &seam.a), walk(pattern, &seam.b)]
}

fn walk<'p>(pattern: &'p Pattern, edges: &[EdgeRef]) -> Walk<'p> {
    let mut walk = Walk {
        steps: Vec::with_capacity(edges.len()),
        length: 0.0,
    };
    for of in edges {
        let Some(piece) = pattern.piece(&of.piece) else {
            continue;
        };
        let Some(edge) = piece.outline().edge(&of.edge) else {
            continue;
        };
        let length = piece.seam_length(&of.edge).unwrap_or(0.0);
        walk.steps.push(Step {
            piece,
            edge,
            length,
            before: walk.length,
            backward: of.against,
        });
        walk.length += length;
    }
    walk
}
