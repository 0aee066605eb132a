//! Which two measurements contradict each other.
#![expect(
    clippy::indexing_slicing,
    reason = "a row and a column for each target"
)]

use super::solve::{Solved, Target};
use crate::measurements::{Body, Measurement as M, Source};
use nalgebra::{Cholesky, DMatrix, DVector};

/// From so many spreads on the survey alone says what is wrong.
const DOUBTFUL: f64 = 3.0;

/// What the shape of a trunk rests on, beside what is solved for.
const ALSO: [M; 3] = [M::BustPointWidth, M::ShoulderLength, M::WaistToHip];

/// The two taken values that contradict each other, each with its value.
pub(super) fn contradiction(body: &Body, solved: &Solved) -> Option<[(M, f64); 2]> {
    by_survey(body, solved).or_else(|| {
        let (one, other) = on_the_form(solved)?;
        Some([(one.of, one.value), (other.of, other.value)])
    })
}

/// The taken value that is farthest from what all others expect, and the one without which it would be
/// nearest to that; `None` if none is far.
fn by_survey(body: &Body, solved: &Solved) -> Option<[(M, f64); 2]> {
    let targets = solved.targets.iter().map(|target| target.of);
    let known: Vec<M> = targets
        .chain(ALSO)
        .filter(|of| body.is_taken(*of))
        .collect();
    let off = |body: &Body, of: M, value: f64| -> Option<f64> {
        let estimate = body.estimate(of)?;
        let Source::Estimated { spread } = estimate.source else {
            return None;
        };
        Some((value - estimate.value).abs() / spread)
    };
    let each = known
        .iter()
        .filter_map(|of| Some((*of, off(body, *of, body.value(*of))?)));
    let (one, far) = each.max_by(|a, b| a.1.total_cmp(&b.1))?;
    if far < DOUBTFUL {
        return None;
    }
    let value = body.value(one);
    let others = known.iter().filter(|other| **other != one);
    let without = others.filter_map(|other| {
        let left = body.taken().filter(|(of, _)| of != other);
        Some((*other, off(&Body::from_taken(left).ok()?, one, value)?))
    });
    let (other, _) = without.min_by(|a, b| a.1.total_cmp(&b.1))?;
    Some([(one, value), (other, body.value(other))])
}

/// The two taken values that together are hardest to believe: the one that is farthest from what all
/// others expect on this form, and the one without which it would be nearest to it.
///
/// The misses have, before anything is solved, the covariance `S Sᵀ + 1` in tolerances, with `S` their
/// slopes; leaving one out is a matter of its inverse.
fn on_the_form(solved: &Solved) -> Option<(Target, Target)> {
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
