//! A symmetric positive definite matrix of 3 by 3 blocks, factored band by band.
//!
//! The multifrontal method (Duff and Reid, *The multifrontal solution of indefinite sparse
//! symmetric linear equations*, ACM TOMS 9, 1983): every band of the dissection is a small full
//! matrix. One thread and a fixed order: the same bits everywhere.

#![expect(
    clippy::indexing_slicing,
    reason = "corners, neighbours and blocks are numbered by the sheet itself"
)]

use super::dissection::{Band, dissect};
use super::space::Space;

/// Rows that are eliminated before the rest of a front is brought up to date.
const PANEL: usize = 24;

/// A matrix of 3 by 3 blocks: the upper half by rows of points, each row from its diagonal on.
#[derive(Debug, Clone)]
pub(super) struct BlockMatrix {
    /// Where the blocks of each point start; one more at the end.
    pub start: Vec<usize>,
    /// The other point of each block, at least as great as the row's.
    pub column: Vec<usize>,
    /// The blocks, by rows; a block in place (i, j) with i below j.
    pub blocks: Vec<[f64; 9]>,
}

impl BlockMatrix {
    /// An empty matrix for points with these neighbours.
    pub fn of(neighbours: &[Vec<usize>]) -> Self {
        let (mut start, mut column) = (vec![0], Vec::new());
        for (i, near) in neighbours.iter().enumerate() {
            column.push(i);
            let mut later: Vec<usize> = near.iter().copied().filter(|&j| j > i).collect();
            later.sort_unstable();
            later.dedup();
            column.extend(later);
            start.push(column.len());
        }
        let blocks = vec![[0.0; 9]; column.len()];
        Self {
            start,
            column,
            blocks,
        }
    }

    /// The number of the block that joins two points, in whichever order.
    pub fn block(&self, a: usize, b: usize) -> Option<usize> {
        let (i, j) = (a.min(b), a.max(b));
        let row = self.start[i]..self.start[i + 1];
        let at = self.column[row.clone()].binary_search(&j).ok()?;
        Some(row.start + at)
    }

    pub fn clear(&mut self) {
        self.blocks.fill([0.0; 9]);
    }
}

/// Where a block of the matrix goes in a front.
#[derive(Debug, Clone, Copy)]
struct Entry {
    block: usize,
    row: usize,
    column: usize,
    /// The block is stored for the other order of its points.
    turned: bool,
}

#[derive(Debug, Clone)]
struct Front {
    /// Points of this band, then those of later bands that it touches.
    points: Vec<usize>,
    own: usize,
    entries: Vec<Entry>,
    /// Every child, and where its later points are in this front.
    children: Vec<(usize, Vec<usize>)>,
    /// Rows of the factor: three for each own point, as long as the front.
    rows: Vec<f64>,
    update: Vec<f64>,
}

/// A factor, to be filled again and again for matrices of one pattern.
#[derive(Debug, Clone)]
pub(super) struct Factor {
    fronts: Vec<Front>,
}

