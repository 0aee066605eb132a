//! Estimates of what was not taken, in the order that bodies keep.

use super::by_measurement::ByMeasurement;
use super::estimates::FARTHEST;
use super::joint::{self, Conditioned, Estimate};
use super::measurement::Measurement;
use super::order::ORDERS;

/// How far a share of the height may leave those found in the survey.
const SHARE_MARGIN: f64 = 0.1;

/// The estimate of a measurement from the values heeded, or `None` if no source relates it to
/// them.
///
/// It is held inside the possible range of the measurement and, for lengths of trunk and limbs,
/// inside the shares of the height found in the survey widened by a tenth: a relation fitted to
/// the middle of a population bends nobody's back at its ends.
pub(super) fn estimate(given: &Conditioned, of: Measurement, height: f64) -> Option<Estimate> {
    let estimate = given.estimate(of)?;
    let value = match joint::share_of_height(of) {
        Some((low, high)) => estimate
            .value
            .max(low * (1.0 - SHARE_MARGIN) * height)
            .min(high * (1.0 + SHARE_MARGIN) * height),
        None => estimate.value,
    };
    Some(Estimate {
        value: of.range().nearest(value),
        ..estimate
    })
}

/// A value that a body may have, and whether it must stay.
#[derive(Debug, Clone, Copy)]
pub(super) struct Slot {
    /// The value: mm, or radians.
    pub(super) value: f64,
    /// It was taken, or moved to fit what was.
    pub(super) settled: bool,
}

/// Moves the estimates that break the order of bodies.
///
/// An estimate that was moved to fit a taken value stays where it was put, so that a large taken
/// wrist carries elbow, arm and armscye up one after the other. Each pass can settle one more
/// link; the longest chain has four.
pub(super) fn keep_order(slots: &mut ByMeasurement<Option<Slot>>) {
    for _ in 0..4 {
        for order in ORDERS {
            let (Some(low), Some(high)) = (*slots.of(order.lesser), *slots.of(order.greater))
            else {
                continue;
            };
            if low.value <= order.most(high.value) {
                continue;
            }
            match (low.settled, high.settled) {
                (false, settled) => {
                    let value = order.lesser.range().nearest(order.most(high.value));
                    *slots.of_mut(order.lesser) = Some(Slot { value, settled });
                }
                (true, false) => {
                    let value = order.greater.range().nearest(order.least(low.value));
                    *slots.of_mut(order.greater) = Some(Slot {
                        value,
                        settled: true,
                    });
                }
                (true, true) => {}
            }
        }
    }
}

/// Whether height, bust, waist and hip together are farther from the mean than those of any
/// woman surveyed.
pub(super) fn is_farther_than_surveyed(required: [f64; 4]) -> bool {
    Conditioned::on(Measurement::REQUIRED.into_iter().zip(required))
        .is_none_or(|four| four.distance() > FARTHEST)
}

/// Those of the four that lie outside what was surveyed.
pub(super) fn beyond_survey(required: [f64; 4]) -> Vec<Measurement> {
    Measurement::REQUIRED
        .into_iter()
        .zip(required)
        .filter(|(measurement, value)| {
            joint::surveyed(*measurement).is_some_and(|(low, high)| *value < low || *value > high)
        })
        .map(|(measurement, _)| measurement)
        .collect()
}

/// The measurements that would sharpen the estimates most, the best first, at most `count`.
///
/// Of what the draft uses and was not taken, the one whose taking leaves the smallest sum of
/// squared spreads over all of it; then the same with that one taken; and so on.
pub(super) fn most_helpful(
    given: &Conditioned,
    open: &[Measurement],
    count: usize,
) -> Vec<Measurement> {
    let mut open = open.to_vec();
    let mut left = given.left(&open);
    let mut out = Vec::new();
    while out.len() < count {
        // What is left of a measurement's own variance, and what its taking takes away.
        let gains = left.iter().enumerate().filter_map(|(place, row)| {
            let own = *row.get(place)?;
            let sum: f64 = row.iter().map(|cell| cell * cell).sum();
            (own > 0.0).then(|| (place, own, sum / own))
        });
        let best = gains.max_by(|a, b| a.2.total_cmp(&b.2));
        let Some((best, own, _)) = best.filter(|(.., gain)| *gain > 0.0) else {
            break;
        };
        let with = left.remove(best);
        let mut others = with.clone();
        others.remove(best);
        for (row, shared) in left.iter_mut().zip(others) {
            for (cell, other) in row.iter_mut().zip(&with) {
                *cell -= shared * other / own;
            }
            row.remove(best);
        }
        out.push(open.remove(best));
    }
    out
}
