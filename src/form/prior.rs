//! What is expected of the parameters before anything is taped.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays and matrices have a row for each parameter"
)]

use super::parameter::{COUNT, ShapeParameter as P, Values};
use super::surveyed::{ASSUMED, CORRELATION, SURVEYED};
use crate::measurements::{Body, Measurement as M};
use nalgebra::{Cholesky, DMatrix, DVector};

/// Mean of bust and hip girth together over the women surveyed.
const USUAL_GIRTHS: f64 = 1874.4;

/// Dimensions that go together though no survey at hand says how far (an assumption): a deeper seat is one that
/// stands out behind, more than a belly before.
const TOGETHER: [(P, P, f64); 1] = [(P::HipDepth, P::SeatForward, -0.6)];

/// Means and spreads, and the matrix that makes parameters of independent deviations of one.
#[derive(Debug, Clone)]
pub(super) struct Priors {
    pub(super) mean: [f64; COUNT],
    pub(super) spread: [f64; COUNT],
    mix: DMatrix<f64>,
}

/// How two dimensions go together of which not both were surveyed.
fn assumed(row: usize, column: usize) -> f64 {
    let mut all = TOGETHER.iter();
    let pair = all.find(|(a, b, _)| {
        let (a, b) = (*a as usize, *b as usize);
        (a, b) == (row, column) || (b, a) == (row, column)
    });
    pair.map_or(f64::from(row == column), |(.., share)| *share)
}

impl Priors {
    /// For a body, with means moved by so much; spreads grow with its girths beyond the usual ones.
    pub(super) fn of(body: &Body, moved: &[(P, f64)]) -> Self {
        let girths = body.value(M::BustGirth) + body.value(M::HipGirth);
        let grown = (girths / USUAL_GIRTHS).max(1.0);
        let (mut mean, mut spread) = ([0.0; COUNT], [0.0; COUNT]);
        for prior in SURVEYED.iter().chain(&ASSUMED) {
            mean[prior.of as usize] = prior.mean(body);
            spread[prior.of as usize] = prior.spread * grown;
        }
        for (of, by) in moved {
            mean[*of as usize] += by;
        }
        let together = DMatrix::from_fn(COUNT, COUNT, |row, column| {
            let surveyed = CORRELATION.get(row).and_then(|row| row.get(column));
            surveyed.copied().unwrap_or_else(|| assumed(row, column))
        });
        let root = Cholesky::new(together)
            .map_or_else(|| DMatrix::identity(COUNT, COUNT), |factor| factor.l());
        let mix = DMatrix::from_fn(COUNT, COUNT, |row, column| {
            spread[row] * root[(row, column)]
        });
        Self { mean, spread, mix }
    }

    /// The parameters of independent deviations.
    pub(super) fn values(&self, deviations: &DVector<f64>) -> Values {
        let moved = &self.mix * deviations;
        Values(std::array::from_fn(|place| self.mean[place] + moved[place]))
    }

    /// By how many spreads each parameter is off its mean.
    pub(super) fn distances(&self, values: &Values) -> [f64; COUNT] {
        std::array::from_fn(|place| (values.0[place] - self.mean[place]) / self.spread[place])
    }
}
