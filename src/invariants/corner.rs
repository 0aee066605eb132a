//! Corners of an outline, seen from the cloth.

use crate::geometry::{Curve, Point, Vec2, angle_between};
use crate::piece::{Edge, EdgeName, Piece};
use std::f64::consts::PI;

/// Which end of an edge, in the outline's direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum End {
    Start,
    Finish,
}

impl End {
    /// The end at which a walk enters an edge: its start, unless it is walked backward.
    pub(super) fn entered(backward: bool) -> Self {
        if backward { Self::Finish } else { Self::Start }
    }

    pub(super) fn other(self) -> Self {
        match self {
            Self::Start => Self::Finish,
            Self::Finish => Self::Start,
        }
    }
}

/// A corner of an outline, at one end of an edge.
pub(super) struct Corner<'p> {
    /// Angle of the cloth in the corner, from 0 to a whole turn, in radians.
    pub angle: f64,
    /// The edge on the far side of the corner.
    pub neighbour: &'p Edge,
    pub at: Point,
}

/// Angle of the cloth between a curve and the one that runs on from its end; the cloth lies
/// clockwise of both, as it does along an outline.
pub(super) fn interior_angle(before: &Curve, after: &Curve) -> f64 {
    between(before.end_direction(), after.start_direction())
}

/// Angle of the cloth where a line that arrives in one direction leaves in another.
pub(super) fn between(arriving: Vec2, leaving: Vec2) -> f64 {
    PI - angle_between(arriving, leaving)
}

/// The corner at one end of an edge.
pub(super) fn corner<'p>(piece: &'p Piece, name: &EdgeName, end: End) -> Option<Corner<'p>> {
    let curve = piece.outline().edge(name)?.curve();
    let (before, after) = piece.outline().neighbours(name)?;
    Some(match end {
        End::Start => Corner {
            angle: interior_angle(before.curve(), curve),
            neighbour: before,
            at: curve.start(),
        },
        End::Finish => Corner {
            angle: interior_angle(curve, after.curve()),
            neighbour: after,
            at: curve.end(),
        },
    })
}
