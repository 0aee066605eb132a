//! A body: what was taken, and estimates of the rest.

use super::by_measurement::ByMeasurement;
use super::doubt::{Against, Doubt, DoubtCode};
use super::error::{MeasurementError, MeasurementErrors};
use super::estimation::{self, Slot, beyond_survey, is_farther_than_surveyed, keep_order};
use super::joint::{self, Conditioned};
use super::judgement::judge;
use super::measurement::Measurement;
use super::order::ORDERS;

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
    /// Estimated from everything that was measured.
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
/// * What was not taken is estimated from everything that was, save `back_hollow`, `nape_plumb` and
///   `waist_plumb`, which no source relates to the rest. The front width rests on handbooks, not on
///   the survey.
/// * A taken value that the others make hard to believe is kept, doubted, and moves the
///   estimates only as far as the nearest believable one would.
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
/// assert!(body.value(Measurement::FrontWidth) < body.value(Measurement::BackWidth));
/// assert!(body.get(Measurement::BackHollow).is_none());
/// assert!(body.doubts().is_empty());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Body {
    values: Values,
    doubts: Vec<Doubt>,
    beyond_survey: Vec<Measurement>,
    farther_than_surveyed: bool,
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
        let mut values: Values = ByMeasurement::all(None);
        let mut given = ByMeasurement::all(false);
        for (measurement, value) in taken {
            if std::mem::replace(given.of_mut(measurement), true) {
                errors.push(MeasurementError::Repeated { measurement });
            } else if !value.is_finite() {
                errors.push(MeasurementError::NotFinite { measurement });
            } else if !measurement.range().contains(value) {
                errors.push(MeasurementError::OutOfRange { measurement, value });
            } else {
                let source = Source::Taken;
                *values.of_mut(measurement) = Some(Measured { value, source });
            }
        }
        let mut required = [0.0; 4];
        for (slot, measurement) in required.iter_mut().zip(Measurement::REQUIRED) {
            match values.of(measurement) {
                Some(measured) => *slot = measured.value,
                None if *given.of(measurement) => {}
                None => errors.push(MeasurementError::Missing { measurement }),
            }
        }
        if let Some(errors) = MeasurementErrors::of(errors) {
            return Err(errors);
        }
        let judged = judge(&taken_of(&values));
        let doubts = doubts(&values, judged.doubts);
        if let Some(given) = Conditioned::on(judged.heeded) {
            complete(&mut values, &given, required[0]);
        }
        Ok(Self {
            values,
            doubts,
            beyond_survey: beyond_survey(required),
            farther_than_surveyed: is_farther_than_surveyed(required),
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

    /// The value and its source; `None` only for a `back_hollow`, `nape_plumb` or `waist_plumb` that was
    /// not taken.
    #[must_use]
    pub fn get(&self, measurement: Measurement) -> Option<Measured> {
        *self.values.of(measurement)
    }

    /// The value: mm, or radians.
    ///
    /// Every measurement but `back_hollow`, `nape_plumb` and `waist_plumb` has one. Those answer with 0,
    /// a straight back, if they were not taken; ask [`get`](Self::get) to tell the two apart.
    #[must_use]
    pub fn value(&self, measurement: Measurement) -> f64 {
        self.get(measurement).map_or(0.0, |measured| measured.value)
    }

    /// Whether the value was taken.
    #[must_use]
    pub fn is_taken(&self, measurement: Measurement) -> bool {
        self.get(measurement)
            .is_some_and(|measured| measured.source.is_taken())
    }

    /// What the measurement would be if it had not been taken: the estimate from everything
    /// else that was. `None` for height, bust, waist and hip, and for `back_hollow` and
    /// the two from a plumb line.
    ///
    /// ```
    /// use blockwright::measurements::{Body, Measurement};
    ///
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0),
    ///     (Measurement::BustGirth, 920.0),
    ///     (Measurement::WaistGirth, 760.0),
    ///     (Measurement::HipGirth, 1000.0),
    /// ])?;
    /// // Who has a longer back than her build says has a longer front too.
    /// let longer = body.with_taken(Measurement::BackWaistLength, 410.0)?;
    /// let front = Measurement::FrontWaistLength;
    /// assert!(longer.value(front) > body.value(front) + 10.0);
    /// assert!(longer.estimate(Measurement::BackWaistLength).is_some_and(|e| e.value < 400.0));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn estimate(&self, measurement: Measurement) -> Option<Measured> {
        if measurement.is_required() {
            return None;
        }
        let mut others = taken_of(&self.values);
        others.retain(|(other, _)| *other != measurement);
        let given = Conditioned::on(judge(&others).heeded)?;
        let height = self.value(Measurement::Height);
        let estimate = estimation::estimate(&given, measurement, height)?;
        Some(Measured {
            value: estimate.value,
            source: Source::Estimated {
                spread: estimate.spread,
            },
        })
    }

    /// The measurements that would sharpen the estimates most, the best first, at most `count`:
    /// those of the ones not taken yet that leave the least uncertainty in what a draft uses.
    ///
    /// ```
    /// use blockwright::measurements::{Body, Measurement};
    ///
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0),
    ///     (Measurement::BustGirth, 1400.0),
    ///     (Measurement::WaistGirth, 1240.0),
    ///     (Measurement::HipGirth, 1420.0),
    /// ])?;
    /// let wanted = body.most_helpful(4);
    /// assert_eq!(wanted.len(), 4);
    /// assert!(wanted.iter().all(|measurement| !body.is_taken(*measurement)));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn most_helpful(&self, count: usize) -> Vec<Measurement> {
        let open: Vec<Measurement> = Measurement::ALL
            .into_iter()
            .filter(|m| m.shapes_a_draft() && joint::is_known(*m) && !self.is_taken(*m))
            .collect();
        Conditioned::on(judge(&taken_of(&self.values)).heeded)
            .map(|given| estimation::most_helpful(&given, &open, count))
            .unwrap_or_default()
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

    /// Whether height, bust, waist and hip together are farther from the mean than those of any
    /// woman surveyed, though each alone may be in range: a waist as large as the bust, say.
    #[must_use]
    pub const fn is_farther_than_surveyed(&self) -> bool {
        self.farther_than_surveyed
    }
}

