//! Stretch and shear of cloth in its plane.
//!
//! Along warp and weft a thread resists a change of its length, between them a change of their
//! angle (Baraff and Witkin, *Large steps in cloth simulation*, 1998, in the form of an energy).

#![expect(
    clippy::indexing_slicing,
    reason = "corners, neighbours and blocks are numbered by the sheet itself"
)]

use super::factor::BlockMatrix;
use super::sheet::{Sheet, slopes, threads, twice_area};
use super::space::{Space, add_to, dot};

/// Stiffness in the plane, in N/mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Plane {
    pub weft: f64,
    pub warp: f64,
    pub shear: f64,
}

#[derive(Debug, Clone)]
struct Element {
    corners: [usize; 3],
    /// Derivatives of the three shape functions along weft and warp, in 1/mm.
    slopes: [[f64; 2]; 3],
    area: f64,
    /// Blocks of the matrix for corners (0,0), (0,1), (0,2), (1,1), (1,2), (2,2).
    blocks: [usize; 6],
}

/// The pairs of corners in the order of the blocks.
const PAIRS: [(usize, usize); 6] = [(0, 0), (0, 1), (0, 2), (1, 1), (1, 2), (2, 2)];

/// All triangles of a sheet.
#[derive(Debug, Clone)]
pub(super) struct Membrane {
    elements: Vec<Element>,
    plane: Plane,
}

impl Membrane {
    pub fn of(sheet: &Sheet, plane: Plane, matrix: &BlockMatrix) -> Self {
        let elements = sheet
            .triangles
            .iter()
            .zip(&sheet.flat)
            .map(|(corners, flat)| {
                let blocks = PAIRS.map(|(i, j)| matrix.block(corners[i], corners[j]).unwrap_or(0));
                Element {
                    corners: *corners,
                    slopes: slopes(flat),
                    area: 0.5 * twice_area(flat),
                    blocks,
                }
            });
        Self {
            elements: elements.collect(),
            plane,
        }
    }

    /// The energy in N mm; its slopes are added to `slope`.
    pub fn energy(&self, at: &[Space], slope: &mut [Space]) -> f64 {
        let Plane { weft, warp, shear } = self.plane;
        let mut energy = 0.0;
        for e in &self.elements {
            let [u, v] = e.threads(at);
            let (long_u, long_v) = (dot(u, u).sqrt(), dot(v, v).sqrt());
            let (by_u, by_v, by) = (long_u - 1.0, long_v - 1.0, dot(u, v));
            energy += 0.5 * e.area * (weft * by_u * by_u + warp * by_v * by_v + shear * by * by);
            let pull_u = e.area * weft * by_u / long_u.max(1e-9);
            let pull_v = e.area * warp * by_v / long_v.max(1e-9);
            let pull = e.area * shear * by;
            let (mut along_u, mut along_v) = ([0.0; 3], [0.0; 3]);
            for k in 0..3 {
                along_u[k] = pull_u * u[k] + pull * v[k];
                along_v[k] = pull_v * v[k] + pull * u[k];
            }
            for (corner, s) in e.corners.iter().zip(&e.slopes) {
                add_to(&mut slope[*corner], s[0], along_u);
                add_to(&mut slope[*corner], s[1], along_v);
            }
        }
        energy
    }

    /// Adds second derivatives to a matrix, without what would make it indefinite. Across a thread they
    /// are at least `across` of what they are along it: at 1 the matrix bounds the energy from above
    /// however far the thread turns (as in Liu, Bouaziz and Kavan, *Quasi-Newton methods for real-time
    /// simulation of hyperelastic materials*, 2017), at 0 it is the exact one near rest.
    pub fn stiffness(&self, at: &[Space], across: f64, matrix: &mut BlockMatrix) {
        let Plane { weft, warp, shear } = self.plane;
        for e in &self.elements {
            let [u, v] = e.threads(at);
            let (long_u, long_v) = (dot(u, u).sqrt().max(1e-9), dot(v, v).sqrt().max(1e-9));
            let pulled = |long: f64| (1.0 - 1.0 / long).max(across);
            let (pulled_u, pulled_v) = (pulled(long_u), pulled(long_v));
            let (mut uu, mut vv, mut uv) = ([[0.0; 3]; 3], [[0.0; 3]; 3], [[0.0; 3]; 3]);
            for r in 0..3 {
                for c in 0..3 {
                    let same = if r == c { 1.0 } else { 0.0 };
                    let (n_u, n_v) = (
                        u[r] * u[c] / (long_u * long_u),
                        v[r] * v[c] / (long_v * long_v),
                    );
                    uu[r][c] =
                        e.area * (weft * (n_u + pulled_u * (same - n_u)) + shear * v[r] * v[c]);
                    vv[r][c] =
                        e.area * (warp * (n_v + pulled_v * (same - n_v)) + shear * u[r] * u[c]);
                    uv[r][c] = e.area * shear * v[r] * u[c];
                }
            }
            for ((i, j), block) in PAIRS.into_iter().zip(e.blocks) {
                let (p, q) = (e.slopes[i], e.slopes[j]);
                let turned = e.corners[i] > e.corners[j];
                let block = &mut matrix.blocks[block];
                for r in 0..3 {
                    for c in 0..3 {
                        let value = p[0] * q[0] * uu[r][c]
                            + p[1] * q[1] * vv[r][c]
                            + p[0] * q[1] * uv[r][c]
                            + p[1] * q[0] * uv[c][r];
                        block[if turned { 3 * c + r } else { 3 * r + c }] += value;
                    }
                }
            }
        }
    }
}

impl Element {
    fn threads(&self, at: &[Space]) -> [Space; 2] {
        threads(&self.corners.map(|corner| at[corner]), &self.slopes)
    }
}
