//! Doubts about measurements that are possible, yet hard to believe.

use std::fmt;

use serde::ser::SerializeStruct;
use serde::{Serialize, Serializer};

use super::measurement::Measurement;
use super::show::{difference, rounded, show};
use crate::units::Unit;

/// What kind of doubt it is, for programs.
///
/// ```
/// use blockwright::measurements::DoubtCode;
///
/// assert_eq!(DoubtCode::ScyeAtWaist.code(), "scye_at_waist");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum DoubtCode {
    /// More than three spreads from what everything else that was taken leads to expect.
    FarFromEstimate,
    /// Two taken values of which either alone would be believed.
    PairDisagrees,
    /// Underbust girth above the bust girth by more than 20 mm.
    UnderbustAboveBust,
    /// Upper chest girth above the bust girth by more than 12 %.
    UpperChestAboveBust,
    /// Back or chest wider than half the bust.
    WidthAgainstBust,
    /// Bust points as far apart as the back or chest is wide.
    BustPointsTooWide,
    /// One shoulder longer than half the back is wide.
    ShoulderTooLong,
    /// Scye depth less than 60 mm above the waist, or below it.
    ScyeAtWaist,
    /// Centre front not shorter than the front from the neck side point.
    FrontLengthsSwapped,
    /// Bust point at the waist.
    BustPointAtWaist,
    /// Hip level near the knee.
    HipAtKnee,
    /// A length too great for the height.
    LengthAgainstHeight,
    /// Wrist, elbow, upper arm and armscye out of order.
    ArmGirthsDisagree,
    /// Waist far above the hip girth.
    WaistAgainstHip,
    /// Waist far above the bust girth.
    WaistAgainstBust,
    /// Chest and back width far apart.
    WidthsDisagree,
}

impl DoubtCode {
    /// The code in machine output, such as `far_from_estimate`.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Self::FarFromEstimate => "far_from_estimate",
            Self::PairDisagrees => "pair_disagrees",
            Self::UnderbustAboveBust => "underbust_above_bust",
            Self::UpperChestAboveBust => "upper_chest_above_bust",
            Self::WidthAgainstBust => "width_against_bust",
            Self::BustPointsTooWide => "bust_points_too_wide",
            Self::ShoulderTooLong => "shoulder_too_long",
            Self::ScyeAtWaist => "scye_at_waist",
            Self::FrontLengthsSwapped => "front_lengths_swapped",
            Self::BustPointAtWaist => "bust_point_at_waist",
            Self::HipAtKnee => "hip_at_knee",
            Self::LengthAgainstHeight => "length_against_height",
            Self::ArmGirthsDisagree => "arm_girths_disagree",
            Self::WaistAgainstHip => "waist_against_hip",
            Self::WaistAgainstBust => "waist_against_bust",
            Self::WidthsDisagree => "widths_disagree",
        }
    }
}

/// What a doubtful value is compared with.
///
/// ```
/// use blockwright::measurements::{Against, Body, Measurement};
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0),
///     (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0),
///     (Measurement::HipGirth, 1000.0),
///     (Measurement::BackWaistLength, 500.0),
/// ])?;
/// assert!(matches!(body.doubts()[0].against, Against::Estimate { .. }));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Against {
    /// Its own estimate.
    Estimate {
        /// The estimate: mm, or radians.
        value: f64,
        /// Its spread.
        spread: f64,
    },
    /// Another value that was taken.
    Taken {
        /// Which one.
        measurement: Measurement,
        /// Its value: mm, or radians.
        value: f64,
    },
    /// Another value that was taken: either may be the wrong one.
    Contradicting {
        /// Which one.
        measurement: Measurement,
        /// Its value: mm, or radians.
        value: f64,
        /// What the doubtful value would be, were the other right.
        expected: f64,
        /// What the other value would be, were the doubtful one right.
        other_expected: f64,
    },
}

