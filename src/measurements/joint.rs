//! The joint distribution of all measurements, and what taken values make of the others.
//!
//! A length `x` enters as `z = (x - c) / (x + c)`, with `c` its mean over the women surveyed:
//! half its relative difference, near the mean half its natural logarithm. So proportions, not
//! millimetres, go together, and spreads grow with size. An angle enters as `(x - c) / 2c`. The
//! `z` are taken as normal together; their means and covariance stand in `estimates.rs`.

use super::cholesky::Cholesky;
use super::estimates::{COVARIANCE, ROWS, Row, WOMEN};
use super::measurement::{Kind, Measurement};

/// How far off a coefficient is taken to be beyond the bodies surveyed, where nothing shows
/// that the relation stays as it is. An assumption of ours, not computed from the survey.
const SLOPE_DOUBT: f64 = 0.2;

/// Beyond the girths surveyed upper arm and elbow are taken to grow by this share of what the
/// relation says. With it the upper arm follows the women of a second survey up to a bust of
/// 1250 mm (1988 and 2012 Anthropometric Surveys of U.S. Army Personnel, computed; the line of
/// their flexed upper arm, 43 + 0.2775 bust) and the arm column of a handbook, 2 cm for each
/// 6 cm of bust above 104 (Aldrich, as transcribed); without it an arm at bust 1520 is 50 mm
/// above both. Trunk, neck, wrist and hand need no such share: they meet both as they are.
const LIMB_SHARE: f64 = 0.75;

/// From half a spread above the mean bust on, every spread is wider by this share for each spread of
/// bust more: bodies of one size differ more the fuller they are. Without it the errors of women left
/// out are 1.05 spreads in the top fifth by bust, between 0.98 and 1.00 in the others; with it they are
/// 0.97 to 1.02 in every fifth (five-fold cross-validation; `tests/people` computes it again).
const WIDER_BY_BUST: f64 = 0.05;
const WIDER_FROM: f64 = 0.5;

/// No spread is widened as by a bust farther off than this, in spreads of busts: about 1280 mm.
/// Beyond that the doubt of a relation widens it.
const WIDER_TO: f64 = 5.0;

/// A measurement that the joint distribution knows: its row, and its place among all rows.
#[derive(Debug, Clone, Copy)]
struct Known {
    row: &'static Row,
    place: usize,
}

impl Known {
    /// `None` for a measurement that no source relates to the others.
    fn of(measurement: Measurement) -> Option<Self> {
        let mut rows = ROWS.iter().enumerate();
        let found = rows.find(|(_, row)| row.of == measurement);
        found.map(|(place, row)| Self { row, place })
    }

    #[expect(
        clippy::indexing_slicing,
        reason = "the covariance has a row for each, up to and with its own column"
    )]
    fn covariance(self, other: Self) -> f64 {
        COVARIANCE[self.place.max(other.place)][self.place.min(other.place)]
    }
}

/// Whether the joint distribution knows the measurement.
pub(super) fn is_known(measurement: Measurement) -> bool {
    Known::of(measurement).is_some()
}

/// Smallest and largest value of the women surveyed: mm, or radians.
pub(super) fn surveyed(measurement: Measurement) -> Option<(f64, f64)> {
    Known::of(measurement).map(|known| known.row.ends)
}

/// The smallest and largest share of the height found, for lengths of trunk and limbs.
pub(super) fn share_of_height(measurement: Measurement) -> Option<(f64, f64)> {
    Known::of(measurement)?.row.share_of_height
}

impl Row {
    fn deviation(&self, value: f64) -> f64 {
        match self.of.kind() {
            Kind::Length => (value - self.centre) / (value + self.centre),
            Kind::Angle => (value - self.centre) / (2.0 * self.centre),
        }
    }

    fn value(&self, deviation: f64) -> f64 {
        // No body is nineteen times the mean: far from all that is possible, and finite.
        let z = deviation.abs().min(0.9).copysign(deviation);
        match self.of.kind() {
            Kind::Length => self.centre * (1.0 + z) / (1.0 - z),
            Kind::Angle => self.centre * (1.0 + 2.0 * z),
        }
    }

    /// Change of the value for each unit of its deviation.
    fn steepness(&self, deviation: f64) -> f64 {
        let z = deviation.abs().min(0.9).copysign(deviation);
        match self.of.kind() {
            Kind::Length => 2.0 * self.centre / ((1.0 - z) * (1.0 - z)),
            Kind::Angle => 2.0 * self.centre,
        }
    }

    /// By how much a deviation lies outside those surveyed.
    fn stray(&self, deviation: f64) -> f64 {
        let (low, high) = (self.deviation(self.ends.0), self.deviation(self.ends.1));
        deviation - deviation.max(low).min(high)
    }

