//! Cloth on a body: it does not go in, and it slides only where it is pulled hard enough.

#![expect(
    clippy::indexing_slicing,
    reason = "touching points are those of the sheet"
)]

use super::factor::BlockMatrix;
use super::space::{Space, add_to, direction, dot, length, scaled, sub};

/// A body that cloth rests on.
///
/// ```
/// use blockwright::toile::Support;
/// /// A table top at height 0.
/// #[derive(Debug)]
/// struct Table;
/// impl Support for Table {
///     fn distance(&self, at: [f64; 3]) -> Option<(f64, [f64; 3])> {
///         Some((at[1], [0.0, 1.0, 0.0]))
///     }
/// }
/// assert_eq!(Table.distance([0.0, 5.0, 0.0]).map(|(mm, _)| mm), Some(5.0));
/// ```
pub trait Support: std::fmt::Debug + Send + Sync {
    /// Distance of a place from the surface in mm, negative inside, and its slope: the direction away
    /// from the surface. None where that is more than 10 mm outside.
    fn distance(&self, at: [f64; 3]) -> Option<(f64, [f64; 3])>;

    /// How hard it pushes back, in N/mm² for each mm of depth. As it is, hard: a band under 20 N/m round
    /// a radius of 100 mm sinks in by 0.01 mm.
    fn firmness(&self) -> f64 {
        2e-2
    }
}

/// What is known to be free where a surface gives no distance, in mm.
const FAR: f64 = 10.0;

/// A smoothed distance changes by hardly more than the way gone: what is seen to be free is taken for
/// so much less.
const SURE: f64 = 0.9;

/// How far cloth gives before it slides, in mm.
const GIVE: f64 = 0.3;

/// Cloth rests so far from the surface, in mm: half its thickness.
pub(super) const APART: f64 = 0.7;

/// A point of cloth that touches.
#[derive(Debug, Clone, Copy)]
struct Touch {
    point: usize,
    away: Space,
    /// What it may be pulled along the surface before it slides, in N.
    hold: f64,
    anchor: Space,
}

/// Contact and friction of all points.
#[derive(Debug, Clone)]
pub(super) struct Contact {
    friction: f64,
    firmness: f64,
    /// Where each point was looked at, and how far from there it is free, in mm.
    free: Vec<(Space, f64)>,
    anchors: Vec<Option<Space>>,
    touches: Vec<Touch>,
}

impl Contact {
    pub fn new(friction: f64, surface: Option<&dyn Support>, count: usize) -> Self {
        Self {
            friction,
            firmness: surface.map_or(0.0, Support::firmness),
            free: Vec::with_capacity(count),
            anchors: vec![None; count],
            touches: Vec::new(),
        }
    }

    /// Looks which points touch; anchors follow where the cloth has slid.
    pub fn look(&mut self, at: &[Space], area: &[f64], surface: &dyn Support) {
        self.touches.clear();
        self.free.clear();
        for (i, &p) in at.iter().enumerate() {
            let seen = surface.distance(p);
            let free = SURE * seen.map_or(FAR, |(d, _)| d) - APART;
            self.free.push((p, free.max(0.0)));
            let near = seen.filter(|(d, _)| *d < APART);
            let Some((away, depth)) = near.and_then(|(d, n)| Some((direction(n)?, APART - d)))
            else {
                self.anchors[i] = None;
                continue;
            };
            let hold = self.friction * self.firmness * area[i] * depth;
            let anchor = self.anchors[i].get_or_insert(p);
            let moved = sub(p, *anchor);
            let along = sub(moved, scaled(away, dot(moved, away)));
            let far = length(along);
            if far > GIVE {
                *anchor = sub(p, scaled(along, GIVE / far));
            }
            self.touches.push(Touch {
                point: i,
                away,
                hold,
                anchor: *anchor,
            });
        }
    }

    pub fn energy(
        &self,
        at: &[Space],
        area: &[f64],
        surface: &dyn Support,
        slope: &mut [Space],
    ) -> f64 {
        let mut energy = 0.0;
        for ((i, &p), (seen, free)) in at.iter().enumerate().zip(&self.free) {
            let gone = sub(p, *seen);
            if dot(gone, gone) < free * free {
                continue;
            }
            if let Some((d, n)) = surface.distance(p)
                && d < APART
            {
                let (push, depth) = (self.firmness * area[i], d - APART);
                energy += 0.5 * push * depth * depth;
                add_to(&mut slope[i], push * depth, n);
            }
        }
        for t in &self.touches {
            let moved = sub(at[t.point], t.anchor);
            let along = sub(moved, scaled(t.away, dot(moved, t.away)));
            let far = length(along);
            if far < GIVE {
                energy += t.hold * far * far / (2.0 * GIVE);
                add_to(&mut slope[t.point], t.hold / GIVE, along);
            } else {
                energy += t.hold * (far - 0.5 * GIVE);
                add_to(&mut slope[t.point], t.hold / far, along);
            }
        }
        energy
    }

    pub fn stiffness(&self, at: &[Space], area: &[f64], matrix: &mut BlockMatrix) {
        for t in &self.touches {
            let moved = sub(at[t.point], t.anchor);
            let along = sub(moved, scaled(t.away, dot(moved, t.away)));
            let drag = t.hold / length(along).max(GIVE);
            let push = self.firmness * area[t.point];
            let at = matrix.start[t.point];
            let block = &mut matrix.blocks[at];
            for r in 0..3 {
                for c in 0..3 {
                    let same = if r == c { 1.0 } else { 0.0 };
                    let out = t.away[r] * t.away[c];
                    block[3 * r + c] += push * out + drag * (same - out);
                }
            }
        }
    }

    pub fn count(&self) -> usize {
        self.touches.len()
    }
}
