//! Where the drawing leaves ink, so that no page is printed without any.
#![expect(
    clippy::indexing_slicing,
    reason = "a part of the picture lies in the rows and columns that it was made for"
)]

use std::collections::BTreeMap;

use kurbo::{Affine, BezPath, ParamCurve as _, Point, Rect, Shape as _};

use crate::drawing::{Drawing, DrawnPath, Item, Placement};
use crate::geometry::counted;

use super::PdfError;
use super::grid::Grid;

/// How far a curve may run from the chords that stand for it, in mm: far below the width of a
/// line.
const FLATNESS: f64 = 0.05;

/// Ink that reaches less than this into a page, in mm, is not seen there: no printer shows it.
const UNSEEN: f64 = 0.01;

/// The ink of a drawing, as chords and filled paths.
pub(super) struct Coverage {
    chords: Vec<Chord>,
    fills: Vec<BezPath>,
}

/// A straight piece of a line, and half the line's width.
#[derive(Clone, Copy)]
struct Chord {
    a: Point,
    b: Point,
    half: f64,
}

/// Whether a cell shows ink in each of the parts of it that its left and upper neighbour may not
/// already show; indexed by [`part`].
type Parts = [bool; 4];

fn part(left_shown: bool, top_shown: bool) -> usize {
    usize::from(left_shown) + 2 * usize::from(top_shown)
}

impl Coverage {
    pub(super) fn new(drawing: &Drawing) -> Self {
        let mut all = Self {
            chords: Vec::new(),
            fills: Vec::new(),
        };
        let shown = drawing.layers().iter().filter(|layer| !layer.hidden);
        for item in shown.flat_map(|layer| &layer.items) {
            match item {
                Item::Path(figure) if figure.leaves_ink() => all.figure(figure),
                Item::Text(text) if text.leaves_ink() => {
                    let outline = text.outline();
                    all.path(&outline, 0.0);
                    all.fills.push(outline);
                }
                _ => {}
            }
        }
        all
    }

    fn figure(&mut self, figure: &DrawnPath) {
        let inked = |pen: &&crate::drawing::Pen| !pen.ink.is_white();
        let half = figure.pen.as_ref().filter(inked).map(|pen| pen.width / 2.0);
        let filled = figure.fill.is_some_and(|fill| !fill.is_white());
        if half.is_some() || filled {
            self.path(&figure.path, half.unwrap_or(0.0));
        }
        if filled {
            self.fills.push(figure.path.clone());
        }
    }

    fn path(&mut self, path: &BezPath, half: f64) {
        let mut flat = BezPath::new();
        kurbo::flatten(path, FLATNESS, |el| flat.push(el));
        let chords = flat.segments().map(|chord| Chord {
            a: chord.start(),
            b: chord.end(),
            half,
        });
        self.chords.extend(chords);
    }

    /// The cells of a grid, by row and column, that must be printed for all ink to be seen: a cell
    /// is left out when it has none, or when all it has is on the overlap of the page before it
    /// or above it.
    pub(super) fn pages(&self, grid: &Grid, limit: usize) -> Result<Vec<(usize, usize)>, PdfError> {
        // A cell without a page can only lie beside or below one with a page.
        let most = limit * 4;
        let too_many = PdfError::TooManyPages { limit: limit + 1 };
        let mut cells: BTreeMap<(usize, usize), Parts> = BTreeMap::new();
        for chord in &self.chords {
            let reach = chord.bounds();
            let (first, last) = grid.rows(reach.y0, reach.y1);
            let (left, right) = grid.columns(reach.x0, reach.x1);
            // Most chords lie in one cell, and most such cells are known to be needed.
            if (first, left) == (last, right) && cells.get(&(first, left)) == Some(&[true; 4]) {
                continue;
            }
            for row in first..=last {
                let band = grid.cell(row, 0);
                let Some((x0, x1)) = chord.across(band.y0, band.y1) else {
                    continue;
                };
                let (left, right) = grid.columns(x0, x1);
                for column in left..=right {
                    mark(&mut cells, grid, (row, column), |rect| chord.touches(rect));
                    if cells.len() > most {
                        return Err(too_many);
                    }
                }
            }
        }
        for fill in &self.fills {
            let reach = fill.bounding_box();
            let (first, last) = grid.rows(reach.y0, reach.y1);
            let (left, right) = grid.columns(reach.x0, reach.x1);
            if (last - first + 1).saturating_mul(right - left + 1) > most {
                return Err(too_many);
            }
            for row in first..=last {
                for column in left..=right {
                    // Where no edge of the fill passes, one point stands for all.
                    mark(&mut cells, grid, (row, column), |rect| {
                        fill.winding(rect.center()) != 0
                    });
                }
            }
        }
        let mut kept: Vec<(usize, usize)> = Vec::new();
        for (&(row, column), parts) in &cells {
            let has = |place: Option<(usize, usize)>| {
                place.is_some_and(|place| kept.binary_search(&place).is_ok())
            };
            let left = has(column.checked_sub(1).map(|column| (row, column)));
            let top = has(row.checked_sub(1).map(|row| (row, column)));
            if parts[part(left, top)] {
                kept.push((row, column));
            }
        }
        if kept.is_empty() {
            return Err(PdfError::NothingToPrint);
        }
        if kept.len() > limit {
            return Err(too_many);
        }
        Ok(kept)
    }

