//! A body: what was taken, and estimates of the rest.

use super::doubt::{Against, Doubt, DoubtCode};
use super::error::{MeasurementError, MeasurementErrors};
use super::estimates::PARTNERS;
use super::estimation::{Required, beyond_survey, estimate};
use super::measurement::Measurement;
use super::order::ORDERS;

/// A taken value is doubted beyond so many spreads of its estimate.
const DOUBT_SPREADS: f64 = 3.0;

/// Where a value comes from.
///
/// ```
/// use blockwright::measurements::Source;
///
/// assert!(Source::Taken.is_taken());
/// assert!(!Source::Estimated { spread: 22.0 }.is_taken());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Source {
    /// Measured on the wearer.
    Taken,
    /// Estimated from height, bust, waist and hip.
    Estimated {
        /// Standard deviation of the estimate: mm, or radians.
        spread: f64,
    },
}

impl Source {
    /// Whether the value was measured.
    #[must_use]
    pub const fn is_taken(self) -> bool {
        matches!(self, Self::Taken)
    }
}

/// A value and where it comes from.
///
/// Serialised as `{"value": 920.0, "source": "taken"}` or `{"value": 352.1, "source":
/// "estimated", "spread": 20.5}`.
///
/// ```
/// use blockwright::measurements::{Measured, Source};
///
/// let bust = Measured { value: 920.0, source: Source::Taken };
/// assert!(bust.source.is_taken());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// The value: mm, or radians.
    pub value: f64,
    /// Where it comes from.
    pub source: Source,
}

/// A complete body: every measurement that can be estimated has a value.
///
/// # Guarantees
///
/// * `height`, `bust_girth`, `waist_girth` and `hip_girth` are taken.
/// * Whatever was taken is held as taken; every value is finite and within the
///   [range](Measurement::range) of its measurement.
/// * What was not taken is estimated, save `front_width`, for which there is no survey.
/// * An estimate gives way to keep the order of bodies (underbust below bust, armpit
///   above waist, wrist below elbow), also beside taken values.
/// * The same values give the same body.
///
/// Serialised as a map from name to [`Measured`]; lengths in mm, and `shoulder_slope`
/// in degrees with `"unit": "deg"` beside it.
///
/// ```
/// use blockwright::measurements::{Body, Measurement, Source};
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0),
///     (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0),
///     (Measurement::HipGirth, 1000.0),
///     (Measurement::BackWaistLength, 402.0),
/// ])?;
/// assert_eq!(body.value(Measurement::BackWaistLength), 402.0);
/// let neck = body.get(Measurement::NeckBaseGirth).ok_or("not estimated")?;
/// assert!(matches!(neck.source, Source::Estimated { spread } if spread > 5.0));
/// assert!(body.get(Measurement::FrontWidth).is_none());
/// assert!(body.doubts().is_empty());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    values: [Option<Measured>; Measurement::ALL.len()],
    doubts: Vec<Doubt>,
    beyond_survey: Vec<Measurement>,
}

impl Body {
    /// A body from the values taken: lengths in mm, the shoulder slope in radians.
    ///
    /// # Errors
    ///
    /// [`MeasurementErrors`] with everything that is wrong: values that are missing,
    /// given twice, not finite or impossible.
    pub fn from_taken(
        taken: impl IntoIterator<Item = (Measurement, f64)>,
    ) -> Result<Self, MeasurementErrors> {
        let mut errors = Vec::new();
        let mut values = [None; Measurement::ALL.len()];
        let mut given = [false; Measurement::ALL.len()];
        for (measurement, value) in taken {
            if std::mem::replace(&mut given[measurement.index()], true) {
                errors.push(MeasurementError::Repeated { measurement });
            } else if !value.is_finite() {
                errors.push(MeasurementError::NotFinite { measurement });
            } else if !measurement.range().contains(value) {
                errors.push(MeasurementError::OutOfRange { measurement, value });
            } else {
                let source = Source::Taken;
                values[measurement.index()] = Some(Measured { value, source });
            }
        }
        let mut required: Required = [0.0; 4];
        for (place, measurement) in Measurement::REQUIRED.into_iter().enumerate() {
            match values[measurement.index()] {
                Some(measured) => required[place] = measured.value,
                None if given[measurement.index()] => {}
                None => errors.push(MeasurementError::Missing { measurement }),
            }
        }
        if !errors.is_empty() {
            return Err(MeasurementErrors::new(errors));
        }
        let doubts = doubts(&values, &required);
        complete(&mut values, &required);
        Ok(Self {
            values,
            doubts,
            beyond_survey: beyond_survey(&required),
        })
    }

