//! A closed body as distances on a grid.

#![expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    clippy::indexing_slicing,
    reason = "nodes are counted within the grid; distances are of a few mm"
)]

use super::contact::Support;
use super::space::{Space, add, add_to, cross, direction, dot, length, scaled, sub};

/// Width of a cell, in mm.
const CELL: f64 = 6.0;
/// How far from the surface distances are known, in cells.
const BAND: f64 = 3.2;

/// How hard a body pushes back, in N/mm² for each mm: soft tissue with a modulus of some 10 kPa (value from
/// memory), 25 mm of it over what is hard. Cloth that a shoulder carries sinks in by half a mm.
const FLESH: f64 = 4e-4;

/// Distances from a closed surface on a grid, smooth between its nodes.
#[derive(Debug, Clone)]
pub(super) struct Solid {
    low: Space,
    counts: [usize; 3],
    distance: Vec<f32>,
}

/// A surface of triangles with a direction away from it at every point.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Skin {
    pub points: Vec<Space>,
    pub triangles: Vec<[usize; 3]>,
}

impl Skin {
    /// The mean direction of the triangles round each point, by their areas.
    pub fn normals(&self) -> Vec<Space> {
        let mut normals = vec![[0.0; 3]; self.points.len()];
        for t in &self.triangles {
            let [a, b, c] = t.map(|i| self.points[i]);
            let out = cross(sub(b, a), sub(c, a));
            for &i in t {
                add_to(&mut normals[i], 1.0, out);
            }
        }
        normals
            .into_iter()
            .map(|n| direction(n).unwrap_or([0.0, 1.0, 0.0]))
            .collect()
    }
}

impl Solid {
    /// The distances from a closed surface of which the triangles run anticlockwise seen from
    /// outside.
    pub fn of(skin: &Skin) -> Self {
        let (mut low, mut high) = ([f64::INFINITY; 3], [f64::NEG_INFINITY; 3]);
        for p in &skin.points {
            for k in 0..3 {
                low[k] = low[k].min(p[k]);
                high[k] = high[k].max(p[k]);
            }
        }
        let room = (BAND + 2.0) * CELL;
        let counts = [0, 1, 2]
            .map(|k| ((high[k] - low[k] + 2.0 * room) / CELL).ceil().max(4.0) as usize + 1);
        let low = low.map(|v| v - room);
        let mut solid = Self {
            low,
            counts,
            distance: vec![f32::INFINITY; counts.iter().product()],
        };
        solid.band(skin);
        solid.fill();
        solid
    }

    fn index(&self, [i, j, k]: [usize; 3]) -> usize {
        (i * self.counts[1] + j) * self.counts[2] + k
    }

    /// Distances near the surface.
    fn band(&mut self, skin: &Skin) {
        let normals = skin.normals();
        let reach = BAND * CELL;
        for t in &skin.triangles {
            let corners = t.map(|i| skin.points[i]);
            let out = t.map(|i| normals[i]);
            let (mut from, mut to) = ([0usize; 3], [0usize; 3]);
            for k in 0..3 {
                let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
                for c in &corners {
                    least = least.min(c[k]);
                    most = most.max(c[k]);
                }
                from[k] = ((least - reach - self.low[k]) / CELL).ceil().max(0.0) as usize;
                to[k] = (((most + reach - self.low[k]) / CELL).floor().max(0.0) as usize)
                    .min(self.counts[k] - 1);
            }
            for i in from[0]..=to[0] {
                for j in from[1]..=to[1] {
                    for k in from[2]..=to[2] {
                        let node = [
                            self.low[0] + i as f64 * CELL,
                            self.low[1] + j as f64 * CELL,
                            self.low[2] + k as f64 * CELL,
                        ];
                        let (shares, at) = nearest(node, corners);
                        let away = sub(node, at);
                        let far = length(away);
                        let index = self.index([i, j, k]);
                        if far >= f64::from(self.distance[index].abs()) || far > reach {
                            continue;
                        }
                        let mut n = [0.0; 3];
                        for (share, out) in shares.iter().zip(&out) {
                            add_to(&mut n, *share, *out);
                        }
                        self.distance[index] = if dot(away, n) < 0.0 {
                            -far as f32
                        } else {
                            far as f32
                        };
                    }
                }
            }
        }
    }

