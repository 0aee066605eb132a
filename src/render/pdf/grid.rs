//! The grid that cuts the drawing into pages, before it is known which of them are needed.

use kurbo::{Point, Rect, Size, Vec2};

/// The height at the foot of every page kept for its label and scale bar, in mm.
pub(super) const FOOTER: f64 = 10.0;

/// A grid laid over the drawing: the corner of its first cell and the size of a cell, in mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Grid {
    pub(super) origin: Point,
    pub(super) pitch: Size,
    pub(super) overlap: f64,
}

impl Grid {
    pub(super) fn cell(&self, row: usize, column: usize) -> Rect {
        let (row, column) = (row as f64, column as f64);
        let at = Vec2::new(column * self.pitch.width, row * self.pitch.height);
        Rect::from_origin_size(self.origin + at, self.pitch)
    }
}
