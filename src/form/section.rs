//! A level section of a form.

use crate::geometry::elementary::{pow, sin};
use std::f64::consts::PI;

/// Steps round a quarter of a section.
pub(super) const STEPS: u32 = 24;

/// A level section: two halves of a superellipse, which share their breadth and meet at the side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Section {
    /// Height above the waist.
    pub(super) y: f64,
    /// Half the breadth.
    pub(super) half: f64,
    /// How far forward the side is, the back at the middle, the front at the middle.
    pub(super) side: f64,
    pub(super) back: f64,
    pub(super) front: f64,
    /// The exponent: 2 for halves of an ellipse.
    pub(super) power: f64,
}

impl Section {
    /// The share of the depth that is left at a place beside the middle.
    pub(super) fn reach(&self, x: f64) -> f64 {
        let share = (x / self.half).abs();
        if share >= 1.0 {
            return 0.0;
        }
        pow((1.0 - pow(share, self.power)).max(0.0), 1.0 / self.power)
    }

    /// Half of it from the middle of the back to the middle of the front, `(x, z)`.
    pub(super) fn half_ring(&self, turns: &Turns) -> Vec<(f64, f64)> {
        let exponent = 2.0 / self.power;
        let mut quarter: Vec<(f64, f64)> = Vec::with_capacity(turns.sines.len());
        quarter.extend(turns.sines.iter().map(|sine| (pow(*sine, exponent), 0.0)));
        let across: Vec<f64> = quarter.iter().rev().map(|(sine, _)| *sine).collect();
        for (place, cosine) in quarter.iter_mut().zip(across) {
            place.1 = cosine;
        }
        let at = |end: f64| {
            move |(sine, cosine): &(f64, f64)| {
                (self.half * sine, self.side + (end - self.side) * cosine)
            }
        };
        let behind = quarter.iter().map(at(self.back));
        let before = quarter.iter().rev().skip(1).map(at(self.front));
        behind.chain(before).collect()
    }
}

/// Equal steps of the way round half a section, from the middle of the back to the middle of the front.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Turns {
    /// The sines of the first half of them, up to the side; the cosines are the same the other way.
    sines: Vec<f64>,
}

impl Turns {
    /// So many equal steps to the side, and as many from there to the front.
    pub(super) fn quarter(count: u32) -> Self {
        let sines = (0..=count).map(|step| {
            if step == count {
                1.0
            } else {
                sin(0.5 * PI * f64::from(step) / f64::from(count))
            }
        });
        Self {
            sines: sines.collect(),
        }
    }

    /// Sine and size of the cosine of every step up to the side.
    pub(super) fn to_side(&self) -> impl DoubleEndedIterator<Item = (f64, f64)> + '_ {
        let cosines = self.sines.iter().rev();
        self.sines.iter().copied().zip(cosines.copied())
    }

    /// How many steps there are up to the side, with it.
    pub(super) fn behind(&self) -> usize {
        self.sines.len()
    }
}