    /// What is far from the surface: outside what the grid's corner reaches, inside the rest.
    fn fill(&mut self) {
        let far = (BAND * CELL) as f32;
        let mut open = vec![[0usize; 3]];
        let first = self.index([0, 0, 0]);
        self.distance[first] = far;
        while let Some(at) = open.pop() {
            for axis in 0..3 {
                for up in [false, true] {
                    let mut next = at;
                    if up && at[axis] + 1 < self.counts[axis] {
                        next[axis] += 1;
                    } else if !up && at[axis] > 0 {
                        next[axis] -= 1;
                    } else {
                        continue;
                    }
                    let index = self.index(next);
                    if self.distance[index].is_infinite() {
                        self.distance[index] = far;
                        open.push(next);
                    }
                }
            }
        }
        for d in &mut self.distance {
            if d.is_infinite() {
                *d = -far;
            }
        }
    }
}

impl Support for Solid {
    fn distance(&self, at: [f64; 3]) -> Option<(f64, [f64; 3])> {
        let mut base = [0usize; 3];
        let (mut value, mut slope) = ([[0.0; 3]; 3], [[0.0; 3]; 3]);
        for k in 0..3 {
            let t = (at[k] - self.low[k]) / CELL;
            let near = t.round();
            if !(near >= 1.0 && near < (self.counts[k] - 1) as f64) {
                return None;
            }
            let f = t - near;
            base[k] = near as usize - 1;
            value[k] = [
                0.5 * (0.5 - f) * (0.5 - f),
                0.75 - f * f,
                0.5 * (0.5 + f) * (0.5 + f),
            ];
            slope[k] = [f - 0.5, -2.0 * f, f + 0.5];
        }
        let (mut d, mut n) = (0.0, [0.0; 3]);
        for i in 0..3 {
            for j in 0..3 {
                let row = self.index([base[0] + i, base[1] + j, base[2]]);
                let line = &self.distance[row..row + 3];
                let (mut sum, mut rise) = (0.0, 0.0);
                for k in 0..3 {
                    let v = f64::from(line[k]);
                    sum += value[2][k] * v;
                    rise += slope[2][k] * v;
                }
                d += value[0][i] * value[1][j] * sum;
                n[0] += slope[0][i] * value[1][j] * sum;
                n[1] += value[0][i] * slope[1][j] * sum;
                n[2] += value[0][i] * value[1][j] * rise;
            }
        }
        (d < (BAND - 1.0) * CELL).then(|| (d, scaled(n, 1.0 / CELL)))
    }

    fn firmness(&self) -> f64 {
        FLESH
    }
}

/// The nearest place of a triangle, as shares of its corners and in space (Ericson, *Real-time
/// collision detection*, 5.1.5).
fn nearest(p: Space, [a, b, c]: [Space; 3]) -> ([f64; 3], Space) {
    let (ab, ac, ap) = (sub(b, a), sub(c, a), sub(p, a));
    let at = |u: f64, v: f64, w: f64| {
        (
            [u, v, w],
            add(scaled(a, u), add(scaled(b, v), scaled(c, w))),
        )
    };
    let (d1, d2) = (dot(ab, ap), dot(ac, ap));
    if d1 <= 0.0 && d2 <= 0.0 {
        return at(1.0, 0.0, 0.0);
    }
    let bp = sub(p, b);
    let (d3, d4) = (dot(ab, bp), dot(ac, bp));
    if d3 >= 0.0 && d4 <= d3 {
        return at(0.0, 1.0, 0.0);
    }
    let vc = d1 * d4 - d3 * d2;
    if vc <= 0.0 && d1 >= 0.0 && d3 <= 0.0 {
        let v = d1 / (d1 - d3);
        return at(1.0 - v, v, 0.0);
    }
    let cp = sub(p, c);
    let (d5, d6) = (dot(ab, cp), dot(ac, cp));
    if d6 >= 0.0 && d5 <= d6 {
        return at(0.0, 0.0, 1.0);
    }
    let vb = d5 * d2 - d1 * d6;
    if vb <= 0.0 && d2 >= 0.0 && d6 <= 0.0 {
        let w = d2 / (d2 - d6);
        return at(1.0 - w, 0.0, w);
    }
    let va = d3 * d6 - d5 * d4;
    if va <= 0.0 && d4 - d3 >= 0.0 && d5 - d6 >= 0.0 {
        let w = (d4 - d3) / ((d4 - d3) + (d5 - d6));
        return at(0.0, 1.0 - w, w);
    }
    let whole = va + vb + vc;
    let (v, w) = (vb / whole, vc / whole);
    at(1.0 - v - w, v, w)
}
