//! Estimates of what was not taken, from height, bust, waist and hip.

use super::estimates::{INVERSE_SCATTER, REQUIRED_ENDS, REQUIRED_MEANS, ROWS, Row, WOMEN};
use super::measurement::Measurement;
use crate::geometry::elementary::hypot;

/// How far a share of the height may leave those found in the survey.
const SHARE_MARGIN: f64 = 0.1;

/// How far off a slope is taken to be beyond the bodies surveyed, where nothing shows
/// that the line stays straight. An assumption of ours, not computed from the survey.
const SLOPE_DOUBT: f64 = 0.2;

/// Height, bust, waist and hip, in the order of [`Measurement::REQUIRED`].
pub(super) type Required = [f64; 4];

/// The estimate of a measurement and its spread, or `None` if it cannot be estimated.
///
/// The value is the regression, held inside the possible range of the measurement and,
/// for lengths of trunk and limbs, inside the shares of the height found in the survey
/// widened by a tenth: a straight line fitted to the middle of a population bends
/// nobody's back at its ends.
///
/// The spread is that of a single new person, `s sqrt(1 + 1/n + d' (X'X)^-1 d)`: the
/// residual spread for anyone like the women surveyed, a little wider away from their
/// mean. Where the four leave the range surveyed, a fifth of what each adds beyond it
/// widens the spread further.
pub(super) fn estimate(of: Measurement, required: &Required) -> Option<(f64, f64)> {
    let row = ROWS.iter().find(|row| row.of == of)?;
    let from_mean: [f64; 4] = std::array::from_fn(|k| required[k] - REQUIRED_MEANS[k]);
    let value: f64 = row.mean
        + row
            .slopes
            .iter()
            .zip(from_mean)
            .map(|(slope, d)| slope * d)
            .sum::<f64>();
    let distance: f64 = (0..4)
        .flat_map(|i| (0..4).map(move |j| (i, j)))
        .map(|(i, j)| from_mean[i] * INVERSE_SCATTER[i][j] * from_mean[j])
        .sum();
    let chance = row.spread * (1.0 + 1.0 / WOMEN + distance.max(0.0)).sqrt();
    let beyond: f64 = (0..4)
        .map(|k| {
            let (low, high) = REQUIRED_ENDS[k];
            let stray = required[k] - required[k].max(low).min(high);
            (row.slopes[k] * stray).abs()
        })
        .sum();
    let spread = hypot(chance, SLOPE_DOUBT * beyond);
    Some((
        of.range().nearest(in_proportion(row, value, required[0])),
        spread,
    ))
}

fn in_proportion(row: &Row, value: f64, height: f64) -> f64 {
    match row.share_of_height {
        Some((low, high)) => value
            .max(low * (1.0 - SHARE_MARGIN) * height)
            .min(high * (1.0 + SHARE_MARGIN) * height),
        None => value,
    }
}

/// Those of the four that lie outside what was surveyed.
pub(super) fn beyond_survey(required: &Required) -> Vec<Measurement> {
    Measurement::REQUIRED
        .into_iter()
        .zip(required)
        .zip(REQUIRED_ENDS)
        .filter(|((_, value), (low, high))| *value < low || *value > high)
        .map(|((measurement, _), _)| measurement)
        .collect()
}

/// The smallest and largest surveyed value of one of the four, in mm, or `None` for
/// the others.
pub(super) fn surveyed(measurement: Measurement) -> Option<(f64, f64)> {
    Measurement::REQUIRED
        .iter()
        .position(|m| *m == measurement)
        .map(|place| REQUIRED_ENDS[place])
}
