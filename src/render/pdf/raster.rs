//! A part's ink on small squares, so that it can be asked quickly which pages a place needs.
#![expect(
    clippy::indexing_slicing,
    reason = "a cell lies in the rows and columns that the grid was made for"
)]

use crate::geometry::counted;
use std::collections::BTreeMap;

use kurbo::{Rect, Size};

use super::coverage::Coverage;
use super::page_shape::PageShape;

/// Fine cells in the side of a cell of the lattice.
const FINE: usize = 4;

/// The places at which parts may lie: so many a page.
#[derive(Debug, Clone, Copy)]
pub(super) struct Lattice {
    /// Cells in the width of a page.
    pub(super) across: usize,
    /// Cells in the height of a page.
    pub(super) down: usize,
    /// The size of a cell in mm.
    pub(super) cell: Size,
    /// The strip that pages share, in fine cells, rounded down.
    strip: (usize, usize),
}

impl Lattice {
    /// Cells nearly square, and so many in the width of a page.
    pub(super) fn new(shape: &PageShape, across: usize) -> Self {
        let width = shape.pitch.width / across as f64;
        let down = (shape.pitch.height / width).round().max(1.0);
        let cell = Size::new(width, shape.pitch.height / down);
        let fine = |side: f64| counted(shape.overlap * FINE as f64 / side);
        Self {
            across,
            down: counted(down),
            cell,
            strip: (fine(cell.width), fine(cell.height)),
        }
    }
}

/// The pages that a part needs, a bit a page, a number a row.
pub(super) type Pages = Vec<u32>;

/// A part one way round: where it has ink, from the corner of its box.
pub(super) struct Raster {
    /// Inked fine cells above and to the left of every corner.
    sums: Vec<u32>,
    width: usize,
    height: usize,
    /// The part's cells on the lattice, a bit a cell, a number a row: all that lie between its
    /// ink, both across and down.
    pub(super) hull: Vec<u128>,
    /// How many cells wide it is.
    pub(super) columns: usize,
}

impl Raster {
    /// The ink within a box; none if it is wider than the lattice's rows can be.
    pub(super) fn new(ink: &Coverage, bounds: Rect, lattice: &Lattice) -> Option<Self> {
        let fine = lattice.cell / FINE as f64;
        let count = |long: f64, side: f64| counted((long / side - 1e-9).ceil()).max(1);
        let width = count(bounds.width(), fine.width);
        let height = count(bounds.height(), fine.height);
        let (columns, rows) = (width.div_ceil(FINE), height.div_ceil(FINE));
        if columns > 120 || rows > 4000 {
            return None;
        }
        let mut inked = vec![false; width * height];
        ink.spans(bounds.y0, fine.height, |row, from, to| {
            let column = |x: f64| counted((x - bounds.x0) / fine.width);
            let (from, to) = (column(from).min(width - 1), column(to).min(width - 1));
            let start = row.min(height - 1) * width;
            inked[start + from..=start + to].fill(true);
        });
        let mut sums = vec![0; (width + 1) * (height + 1)];
        for row in 0..height {
            let mut along = 0;
            for column in 0..width {
                along += u32::from(inked[row * width + column]);
                sums[(row + 1) * (width + 1) + column + 1] =
                    sums[row * (width + 1) + column + 1] + along;
            }
        }
        let mut all = Self {
            sums,
            width,
            height,
            hull: Vec::new(),
            columns,
        };
        all.hull = all.enclosed(columns, rows);
        Some(all)
    }

    fn has_ink(&self, x: (usize, usize), y: (usize, usize)) -> bool {
        let (x0, x1) = (x.0.min(self.width), x.1.min(self.width));
        let (y0, y1) = (y.0.min(self.height), y.1.min(self.height));
        if x0 >= x1 || y0 >= y1 {
            return false;
        }
        let sum = |x: usize, y: usize| self.sums[y * (self.width + 1) + x];
        sum(x1, y1) + sum(x0, y0) > sum(x0, y1) + sum(x1, y0)
    }

    /// All cells that have ink on both sides and above and below, or are inked.
    fn enclosed(&self, columns: usize, rows: usize) -> Vec<u128> {
        let inked = |column: usize, row: usize| {
            self.has_ink(
                (column * FINE, (column + 1) * FINE),
                (row * FINE, (row + 1) * FINE),
            )
        };
        let mut across = vec![0_u128; rows];
        let mut ends = vec![(rows, 0); columns];
        for (row, bits) in across.iter_mut().enumerate() {
            for (column, end) in ends.iter_mut().enumerate() {
                if inked(column, row) {
                    *bits |= 1 << column;
                    *end = (end.0.min(row), end.1.max(row));
                }
            }
            if *bits != 0 {
                let (first, last) = (bits.trailing_zeros(), 127 - bits.leading_zeros());
                *bits = (u128::MAX >> (127 - last)) & (u128::MAX << first);
            }
        }
        for (row, bits) in across.iter_mut().enumerate() {
            for (column, &(first, last)) in ends.iter().enumerate() {
                if row < first || row > last {
                    *bits &= !(1 << column);
                }
            }
        }
        across
    }

    /// The pages that the part needs with the corner of its box at each cell of a page; places
    /// that need the same pages together.
    pub(super) fn pages(&self, lattice: &Lattice) -> BTreeMap<Pages, Vec<(usize, usize)>> {
        let mut found: BTreeMap<Pages, Vec<(usize, usize)>> = BTreeMap::new();
        for down in 0..lattice.down {
            for across in 0..lattice.across {
                let pages = self.pages_at(lattice, across * FINE, down * FINE);
                found.entry(pages).or_default().push((across, down));
            }
        }
        found
    }

    /// As for a drawing: a page that would show only what is on the strip of the page before it or
    /// above it is left out.
    fn pages_at(&self, lattice: &Lattice, x: usize, y: usize) -> Pages {
        let (wide, high) = (lattice.across * FINE, lattice.down * FINE);
        let (columns, rows) = (
            (x + self.width).div_ceil(wide),
            (y + self.height).div_ceil(high),
        );
        let mut pages: Pages = Vec::with_capacity(rows);
        for row in 0..rows {
            let mut bits = 0_u32;
            for column in 0..columns.min(32) {
                let left = column > 0 && bits & (1 << (column - 1)) != 0;
                let above = pages.last().is_some_and(|above| above & (1 << column) != 0);
                let from = |start: usize, at: usize, shown: bool, strip: usize| {
                    (start + if shown { strip } else { 0 }).saturating_sub(at)
                };
                let inked = self.has_ink(
                    (
                        from(column * wide, x, left, lattice.strip.0),
                        ((column + 1) * wide).saturating_sub(x),
                    ),
                    (
                        from(row * high, y, above, lattice.strip.1),
                        ((row + 1) * high).saturating_sub(y),
                    ),
                );
                bits |= u32::from(inked) << column;
            }
            pages.push(bits);
        }
        while pages.last() == Some(&0) {
            pages.pop();
        }
        pages
    }
}
