//! A drawing that was cut into pages, with all that pages are drawn from.

use kurbo::{Affine, BezPath};

use crate::drawing::{Drawing, Placement, SheetPart};

use super::coverage::Coverage;
use super::grid::Grid;
use super::plan::TilePlan;

/// A drawing and how it was cut into pages.
pub(super) struct Tiling<'a> {
    pub(super) drawing: &'a Drawing,
    pub(super) coverage: &'a Coverage,
    pub(super) plan: &'a TilePlan,
    pub(super) grid: &'a Grid,
    /// The parts of the drawing; empty where it is not known of which parts it is.
    pub(super) outlined: &'a [Outlined],
}

/// A part of the pattern as it lies on the pages: its outline in mm of the drawing, and its name.
pub(super) struct Outlined {
    pub(super) name: String,
    pub(super) outlines: Vec<BezPath>,
}

impl Outlined {
    /// The parts where they are placed; none if one of them has no outline.
    pub(super) fn all(parts: &[SheetPart], placements: &[Placement]) -> Vec<Self> {
        if parts.iter().any(|part| part.outlines.is_empty()) {
            return Vec::new();
        }
        let laid = |(part, placement): (&SheetPart, &Placement)| {
            let turn = Affine::scale(if placement.turned { -1.0 } else { 1.0 });
            let motion = Affine::translate(placement.by) * turn;
            let outlines = part.outlines.iter();
            Self {
                name: part.name.to_uppercase(),
                outlines: outlines.map(|path| motion * path.clone()).collect(),
            }
        };
        parts.iter().zip(placements).map(laid).collect()
    }
}