    /// The share of a relation that holds beyond the girths surveyed.
    fn share_beyond(&self) -> f64 {
        match self.of {
            Measurement::UpperArmGirth | Measurement::ElbowGirth => LIMB_SHARE,
            _ => 1.0,
        }
    }
}

/// A value taken, as the distribution sees it.
#[derive(Debug, Clone, Copy)]
struct Given {
    known: Known,
    /// Its deviation less the mean deviation.
    z: f64,
    /// By how much it lies outside the values surveyed.
    stray: f64,
}

impl Given {
    fn is_bust(&self) -> bool {
        self.known.row.of == Measurement::BustGirth
    }

    /// The deviation in spreads of its kind.
    fn in_spreads(&self) -> f64 {
        self.z / self.known.covariance(self.known).sqrt()
    }
}

/// By what spreads are multiplied where the bust is so many of its own spreads above the mean.
fn wider_at(bust: f64) -> f64 {
    1.0 + WIDER_BY_BUST * (bust.min(WIDER_TO) - WIDER_FROM).max(0.0)
}

/// An estimate: mm, or radians.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Estimate {
    /// The value expected.
    pub(super) value: f64,
    /// Standard deviation of a single new person.
    pub(super) spread: f64,
}

/// Two taken values, each as the others without either expect it.
#[derive(Debug, Clone, Copy)]
pub(super) struct WithoutBoth {
    /// By how many spreads the first is off.
    pub(super) one: f64,
    /// By how many it is off beside the second.
    pub(super) one_beside: f64,
    /// By how many spreads the second is off.
    pub(super) other: f64,
}

/// The distribution given the values taken.
#[derive(Debug, Clone)]
pub(super) struct Conditioned {
    given: Vec<Given>,
    factor: Cholesky,
    /// The inverse covariance of the given ones times their deviations.
    weights: Vec<f64>,
    /// Squared distance of the given ones from their mean, in spreads.
    distance: f64,
    /// By what spreads are multiplied for the bust given.
    wider: f64,
}

impl Conditioned {
    /// The distribution given these values; those it does not know are left out. `None` if a
    /// measurement stands twice.
    pub(super) fn on(taken: impl IntoIterator<Item = (Measurement, f64)>) -> Option<Self> {
        let given: Vec<Given> = taken
            .into_iter()
            .filter_map(|(measurement, value)| {
                let known = Known::of(measurement)?;
                let deviation = known.row.deviation(value);
                Some(Given {
                    known,
                    z: deviation - known.row.mean,
                    stray: known.row.stray(deviation),
                })
            })
            .collect();
        let factor = Cholesky::new(&given, |a, b| a.known.covariance(b.known))?;
        let z: Vec<f64> = given.iter().map(|given| given.z).collect();
        let weights = factor.solve(&z);
        let distance = z.iter().zip(&weights).map(|(z, w)| z * w).sum();
        let bust = given.iter().find(|given| given.is_bust());
        Some(Self {
            wider: bust.map_or(1.0, |bust| wider_at(bust.in_spreads())),
            given,
            factor,
            weights,
            distance,
        })
    }

    /// The squared distance of the given values from their mean, in spreads (Mahalanobis).
    pub(super) const fn distance(&self) -> f64 {
        self.distance
    }

    /// The estimate of a measurement that is not among the given ones; `None` for one that the
    /// distribution does not know.
    ///
    /// The spread is that of a single new person, as in a regression, `s sqrt(1 + 1/n + d²/n)`.
    /// Where a given value leaves the range surveyed, a fifth of what it adds beyond widens the
    /// spread further.
    pub(super) fn estimate(&self, of: Measurement) -> Option<Estimate> {
        let target = Known::of(of)?;
        let together: Vec<f64> = self
            .given
            .iter()
            .map(|given| target.covariance(given.known))
            .collect();
        let coefficients = self.factor.solve(&together);
        let product = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
        let shift = product(&together, &self.weights);
        let explained = product(&together, &coefficients);
        let variance = target.covariance(target) - explained;
        let variance = variance * self.wider * self.wider;
        Some(self.new_person(target, shift, variance, &coefficients))
    }

