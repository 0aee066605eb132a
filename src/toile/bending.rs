//! Bending of cloth.
//!
//! The curvature of a triangle follows from the angles at its three edges, exactly for every
//! quadratic surface over any triangles: the patch of six points of the rotation-free shell
//! elements (Oñate and Zárate, *Rotation-free triangular plate and shell elements*, Int. J. Numer.
//! Meth. Engng 47, 2000). As cloth bends nearly without stretching, second derivatives of place
//! stand for curvature, and the energy is quadratic in the places (Bergou et al., *A quadratic
//! bending model for inextensible surfaces*, 2006): its matrix is made once. At an edge with
//! nothing beyond the angle is the one that costs least, so that a free edge carries no moment; at
//! the fold the sheet goes on as its mirror image.

#![expect(
    clippy::indexing_slicing,
    clippy::needless_range_loop,
    reason = "corners, neighbours and blocks are numbered by the sheet itself"
)]

use super::factor::BlockMatrix;
use super::sheet::{Hold, Sheet, edges};
use super::space::Space;

/// Stiffness against bending, in N mm: of a strip along the weft, of one along the warp.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rigidity {
    pub weft: f64,
    pub warp: f64,
}

/// How a patch weighs its six points: for x, and for y and z.
#[derive(Debug, Clone)]
struct Patch {
    points: Vec<usize>,
    across: Vec<f64>,
    along: Vec<f64>,
}

/// The quadratic energy of bending.
#[derive(Debug, Clone)]
pub(super) struct Bending {
    /// Upper half by rows, in the places of the matrix: weights for x, and for y and z.
    start: Vec<usize>,
    column: Vec<usize>,
    weight: Vec<[f64; 2]>,
    block: Vec<usize>,
}

/// The six or fewer points of every triangle's patch.
fn patches_of(sheet: &Sheet) -> Vec<Beside> {
    let mut beside: Vec<Beside> = vec![[None; 3]; sheet.triangles.len()];
    for (_, list) in edges(&sheet.triangles) {
        if let [one, other] = list[..] {
            beside[one.0][one.1] = Some(other);
            beside[other.0][other.1] = Some(one);
        }
    }
    beside
}

/// The triangles across the edges that lie opposite each corner, and their corner across.
type Beside = [Option<(usize, usize)>; 3];

/// Which points share a patch.
pub(super) fn neighbours(sheet: &Sheet) -> Vec<Vec<usize>> {
    let mut near: Vec<Vec<usize>> = vec![Vec::new(); sheet.holds.len()];
    for (corners, beside) in sheet.triangles.iter().zip(patches_of(sheet)) {
        let mut points = corners.to_vec();
        points.extend(beside.iter().flatten().map(|&(t, k)| sheet.triangles[t][k]));
        for &p in &points {
            near[p].extend(points.iter().filter(|&&q| q != p));
        }
    }
    for list in &mut near {
        list.sort_unstable();
        list.dedup();
    }
    near
}

impl Bending {
    pub fn of(sheet: &Sheet, rigidity: Rigidity, matrix: &BlockMatrix) -> Self {
        let all = patches_of(sheet);
        let mut weights = vec![[0.0; 2]; matrix.blocks.len()];
        for index in 0..sheet.triangles.len() {
            let Some(patch) = patch(sheet, index, &all[index], rigidity) else {
                continue;
            };
            let n = patch.points.len();
            for i in 0..n {
                for j in i..n {
                    let Some(at) = matrix.block(patch.points[i], patch.points[j]) else {
                        continue;
                    };
                    weights[at][0] += patch.across[i * n + j];
                    weights[at][1] += patch.along[i * n + j];
                    // A point may be in a patch twice.
                    if i != j && patch.points[i] == patch.points[j] {
                        weights[at][0] += patch.across[i * n + j];
                        weights[at][1] += patch.along[i * n + j];
                    }
                }
            }
        }
        let (mut start, mut column, mut weight, mut block) = (vec![0], vec![], vec![], vec![]);
        for i in 0..sheet.holds.len() {
            for at in matrix.start[i]..matrix.start[i + 1] {
                if weights[at] != [0.0; 2] {
                    column.push(matrix.column[at]);
                    weight.push(weights[at]);
                    block.push(at);
                }
            }
            start.push(column.len());
        }
        Self {
            start,
            column,
            weight,
            block,
        }
    }