/// A taken value that is possible yet hard to believe, with the number it is compared
/// with. A doubt refuses nothing: the value is used as taken.
///
/// Serialised with `code`, `measurement`, `value`, `against` (a measurement name, or
/// `estimate`), `against_value` and `text`, and for two values that contradict each other
/// `expected` and `against_expected`; lengths in mm, angles in degrees.
///
/// ```
/// use blockwright::measurements::{Body, DoubtCode, Measurement};
///
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0),
///     (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0),
///     (Measurement::HipGirth, 1000.0),
///     (Measurement::UnderbustGirth, 960.0),
/// ])?;
/// let codes: Vec<DoubtCode> = body.doubts().iter().map(|doubt| doubt.code).collect();
/// assert!(codes.contains(&DoubtCode::UnderbustAboveBust));
/// assert!(body.doubts()[0].to_string().contains("960 mm"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Doubt {
    /// What kind of doubt it is.
    pub code: DoubtCode,
    /// The value that is doubted.
    pub measurement: Measurement,
    /// Its number: mm, or radians.
    pub value: f64,
    /// What it is compared with.
    pub against: Against,
    /// What is wrong, without the numbers.
    pub(super) reason: &'static str,
}

impl Doubt {
    /// The doubt for a person, lengths in `unit`.
    #[must_use]
    pub fn text(&self, unit: Unit) -> String {
        let value = show(self.measurement, self.value, unit);
        match self.against {
            Against::Estimate {
                value: estimate,
                spread,
            } => format!(
                "{} {value} is {:.1} spreads from its estimate {} ±{}; measure it again if \
                 that is not this figure",
                self.measurement,
                (self.value - estimate).abs() / spread,
                show(self.measurement, estimate, unit),
                difference(self.measurement, spread, unit),
            ),
            Against::Taken {
                measurement,
                value: other,
            } => format!(
                "{} {value} against {measurement} {}: {}; measure both again",
                self.measurement,
                show(measurement, other, unit),
                self.reason,
            ),
            Against::Contradicting {
                measurement,
                value: other,
                expected,
                other_expected,
            } => format!(
                "{} {value} and {measurement} {} contradict each other: if {measurement} is right, \
                 {} should be near {}; if {} is right, {measurement} should be near {}; measure both \
                 again",
                self.measurement,
                show(measurement, other, unit),
                self.measurement,
                show(self.measurement, expected, unit),
                self.measurement,
                show(measurement, other_expected, unit),
            ),
        }
    }
}

impl fmt::Display for Doubt {
    /// The doubt for a person, in millimetres.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text(Unit::Mm))
    }
}

impl Serialize for Doubt {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.write(serializer, Unit::Mm)
    }
}

impl Doubt {
    /// The doubt with its text in a unit; its numbers stay in mm or degrees.
    pub(super) fn write<S: Serializer>(
        &self,
        serializer: S,
        unit: Unit,
    ) -> Result<S::Ok, S::Error> {
        let (against, other, expected) = match self.against {
            Against::Estimate { value, .. } => ("estimate", rounded(self.measurement, value), None),
            Against::Taken { measurement, value } => {
                (measurement.name(), rounded(measurement, value), None)
            }
            Against::Contradicting {
                measurement,
                value,
                expected,
                other_expected,
            } => {
                let expected = rounded(self.measurement, expected);
                let other_expected = rounded(measurement, other_expected);
                let both = Some((expected, other_expected));
                (measurement.name(), rounded(measurement, value), both)
            }
        };
        let fields = if expected.is_some() { 8 } else { 6 };
        let mut out = serializer.serialize_struct("Doubt", fields)?;
        out.serialize_field("code", self.code.code())?;
        out.serialize_field("measurement", &self.measurement)?;
        out.serialize_field("value", &rounded(self.measurement, self.value))?;
        out.serialize_field("against", against)?;
        out.serialize_field("against_value", &other)?;
        if let Some((expected, other)) = expected {
            out.serialize_field("expected", &expected)?;
            out.serialize_field("against_expected", &other)?;
        }
        out.serialize_field("text", &self.text(unit))?;
        out.end()
    }
}