impl Factor {
    /// The plan for matrices of that pattern.
    pub fn plan(matrix: &BlockMatrix, neighbours: &[Vec<usize>], places: &[Space]) -> Self {
        let bands = dissect(neighbours, places);
        let count = places.len();
        let mut order = vec![0usize; count];
        let mut band_of = vec![0usize; count];
        let mut next = 0;
        for (index, band) in bands.iter().enumerate() {
            for &point in &band.own {
                order[point] = next;
                band_of[point] = index;
                next += 1;
            }
        }
        let mut fronts: Vec<Front> = Vec::with_capacity(bands.len());
        let mut mark = vec![usize::MAX; count];
        for (index, band) in bands.iter().enumerate() {
            let children = children_of(&bands, index);
            let mut later: Vec<usize> = Vec::new();
            let touched = band.own.iter().flat_map(|&p| neighbours[p].iter().copied());
            let handed = children
                .iter()
                .flat_map(|&c| fronts[c].points[fronts[c].own..].iter().copied());
            for point in touched.chain(handed) {
                if band_of[point] > index && mark[point] != index {
                    mark[point] = index;
                    later.push(point);
                }
            }
            later.sort_unstable_by_key(|&p| order[p]);
            let mut points = band.own.clone();
            points.extend(&later);
            fronts.push(Front {
                own: band.own.len(),
                points,
                entries: Vec::new(),
                children: children.into_iter().map(|c| (c, Vec::new())).collect(),
                rows: Vec::new(),
                update: Vec::new(),
            });
        }
        let mut place = vec![usize::MAX; count];
        for index in 0..fronts.len() {
            let points = fronts[index].points.clone();
            for (at, &point) in points.iter().enumerate() {
                place[point] = at;
            }
            let mut entries = Vec::new();
            for &point in &points[..fronts[index].own] {
                for &other in neighbours[point].iter().chain(std::iter::once(&point)) {
                    if order[other] < order[point] {
                        continue;
                    }
                    let Some(block) = matrix.block(point, other) else {
                        continue;
                    };
                    entries.push(Entry {
                        block,
                        row: place[point],
                        column: place[other],
                        turned: point > other,
                    });
                }
            }
            fronts[index].entries = entries;
            let mut children = std::mem::take(&mut fronts[index].children);
            for (child, to) in &mut children {
                let child = &fronts[*child];
                *to = child.points[child.own..]
                    .iter()
                    .map(|&p| place[p])
                    .collect();
            }
            fronts[index].children = children;
        }
        Self { fronts }
    }

    /// Factors a matrix; false where it is not positive definite.
    pub fn fill(&mut self, matrix: &BlockMatrix) -> bool {
        let mut front: Vec<f64> = Vec::new();
        for index in 0..self.fronts.len() {
            let (before, rest) = self.fronts.split_at_mut(index);
            let Some(this) = rest.first_mut() else {
                return false;
            };
            let size = 3 * this.points.len();
            front.clear();
            front.resize(size * size, 0.0);
            for entry in &this.entries {
                let block = &matrix.blocks[entry.block];
                for r in 0..3 {
                    let row = (3 * entry.row + r) * size + 3 * entry.column;
                    for c in 0..3 {
                        let from = if entry.turned { 3 * c + r } else { 3 * r + c };
                        front[row + c] += block[from];
                    }
                }
            }
            for (child, to) in &this.children {
                let update = std::mem::take(&mut before[*child].update);
                add_update(&mut front, size, &update, to);
                // Its room is used again.
                before[*child].update = update;
            }
            let own = 3 * this.own;
            if !eliminate(&mut front, size, own) {
                return false;
            }
            this.rows.clear();
            this.rows.extend_from_slice(&front[..own * size]);
            let rest = size - own;
            this.update.clear();
            for row in 0..rest {
                let from = (own + row) * size + own;
                this.update.extend_from_slice(&front[from..from + rest]);
            }
        }
        true
    }

    /// Solves for a right-hand side, in place.
    pub fn solve(&self, values: &mut [Space]) {
        let mut work: Vec<f64> = Vec::new();
        for front in &self.fronts {
            let (size, own) = (3 * front.points.len(), 3 * front.own);
            gather(&mut work, values, &front.points);
            for i in 0..own {
                let row = &front.rows[i * size..(i + 1) * size];
                let value = work[i] / row[i];
                work[i] = value;
                for (w, u) in work[i + 1..].iter_mut().zip(&row[i + 1..]) {
                    *w -= value * u;
                }
            }
            scatter(&work, values, &front.points);
        }
        for front in self.fronts.iter().rev() {
            let (size, own) = (3 * front.points.len(), 3 * front.own);
            gather(&mut work, values, &front.points);
            for i in (0..own).rev() {
                let row = &front.rows[i * size..(i + 1) * size];
                let known = dot(&row[i + 1..], &work[i + 1..]);
                work[i] = (work[i] - known) / row[i];
            }
            scatter(&work[..own], values, &front.points);
        }
    }
}