    /// The same body with one more value taken, or another in its place.
    ///
    /// # Errors
    ///
    /// [`MeasurementErrors`] if the value is not finite or impossible.
    pub fn with_taken(
        &self,
        measurement: Measurement,
        value: f64,
    ) -> Result<Self, MeasurementErrors> {
        let others = self.taken().filter(|(m, _)| *m != measurement);
        Self::from_taken(others.chain([(measurement, value)]))
    }

    /// The value and its source; `None` only for a `front_width` that was not taken.
    #[must_use]
    pub fn get(&self, measurement: Measurement) -> Option<Measured> {
        self.values[measurement.index()]
    }

    /// The value: mm, or radians.
    ///
    /// Every measurement but `front_width` has one. A `front_width` that was not taken
    /// answers with the `back_width`, the nearest there is; ask [`get`](Self::get) to
    /// tell the two apart.
    #[must_use]
    pub fn value(&self, measurement: Measurement) -> f64 {
        self.values[measurement.index()]
            .or(self.values[Measurement::BackWidth.index()])
            .map_or(0.0, |measured| measured.value)
    }

    /// The value a draft should work from: as [`value`](Self::value), but an estimated front
    /// or back waist length follows its partner when that was taken.
    ///
    /// Who has a longer back than her build says has a longer front too: by 0.6 of it, as
    /// what the two regressions leave unexplained goes together in the survey. Two lengths
    /// that are estimated apart would make a bust dart out of that difference.
    ///
    /// ```
    /// use blockwright::measurements::{Body, Measurement};
    ///
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0),
    ///     (Measurement::BustGirth, 920.0),
    ///     (Measurement::WaistGirth, 760.0),
    ///     (Measurement::HipGirth, 1000.0),
    ///     (Measurement::BackWaistLength, 410.0),
    /// ])?;
    /// let front = Measurement::FrontWaistLength;
    /// assert!(body.drafting_value(front) > body.value(front) + 10.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn drafting_value(&self, measurement: Measurement) -> f64 {
        let value = self.value(measurement);
        if self.is_taken(measurement) {
            return value;
        }
        PARTNERS
            .iter()
            .filter(|(of, partner, _)| *of == measurement && self.is_taken(*partner))
            .filter_map(|(_, partner, slope)| {
                Some(slope * (self.value(*partner) - self.estimate(*partner)?.value))
            })
            .fold(value, |sum, shift| sum + shift)
    }

    /// Whether the value was taken.
    #[must_use]
    pub fn is_taken(&self, measurement: Measurement) -> bool {
        self.get(measurement)
            .is_some_and(|measured| measured.source.is_taken())
    }

    /// What the measurement would be if it had not been taken: the estimate from
    /// height, bust, waist and hip alone. `None` for those four and for `front_width`.
    #[must_use]
    pub fn estimate(&self, measurement: Measurement) -> Option<Measured> {
        let required = Measurement::REQUIRED.map(|m| self.value(m));
        estimate(measurement, &required).map(|(value, spread)| Measured {
            value,
            source: Source::Estimated { spread },
        })
    }

    /// Every value, in the order of [`Measurement::ALL`].
    pub fn iter(&self) -> impl Iterator<Item = (Measurement, Measured)> + '_ {
        Measurement::ALL
            .into_iter()
            .filter_map(|m| self.get(m).map(|measured| (m, measured)))
    }

    /// The values that were taken, in the order of [`Measurement::ALL`].
    pub fn taken(&self) -> impl Iterator<Item = (Measurement, f64)> + '_ {
        self.iter()
            .filter(|(_, measured)| measured.source.is_taken())
            .map(|(measurement, measured)| (measurement, measured.value))
    }

    /// The taken values that are hard to believe.
    #[must_use]
    pub fn doubts(&self) -> &[Doubt] {
        &self.doubts
    }

    /// Those of height, bust, waist and hip that lie outside the bodies surveyed:
    /// estimates resting on them are drawn out beyond what was measured.
    #[must_use]
    pub fn beyond_survey(&self) -> &[Measurement] {
        &self.beyond_survey
    }
}

