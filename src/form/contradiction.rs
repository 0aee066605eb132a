//! Which two measurements contradict each other.
#![expect(
    clippy::indexing_slicing,
    reason = "a row and a column for each target"
)]

use super::solve::{Solved, Target};
use nalgebra::{Cholesky, DMatrix, DVector};

/// The two taken values that together are hardest to believe: the one that is farthest from what all
/// others expect on this form, and the one without which it would be nearest to it.
///
/// The misses have, before anything is solved, the covariance `S Sᵀ + 1` in tolerances, with `S` their
/// slopes; leaving one out is a matter of its inverse.
pub(super) fn contradiction(solved: &Solved) -> Option<(Target, Target)> {
    let count = solved.targets.len();
    let covariance =
        &solved.slopes * solved.slopes.transpose() + DMatrix::<f64>::identity(count, count);
    let inverse = Cholesky::new(covariance)?.inverse();
    let weights: DVector<f64> = &inverse * &solved.expected;
    let gain = |place: usize| weights[place] * weights[place] / inverse[(place, place)];
    let taken = || (0..count).filter(|place| solved.targets[*place].is_taken);
    let one = taken().max_by(|a, b| gain(*a).total_cmp(&gain(*b)))?;
    let without = |other: usize| {
        let (shared, own) = (inverse[(one, other)], inverse[(other, other)]);
        let weight = weights[one] - shared * weights[other] / own;
        weight * weight / (inverse[(one, one)] - shared * shared / own).max(f64::MIN_POSITIVE)
    };
    let others = taken().filter(|other| *other != one);
    let other = others.min_by(|a, b| without(*a).total_cmp(&without(*b)))?;
    Some((solved.targets[one], solved.targets[other]))
}
