//! What is expected of the parameters before anything is taped.
#![expect(
    clippy::indexing_slicing,
    reason = "arrays and matrices have a row for each parameter"
)]

use super::parameter::{COUNT, ShapeParameter as P, Values};
use super::relation::Relation;
use super::surveyed::{CORRELATION, SURVEYED};
use crate::measurements::{Body, Measurement as M};
use nalgebra::{Cholesky, DMatrix, DVector};

const fn assumed(of: P, constant: f64, spread: f64) -> Relation {
    Relation {
        of,
        constant,
        terms: &[],
        spread,
    }
}

const fn share(of: P, terms: &'static [(M, f64)], spread: f64) -> Relation {
    Relation {
        of,
        constant: 0.0,
        terms,
        spread,
    }
}

/// What no survey at hand says. The spreads are assumptions; the means are those with which the forms
/// of the women surveyed meet their surveyed heights, breadths and depths on average.
const ASSUMED: [Relation; 16] = [
    assumed(P::NapeForward, 58.0, 14.0),
    assumed(P::WaistForward, 32.0, 14.0),
    assumed(P::SeatForward, 5.0, 14.0),
    assumed(P::BladeShare, 0.51, 0.04),
    assumed(P::BustRecess, 15.0, 6.0),
    share(P::ChestBreadth, &[(M::UpperChestGirth, 0.3725)], 12.0),
    share(P::UnderbustBreadth, &[(M::UnderbustGirth, 0.341)], 10.0),
    share(P::UnderbustDepth, &[(M::UnderbustGirth, 0.281)], 10.0),
    share(P::NeckHalf, &[(M::NeckBaseGirth, 0.1475)], 3.0),
    share(P::NeckDepth, &[(M::NeckBaseGirth, 0.19)], 8.0),
    assumed(P::NeckSideShare, 0.565, 0.06),
    assumed(P::ChestRoundness, 2.33, 0.2),
    assumed(P::BustRoundness, 3.1, 0.25),
    assumed(P::UnderbustRoundness, 2.17, 0.15),
    assumed(P::WaistRoundness, 2.14, 0.15),
    assumed(P::HipRoundness, 2.95, 0.25),
];

/// Mean of bust and hip girth together over the women surveyed.
const USUAL_GIRTHS: f64 = 1874.4;

/// Means and spreads, and the matrix that makes parameters of independent deviations of one.
#[derive(Debug, Clone)]
pub(super) struct Priors {
    pub(super) mean: [f64; COUNT],
    pub(super) spread: [f64; COUNT],
    mix: DMatrix<f64>,
}

impl Priors {
    /// For a body; spreads grow with its girths beyond the usual ones.
    pub(super) fn of(body: &Body) -> Self {
        let girths = body.value(M::BustGirth) + body.value(M::HipGirth);
        let grown = (girths / USUAL_GIRTHS).max(1.0);
        let (mut mean, mut spread) = ([0.0; COUNT], [0.0; COUNT]);
        for prior in SURVEYED.iter().chain(&ASSUMED) {
            mean[prior.of as usize] = prior.mean(body);
            spread[prior.of as usize] = prior.spread * grown;
        }
        let together = DMatrix::from_fn(COUNT, COUNT, |row, column| {
            let surveyed = CORRELATION.get(row).and_then(|row| row.get(column));
            surveyed.copied().unwrap_or(f64::from(row == column))
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