type Values = [Option<Measured>; Measurement::ALL.len()];

/// Fills in the estimates and moves those that break the order of bodies.
fn complete(values: &mut Values, required: &Required) {
    for measurement in Measurement::ALL {
        let slot = &mut values[measurement.index()];
        if slot.is_none() {
            *slot = estimate(measurement, required).map(|(value, spread)| Measured {
                value,
                source: Source::Estimated { spread },
            });
        }
    }
    // An estimate that was moved to fit a taken value stays where it was put, so that a
    // large taken wrist carries elbow, arm and armscye up one after the other. Each pass
    // can settle one more link; the longest chain has three.
    let mut settled = values.map(|v| v.is_some_and(|measured| measured.source.is_taken()));
    for _ in 0..3 {
        for order in ORDERS {
            let (lesser, greater) = (order.lesser.index(), order.greater.index());
            let (Some(low), Some(high)) = (values[lesser], values[greater]) else {
                continue;
            };
            if low.value <= order.most(high.value) {
                continue;
            }
            match (settled[lesser], settled[greater]) {
                (false, by_taken) => {
                    let value = order.lesser.range().nearest(order.most(high.value));
                    values[lesser] = Some(Measured { value, ..low });
                    settled[lesser] = by_taken;
                }
                (true, false) => {
                    let value = order.greater.range().nearest(order.least(low.value));
                    values[greater] = Some(Measured { value, ..high });
                    settled[greater] = true;
                }
                (true, true) => {}
            }
        }
    }
}

/// The doubts about taken values; estimates are not yet filled in.
fn doubts(values: &Values, required: &Required) -> Vec<Doubt> {
    let mut doubts = Vec::new();
    for measurement in Measurement::ALL {
        let taken = values[measurement.index()];
        if let (Some(taken), Some((value, spread))) = (taken, estimate(measurement, required))
            && (taken.value - value).abs() > DOUBT_SPREADS * spread
        {
            doubts.push(Doubt {
                code: DoubtCode::FarFromEstimate,
                measurement,
                value: taken.value,
                against: Against::Estimate { value, spread },
                reason: "",
            });
        }
    }
    let pair = |a: Measurement, b: Measurement| {
        values[a.index()]
            .zip(values[b.index()])
            .map(|(a, b)| (a.value, b.value))
    };
    for order in ORDERS {
        if let Some((lesser, greater)) = pair(order.lesser, order.greater)
            && order.is_doubtful(lesser, greater)
        {
            doubts.push(Doubt {
                code: order.code,
                measurement: order.lesser,
                value: lesser,
                against: Against::Taken {
                    measurement: order.greater,
                    value: greater,
                },
                reason: order.text,
            });
        }
    }
    let (front, back) = (Measurement::FrontWidth, Measurement::BackWidth);
    if let Some((chest, across_back)) = pair(front, back)
        && !(0.75..=1.2).contains(&(chest / across_back))
    {
        doubts.push(Doubt {
            code: DoubtCode::WidthsDisagree,
            measurement: front,
            value: chest,
            against: Against::Taken {
                measurement: back,
                value: across_back,
            },
            reason: "chest and back are seldom so far apart",
        });
    }
    doubts
}