type Values = ByMeasurement<Option<Measured>>;

fn taken_of(values: &Values) -> Vec<(Measurement, f64)> {
    Measurement::ALL
        .into_iter()
        .filter_map(|m| Some((m, values.of(m).filter(|v| v.source.is_taken())?.value)))
        .collect()
}

/// Fills in the estimates and moves those that break the order of bodies.
fn complete(values: &mut Values, given: &Conditioned, height: f64) {
    for (measurement, slot) in values.iter_mut() {
        if slot.is_none() {
            *slot = estimation::estimate(given, measurement, height).map(|estimate| Measured {
                value: estimate.value,
                source: Source::Estimated {
                    spread: estimate.spread,
                },
            });
        }
    }
    let mut slots = values.map(|slot| {
        slot.map(|measured| Slot {
            value: measured.value,
            settled: measured.source.is_taken(),
        })
    });
    keep_order(&mut slots);
    for (measurement, measured) in values.iter_mut() {
        if let (Some(measured), Some(slot)) = (measured, slots.of(measurement)) {
            measured.value = slot.value;
        }
    }
}

/// The doubts about taken values; estimates are not yet filled in. What breaks the order of
/// bodies is said in those words alone.
fn doubts(values: &Values, judged: Vec<Doubt>) -> Vec<Doubt> {
    let mut doubts = Vec::new();
    let pair = |a: Measurement, b: Measurement| {
        let (a, b) = (values.of(a).as_ref()?, values.of(b).as_ref()?);
        Some((a.value, b.value))
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
    let is_new = |doubt: &Doubt| {
        let Against::Contradicting { measurement, .. } = doubt.against else {
            return true;
        };
        let pair = [doubt.measurement, measurement];
        !doubts.iter().any(|known| match known.against {
            Against::Taken { measurement, .. } => {
                pair.contains(&known.measurement) && pair.contains(&measurement)
            }
            _ => false,
        })
    };
    let mut out: Vec<Doubt> = judged.into_iter().filter(is_new).collect();
    out.extend(doubts);
    out
}