fn children_of(bands: &[Band], index: usize) -> Vec<usize> {
    (0..index)
        .filter(|&c| bands[c].parent == Some(index))
        .collect()
}

fn gather(work: &mut Vec<f64>, values: &[Space], points: &[usize]) {
    work.clear();
    work.extend(points.iter().flat_map(|&p| values[p]));
}

fn scatter(work: &[f64], values: &mut [Space], points: &[usize]) {
    for (three, &p) in work.chunks_exact(3).zip(points) {
        values[p] = [three[0], three[1], three[2]];
    }
}

fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sums = [0.0; 4];
    let (four_a, four_b) = (a.chunks_exact(4), b.chunks_exact(4));
    let rest: f64 = four_a
        .remainder()
        .iter()
        .zip(four_b.remainder())
        .map(|(a, b)| a * b)
        .sum();
    for (a, b) in four_a.zip(four_b) {
        for k in 0..4 {
            sums[k] += a[k] * b[k];
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3]) + rest
}

/// Adds what a child left to the upper half of its parent's front.
fn add_update(front: &mut [f64], size: usize, update: &[f64], to: &[usize]) {
    let rest = 3 * to.len();
    for (i, &row) in to.iter().enumerate() {
        for r in 0..3 {
            let from = &update[(3 * i + r) * rest..(3 * i + r + 1) * rest];
            let into = &mut front[(3 * row + r) * size..(3 * row + r + 1) * size];
            for (j, &column) in to.iter().enumerate().skip(i) {
                let (three, four) = (
                    &from[3 * j..3 * j + 3],
                    &mut into[3 * column..3 * column + 3],
                );
                for c in 0..3 {
                    four[c] += three[c];
                }
            }
        }
    }
}

/// Eliminates the first `own` rows of a front of which the upper half counts.
fn eliminate(front: &mut [f64], size: usize, own: usize) -> bool {
    let mut from = 0;
    while from < own {
        let to = (from + PANEL).min(own);
        for p in from..to {
            let (done, rest) = front.split_at_mut(p * size);
            let row = &mut rest[..size];
            for q in from..p {
                let above = &done[q * size..(q + 1) * size];
                let by = above[p];
                for (r, u) in row[p..].iter_mut().zip(&above[p..]) {
                    *r -= by * u;
                }
            }
            let pivot = row[p];
            // Also where it is no number.
            if !(pivot > 0.0 && pivot.is_finite()) {
                return false;
            }
            let scale = 1.0 / pivot.sqrt();
            for r in &mut row[p..] {
                *r *= scale;
            }
        }
        let (panel, rest) = front.split_at_mut(to * size);
        let panel = &panel[from * size..];
        for (below, row) in rest.chunks_exact_mut(size).enumerate() {
            let i = to + below;
            bring_up(&mut row[i..], panel, size, i);
        }
        from = to;
    }
    true
}

/// Takes the rows of a panel off a later row, from its diagonal on.
fn bring_up(row: &mut [f64], panel: &[f64], size: usize, i: usize) {
    let mut four = panel.chunks_exact(4 * size);
    for rows in &mut four {
        let (a, rows) = rows.split_at(size);
        let (b, rows) = rows.split_at(size);
        let (c, d) = rows.split_at(size);
        let by = [a[i], b[i], c[i], d[i]];
        let (a, b, c, d) = (&a[i..], &b[i..], &c[i..], &d[i..]);
        for ((((r, a), b), c), d) in row.iter_mut().zip(a).zip(b).zip(c).zip(d) {
            *r -= (by[0] * a + by[1] * b) + (by[2] * c + by[3] * d);
        }
    }
    for one in four.remainder().chunks_exact(size) {
        let by = one[i];
        for (r, u) in row.iter_mut().zip(&one[i..]) {
            *r -= by * u;
        }
    }
}