    /// The estimate of each given measurement from all others given, in their order.
    #[expect(
        clippy::indexing_slicing,
        reason = "the inverse has a row and a column for each"
    )]
    pub(super) fn each_from_the_others(&self) -> Vec<(Measurement, Estimate)> {
        let inverse = self.factor.inverse();
        self.given
            .iter()
            .enumerate()
            .zip(&self.weights)
            .map(|((i, given), weight)| {
                let own = inverse[i][i];
                let coefficients: Vec<f64> = inverse[i]
                    .iter()
                    .enumerate()
                    .map(|(k, cell)| if k == i { 0.0 } else { -cell / own })
                    .collect();
                let shift = given.z - weight / own;
                // The others do not know the bust that is judged.
                let wider = if given.is_bust() { 1.0 } else { self.wider };
                let variance = wider * wider / own;
                let estimate = self.new_person(given.known, shift, variance, &coefficients);
                (given.known.row.of, estimate)
            })
            .collect()
    }

    /// For one given measurement and every other: how far off the two are, each judged by all
    /// given ones but these two.
    #[expect(
        clippy::indexing_slicing,
        reason = "the inverse has a row and a column for each, and each a weight"
    )]
    pub(super) fn without_both(&self, one: Measurement) -> Vec<(Measurement, WithoutBoth)> {
        let inverse = self.factor.inverse();
        let place = |m| self.given.iter().position(|g| g.known.row.of == m);
        let Some(i) = place(one) else {
            return Vec::new();
        };
        let others = self.given.iter().enumerate();
        others
            .filter(|(j, _)| *j != i)
            .map(|(j, other)| {
                let (a, b, d) = (inverse[i][i], inverse[i][j], inverse[j][j]);
                let (w, v) = (self.weights[i], self.weights[j]);
                // The inverse of the two by two block, times the weights, over its own spreads.
                let det = a * d - b * b;
                let spread = |variance: f64| (variance / det).max(f64::MIN_POSITIVE).sqrt();
                let off = WithoutBoth {
                    one: (d * w - b * v) / det / spread(d),
                    one_beside: w / a.max(f64::MIN_POSITIVE).sqrt(),
                    other: (a * v - b * w) / det / spread(a),
                };
                (other.known.row.of, off)
            })
            .collect()
    }

    /// Covariance in mm² of what is left of these measurements, which are not given; angles are
    /// measured at the end of a shoulder of mean length.
    pub(super) fn left(&self, of: &[Measurement]) -> Vec<Vec<f64>> {
        let shoulder = Known::of(Measurement::ShoulderLength).map_or(0.0, |known| known.row.centre);
        let parts: Vec<(Known, Vec<f64>, Vec<f64>, f64)> = of
            .iter()
            .filter_map(|measurement| {
                let known = Known::of(*measurement)?;
                let together: Vec<f64> = self
                    .given
                    .iter()
                    .map(|given| known.covariance(given.known))
                    .collect();
                let coefficients = self.factor.solve(&together);
                let shift: f64 = together.iter().zip(&self.weights).map(|(a, b)| a * b).sum();
                let arm = match known.row.of.kind() {
                    Kind::Length => 1.0,
                    Kind::Angle => shoulder,
                };
                let scale = known.row.steepness(known.row.mean + shift) * arm;
                Some((known, together, coefficients, scale))
            })
            .collect();
        parts
            .iter()
            .enumerate()
            .map(|(i, (row, together, own, scale))| {
                parts
                    .iter()
                    .enumerate()
                    .map(|(j, (other, _, coefficients, by))| {
                        let explained: f64 =
                            together.iter().zip(coefficients).map(|(a, b)| a * b).sum();
                        let rest = row.covariance(*other) - explained;
                        let beyond = if i == j { self.beyond(own) } else { 0.0 };
                        (rest + beyond * beyond) * scale * by
                    })
                    .collect()
            })
            .collect()
    }

    /// What widens a spread beyond the values surveyed.
    fn beyond(&self, coefficients: &[f64]) -> f64 {
        let sum: f64 = self
            .given
            .iter()
            .zip(coefficients)
            .map(|(given, coefficient)| (coefficient * given.stray).abs())
            .sum();
        SLOPE_DOUBT * sum
    }

    fn new_person(
        &self,
        Known { row, .. }: Known,
        shift: f64,
        variance: f64,
        coefficients: &[f64],
    ) -> Estimate {
        let astray: f64 = self
            .given
            .iter()
            .zip(coefficients)
            .filter(|(given, _)| given.known.row.is_girth())
            .map(|(given, coefficient)| coefficient * given.stray)
            .sum();
        let z = row.mean + shift - (1.0 - row.share_beyond()) * astray;
        let women = f64::from(WOMEN);
        let chance = variance.max(0.0) * (1.0 + (1.0 + self.distance.max(0.0)) / women);
        let beyond = self.beyond(coefficients);
        Estimate {
            value: row.value(z),
            spread: row.steepness(z) * (chance + beyond * beyond).sqrt(),
        }
    }
}

impl Row {
    const fn is_girth(&self) -> bool {
        matches!(
            self.of,
            Measurement::BustGirth
                | Measurement::UpperChestGirth
                | Measurement::UnderbustGirth
                | Measurement::WaistGirth
                | Measurement::HipGirth
        )
    }
}