    /// The energy in N mm; its slopes are added to `slope`.
    pub fn energy(&self, at: &[Space], slope: &mut [Space]) -> f64 {
        let mut energy = 0.0;
        for i in 0..at.len() {
            let p = at[i];
            let mut own = [0.0; 3];
            for k in self.start[i]..self.start[i + 1] {
                let (j, [x, yz]) = (self.column[k], self.weight[k]);
                let q = at[j];
                if i == j {
                    own[0] += x * p[0];
                    own[1] += yz * p[1];
                    own[2] += yz * p[2];
                } else {
                    own[0] += x * q[0];
                    own[1] += yz * q[1];
                    own[2] += yz * q[2];
                    let other = &mut slope[j];
                    other[0] += x * p[0];
                    other[1] += yz * p[1];
                    other[2] += yz * p[2];
                    energy += 0.5 * (x * p[0] * q[0] + yz * (p[1] * q[1] + p[2] * q[2]));
                }
            }
            energy += 0.5 * (own[0] * p[0] + own[1] * p[1] + own[2] * p[2]);
            for c in 0..3 {
                slope[i][c] += own[c];
            }
        }
        energy
    }

    pub fn stiffness(&self, matrix: &mut BlockMatrix) {
        for (at, [x, yz]) in self.block.iter().zip(&self.weight) {
            let block = &mut matrix.blocks[*at];
            block[0] += x;
            block[4] += yz;
            block[8] += yz;
        }
    }
}

type Flat = [f64; 2];

fn less(a: Flat, b: Flat) -> Flat {
    [a[0] - b[0], a[1] - b[1]]
}

fn times(a: Flat, b: Flat) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

/// How far along an edge the foot of a corner is, as a share, and its height above it.
fn foot(p: Flat, a: Flat, b: Flat) -> (f64, f64) {
    let (edge, to) = (less(b, a), less(p, a));
    let long = times(edge, edge);
    let area = edge[0] * to[1] - edge[1] * to[0];
    (times(to, edge) / long, area.abs() / long.sqrt())
}