    /// The ink of several drawings, each turned by half a turn about its origin or not, and moved.
    pub(super) fn laid(parts: &[Self], placements: &[Placement]) -> Self {
        let mut all = Self {
            chords: Vec::new(),
            fills: Vec::new(),
        };
        for (part, placement) in parts.iter().zip(placements) {
            let turn = if placement.turned { -1.0 } else { 1.0 };
            let motion = Affine::translate(placement.by) * Affine::scale(turn);
            all.chords.extend(part.chords.iter().map(|chord| Chord {
                a: motion * chord.a,
                b: motion * chord.b,
                half: chord.half,
            }));
            let fills = part.fills.iter().map(|fill| motion * fill.clone());
            all.fills.extend(fills);
        }
        all
    }

    /// Tells of every band of a grid of rows, from a place and so many mm high, the spans of x in
    /// which there is ink.
    pub(super) fn spans(&self, top: f64, height: f64, mut tell: impl FnMut(usize, f64, f64)) {
        let band = |y: f64| counted((y - top) / height);
        for chord in &self.chords {
            let reach = chord.bounds();
            for row in band(reach.y0)..=band(reach.y1) {
                let y = top + row as f64 * height;
                if let Some((from, to)) = chord.across(y, y + height) {
                    tell(row, from, to);
                }
            }
        }
        for fill in &self.fills {
            let reach = fill.bounding_box();
            for row in band(reach.y0)..=band(reach.y1) {
                tell(row, reach.x0, reach.x1);
            }
        }
    }

    /// Whether there is no ink at all.
    pub(super) fn is_empty(&self) -> bool {
        self.chords.is_empty() && self.fills.is_empty()
    }

    /// The chords near a rectangle, to be asked about smaller ones in it.
    pub(super) fn near(&self, rect: Rect) -> Self {
        Self {
            chords: self
                .chords
                .iter()
                .copied()
                .filter(|chord| chord.touches(rect))
                .collect(),
            fills: Vec::new(),
        }
    }

    /// The number of chords that touch a rectangle.
    pub(super) fn crossings(&self, rect: Rect) -> usize {
        self.chords
            .iter()
            .filter(|chord| chord.touches(rect))
            .count()
    }
}

fn mark(
    cells: &mut BTreeMap<(usize, usize), Parts>,
    grid: &Grid,
    place: (usize, usize),
    inked: impl Fn(Rect) -> bool,
) {
    let cell = grid.cell(place.0, place.1);
    let strip = grid.overlap;
    let mut found = [false; 4];
    for (left, top) in [(false, false), (true, false), (false, true), (true, true)] {
        let rect = Rect::new(
            cell.x0 + if left { strip } else { 0.0 },
            cell.y0 + if top { strip } else { 0.0 },
            cell.x1,
            cell.y1,
        );
        found[part(left, top)] = inked(rect.inset(-UNSEEN));
    }
    if found.contains(&true) {
        let parts = cells.entry(place).or_default();
        for (all, new) in parts.iter_mut().zip(found) {
            *all |= new;
        }
    }
}

impl Grid {
    /// The first and last row that a span of y touches; the drawing begins within the first.
    fn rows(&self, y0: f64, y1: f64) -> (usize, usize) {
        span(y0 - self.origin.y, y1 - self.origin.y, self.pitch.height)
    }

    fn columns(&self, x0: f64, x1: f64) -> (usize, usize) {
        span(x0 - self.origin.x, x1 - self.origin.x, self.pitch.width)
    }
}

fn span(from: f64, to: f64, pitch: f64) -> (usize, usize) {
    // Negative numbers count nothing, which is where the grid begins.
    let cell = |at: f64| counted(at / pitch);
    (cell(from), cell(to.max(from)))
}

impl Chord {
    fn bounds(&self) -> Rect {
        Rect::from_points(self.a, self.b).inflate(self.half, self.half)
    }

    /// The span of x in which the chord's ink crosses a band of y, if it does.
    fn across(&self, y0: f64, y1: f64) -> Option<(f64, f64)> {
        let wide = Rect::new(f64::MIN, y0, f64::MAX, y1);
        let (from, to) = self.inside(wide)?;
        let (x0, x1) = (self.a.lerp(self.b, from).x, self.a.lerp(self.b, to).x);
        Some((x0.min(x1) - self.half, x0.max(x1) + self.half))
    }

    fn touches(&self, rect: Rect) -> bool {
        self.inside(rect).is_some()
    }

    /// The part of the chord, as fractions of it, whose ink reaches into a rectangle; a corner is
    /// taken as square, which errs on the side of printing a page.
    fn inside(&self, rect: Rect) -> Option<(f64, f64)> {
        let half = self.half;
        let along = self.b - self.a;
        let (mut from, mut to) = (0.0_f64, 1.0_f64);
        for (start, step, low, high) in [
            (self.a.x, along.x, rect.x0 - half, rect.x1 + half),
            (self.a.y, along.y, rect.y0 - half, rect.y1 + half),
        ] {
            if step == 0.0 {
                if start < low || start > high {
                    return None;
                }
                continue;
            }
            let (one, other) = ((low - start) / step, (high - start) / step);
            from = from.max(one.min(other));
            to = to.min(one.max(other));
        }
        (from <= to).then_some((from, to))
    }
}
