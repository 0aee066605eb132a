//! A form as a stand to sew a toile on: its skin, and places on it by height and share of a ring.

#![expect(clippy::indexing_slicing, reason = "rings have equally many points")]

use super::contact::Support;
use super::solid::{Skin, Solid};
use super::space::{Space, add, length, scaled, sub, within};
use crate::form::{Form, Landmarks, Levels};

/// A stand.
#[derive(Debug, Clone)]
pub(super) struct Stand {
    pub landmarks: Landmarks,
    pub levels: Levels,
    pub skin: Skin,
    solid: Solid,
    /// Left halves of rings from the lowest up, from the middle of the back to that of the front.
    halves: Vec<(f64, Vec<Space>)>,
    neck: Vec<Space>,
}

/// Distance between the points of a stand's skin, in mm.
const FINE: f64 = 12.0;

impl Stand {
    pub fn of(form: &Form) -> Self {
        let surface = form.surface(FINE);
        let rings: Vec<(f64, Vec<Space>)> = surface
            .rings
            .iter()
            .map(|ring| {
                (
                    ring.height,
                    ring.points.iter().map(|p| [p.x, p.y, p.z]).collect(),
                )
            })
            .collect();
        let skin = closed(&rings);
        let solid = Solid::of(&skin);
        let halves = rings.into_iter().map(|(height, mut points)| {
            points.truncate(points.len().div_ceil(2) + 1);
            (height, points)
        });
        Self {
            landmarks: form.landmarks(),
            levels: form.levels(),
            halves: halves.collect(),
            neck: form
                .neck_base(96)
                .points
                .iter()
                .map(|p| [p.x, p.y, p.z])
                .collect(),
            skin,
            solid,
        }
    }

    /// The left half of the ring at a height, from the middle of the back to that of the front.
    pub fn half_ring(&self, height: f64) -> Vec<Space> {
        let after = self
            .halves
            .partition_point(|(h, _)| *h <= height)
            .max(1)
            .min(self.halves.len().saturating_sub(1));
        let (Some((low, below)), Some((high, above))) =
            (self.halves.get(after - 1), self.halves.get(after))
        else {
            return Vec::new();
        };
        // Rings go on straight below the lowest and above the highest.
        let share = within((height - low) / (high - low).max(1e-9), -20.0, 20.0);
        let bound = within(share, 0.0, 1.0);
        below
            .iter()
            .zip(above)
            .map(|(a, b)| {
                let mut p = add(*a, scaled(sub(*b, *a), bound));
                p[1] = a[1] + (b[1] - a[1]) * share;
                p
            })
            .collect()
    }

    /// The left half of the base of the neck, from the nape to the hollow in front.
    pub fn neck_half(&self) -> Vec<Space> {
        let half = self.neck.len().div_ceil(2);
        self.neck.iter().take(half + 1).copied().collect()
    }

    /// How far a place is from the surface: by the grid near it, by the points of the skin beyond.
    pub fn gap(&self, at: Space) -> f64 {
        if let Some((far, _)) = self.solid.distance(at) {
            return far;
        }
        let far = |p: &Space| length(sub(*p, at));
        self.skin
            .points
            .iter()
            .map(far)
            .fold(f64::INFINITY, f64::min)
    }

    pub fn surface(&self) -> &dyn Support {
        &self.solid
    }
}

/// Rings joined, and closed below and above.
fn closed(rings: &[(f64, Vec<Space>)]) -> Skin {
    let around = rings.first().map_or(0, |(_, r)| r.len());
    let mut points: Vec<Space> = rings.iter().flat_map(|(_, r)| r.iter().copied()).collect();
    let mut triangles = Vec::new();
    for level in 1..rings.len() {
        for k in 0..around {
            let next = (k + 1) % around;
            let (a, b) = ((level - 1) * around + k, (level - 1) * around + next);
            let (c, d) = (level * around + k, level * around + next);
            triangles.push([a, c, b]);
            triangles.push([b, c, d]);
        }
    }
    for (level, up) in [(0, false), (rings.len().saturating_sub(1), true)] {
        let ring = level * around..(level + 1) * around;
        let mut middle = [0.0; 3];
        for p in &points[ring.clone()] {
            super::space::add_to(&mut middle, 1.0 / around as f64, *p);
        }
        let centre = points.len();
        points.push(middle);
        for k in 0..around {
            let (a, b) = (ring.start + k, ring.start + (k + 1) % around);
            triangles.push(if up { [a, centre, b] } else { [a, b, centre] });
        }
    }
    Skin { points, triangles }
}