/// The energy of one triangle's curvature as weights of its points; none of a triangle too thin.
fn patch(sheet: &Sheet, index: usize, beside: &Beside, rigidity: Rigidity) -> Option<Patch> {
    let (corners, flat) = (sheet.triangles[index], sheet.flat[index]);
    let mut points = corners.to_vec();
    // For each edge: how its angle weighs the points, and what the angle is for unit curvatures.
    let mut rows = [[0.0; 6]; 3];
    let mut unit = [[0.0; 3]; 3];
    let (mut missing, mut mirrored) = ([false; 3], [false; 3]);
    for k in 0..3 {
        let (i, j) = ((k + 1) % 3, (k + 2) % 3);
        let (p, a, b) = (flat[k], flat[i], flat[j]);
        let (share, height) = foot(p, a, b);
        let edge = less(b, a);
        let long = times(edge, edge).sqrt();
        // Outward: away from the corner across.
        let mut out = [edge[1] / long, -edge[0] / long];
        if times(less(p, a), out) > 0.0 {
            out = [-out[0], -out[1]];
        }
        rows[k][k] += 1.0 / height;
        rows[k][i] -= (1.0 - share) / height;
        rows[k][j] -= share / height;
        let (mut far_share, mut far_height) = (share, height);
        match beside[k] {
            Some((other, across)) => {
                let theirs = sheet.flat[other];
                let their = sheet.triangles[other];
                let (mut c, mut d) = (theirs[(across + 1) % 3], theirs[(across + 2) % 3]);
                if their[(across + 1) % 3] != corners[i] {
                    (c, d) = (d, c);
                }
                (far_share, far_height) = foot(theirs[across], c, d);
                let at = points.len();
                points.push(their[across]);
                rows[k][at] += 1.0 / far_height;
                rows[k][i] -= (1.0 - far_share) / far_height;
                rows[k][j] -= far_share / far_height;
            }
            None => {
                let on_fold = |c: usize| sheet.holds[corners[c]].on_fold();
                mirrored[k] =
                    on_fold(i) && on_fold(j) && !matches!(sheet.holds[corners[k]], Hold::Fold);
                missing[k] = !mirrored[k];
                if mirrored[k] {
                    for weight in &mut rows[k] {
                        *weight *= 2.0;
                    }
                }
            }
        }
        // The same angle of quadratic surfaces, from the middle of the edge.
        let near = [
            share * edge[0] - height * out[0],
            share * edge[1] - height * out[1],
        ];
        let far = [
            far_share * edge[0] + far_height * out[0],
            far_share * edge[1] + far_height * out[1],
        ];
        let measure = |f: &dyn Fn(Flat) -> f64| {
            (f(near) - share * f(edge)) / height + (f(far) - far_share * f(edge)) / far_height
        };
        unit[k] = [
            measure(&|q| 0.5 * q[0] * q[0]),
            measure(&|q| 0.5 * q[1] * q[1]),
            measure(&|q| q[0] * q[1]),
        ];
    }
    let inverse = inverse(unit)?;
    let area = 0.5 * super::sheet::twice_area(&flat);
    let twist = 2.0 * (rigidity.weft * rigidity.warp).sqrt();
    let cost = [area * rigidity.weft, area * rigidity.warp, area * twist];
    let mut angles = [[0.0; 3]; 3];
    for i in 0..3 {
        for j in 0..3 {
            angles[i][j] = (0..3)
                .map(|h| inverse[h][i] * cost[h] * inverse[h][j])
                .sum();
        }
    }
    for k in 0..3 {
        if missing[k] && angles[k][k] > 0.0 {
            let row = angles[k];
            for i in 0..3 {
                for j in 0..3 {
                    angles[i][j] -= row[i] * row[j] / row[k];
                }
            }
        }
    }
    let n = points.len();
    let weigh = |rows: &[[f64; 6]; 3]| -> Vec<f64> {
        let mut weights = vec![0.0; n * n];
        for i in 0..n {
            for j in 0..n {
                weights[i * n + j] = (0..3)
                    .flat_map(|k| (0..3).map(move |l| (k, l)))
                    .map(|(k, l)| rows[k][i] * angles[k][l] * rows[l][j])
                    .sum();
            }
        }
        weights
    };
    let along = weigh(&rows);
    let mut flat_rows = rows;
    for k in 0..3 {
        if mirrored[k] {
            flat_rows[k] = [0.0; 6];
        }
    }
    Some(Patch {
        points,
        across: weigh(&flat_rows),
        along,
    })
}

fn inverse(m: [[f64; 3]; 3]) -> Option<[[f64; 3]; 3]> {
    let minor = |r: usize, c: usize| {
        let (r1, r2, c1, c2) = ((r + 1) % 3, (r + 2) % 3, (c + 1) % 3, (c + 2) % 3);
        m[r1][c1] * m[r2][c2] - m[r1][c2] * m[r2][c1]
    };
    let whole = (0..3).map(|c| m[0][c] * minor(0, c)).sum::<f64>();
    let size: f64 = m
        .iter()
        .map(|row| row.iter().map(|v| v * v).sum::<f64>().sqrt())
        .product();
    if whole.abs() < 1e-4 * size {
        return None;
    }
    let mut inverse = [[0.0; 3]; 3];
    for r in 0..3 {
        for c in 0..3 {
            inverse[c][r] = minor(r, c) / whole;
        }
    }
    Some(inverse)
}
