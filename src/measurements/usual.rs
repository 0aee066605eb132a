//! What a body probably measures before everything that a draft needs was taken.

use super::body::{Measured, Source};
use super::joint::Conditioned;
use super::measurement::Measurement;

/// What height, bust, waist and hip probably are, those that were not taken: from whatever was, and
/// for nobody yet, the mean of the women surveyed. Values in mm.
///
/// It is there to be looked at while a form is filled in; a draft asks for the four to be taken.
///
/// ```
/// use blockwright::measurements::{Measurement, likely_required};
/// let likely = likely_required(&[(Measurement::Height, 1780.0)]);
/// assert_eq!(likely.len(), 3);
/// let mean = likely_required(&[]);
/// assert!((1550.0..1700.0).contains(&mean[0].1.value)); // somebody of the survey
/// ```
#[must_use]
pub fn likely_required(taken: &[(Measurement, f64)]) -> Vec<(Measurement, Measured)> {
    let possible = taken
        .iter()
        .copied()
        .filter(|(measurement, value)| measurement.range().contains(*value));
    let Some(given) = Conditioned::on(possible) else {
        return Vec::new();
    };
    Measurement::REQUIRED
        .into_iter()
        .filter(|measurement| taken.iter().all(|(known, _)| known != measurement))
        .filter_map(|measurement| {
            let estimate = given.estimate(measurement)?;
            let measured = Measured {
                value: measurement.range().nearest(estimate.value),
                source: Source::Estimated {
                    spread: estimate.spread,
                },
            };
            Some((measurement, measured))
        })
        .collect()
}
