//! Why values make no body.

use crate::explain::{Explain, Several};

use thiserror::Error;

use super::measurement::{Kind, Measurement};
use super::show::show;
use crate::units::{Unit, speak};

/// One value that makes a body impossible.
///
/// ```
/// use blockwright::measurements::{Body, Measurement, MeasurementError};
///
/// let errors = Body::from_taken([(Measurement::BustGirth, 92.0)]).unwrap_err();
/// assert!(matches!(errors.all()[0], MeasurementError::OutOfRange { .. }));
/// assert!(errors.to_string().contains("meant in cm"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum MeasurementError {
    /// A measurement that must be taken was not.
    #[error(
        "{measurement} is missing; height, bust_girth, waist_girth and hip_girth must be taken"
    )]
    Missing {
        /// The measurement.
        measurement: Measurement,
    },
    /// The value is not a number, or infinite.
    #[error("{measurement} is not a finite number; give its value")]
    NotFinite {
        /// The measurement.
        measurement: Measurement,
    },
    /// The value lies outside what is possible on a body.
    #[error(
        "{measurement} {} is impossible: it lies between {} and {}{}",
        show(*.measurement, *.value, Unit::Mm),
        show(*.measurement, .measurement.range().low, Unit::Mm),
        show(*.measurement, .measurement.range().high, Unit::Mm),
        slip(*.measurement, *.value)
    )]
    OutOfRange {
        /// The measurement.
        measurement: Measurement,
        /// Its value: mm, or radians.
        value: f64,
    },
    /// The same measurement was given twice.
    #[error("{measurement} is given more than once; keep one value")]
    Repeated {
        /// The measurement.
        measurement: Measurement,
    },
}

impl MeasurementError {
    /// The measurement that is wrong.
    #[must_use]
    pub const fn measurement(&self) -> Measurement {
        match self {
            Self::Missing { measurement }
            | Self::NotFinite { measurement }
            | Self::OutOfRange { measurement, .. }
            | Self::Repeated { measurement } => *measurement,
        }
    }
}

impl MeasurementError {
    /// What it says of a value that is written in a unit.
    pub(super) fn in_unit(&self, unit: Unit) -> String {
        let said = speak(&self.to_string(), unit);
        match self.shifted(unit) {
            Some((question, shifted)) => said.replace(question, &shifted),
            None => said,
        }
    }

    /// What to do about a value that is written in a unit.
    pub(super) fn cure_in(&self, unit: Unit) -> String {
        match self.shifted(unit) {
            Some((_, shifted)) => shifted,
            None => speak(&self.cure(), unit),
        }
    }

    /// A value that ten times as much would explain, in a unit that it is written in already: its
    /// decimal point slipped.
    fn shifted(&self, unit: Unit) -> Option<(&'static str, String)> {
        let Self::OutOfRange { measurement, value } = self else {
            return None;
        };
        let asked = slip(*measurement, *value).ends_with(IN_CM);
        (unit != Unit::Mm && asked).then(|| {
            let meant = show(*measurement, 10.0 * value, unit);
            (IN_CM, format!("was {meant} meant?"))
        })
    }
}

/// What is asked of a value a tenth of what is usual.
const IN_CM: &str = "was it meant in cm?";

/// The slip of unit that would explain an impossible value.
fn slip(measurement: Measurement, value: f64) -> String {
    let range = measurement.range();
    let factors: &[(f64, &str)] = match measurement.kind() {
        Kind::Length => &[
            (10.0, IN_CM),
            (25.4, "was it meant in inches?"),
            (1000.0, "was it meant in metres?"),
            (0.1, "was it meant in mm?"),
            (1.0 / 25.4, "was it meant in mm, not in inches?"),
            (1.0 / 2.54, "was it meant in cm, not in inches?"),
        ],
        Kind::Angle => &[(1.0_f64.to_radians(), "was it meant in degrees?")],
    };
    // Only a value far outside is a slip of the unit; one just outside is a wrong value.
    if value > range.low / 2.0 && value < range.high * 2.0 {
        return "; measure again".to_owned();
    }
    factors
        .iter()
        .find(|(factor, _)| range.contains(value * factor))
        .map_or_else(
            || "; measure again".to_owned(),
            |(_, question)| format!("; {question}"),
        )
}

/// Everything that is wrong with a set of values, in the order of the values.
///
/// ```
/// use blockwright::measurements::{Body, Measurement};
///
/// let errors = Body::from_taken([(Measurement::BustGirth, f64::NAN)]).unwrap_err();
/// assert_eq!(errors.all().len(), 4); // bust_girth, and three that are missing
/// for error in &errors {
///     assert!(Measurement::REQUIRED.contains(&error.measurement()));
/// }
/// ```
pub type MeasurementErrors = Several<MeasurementError>;

impl Explain for MeasurementError {
    fn code(&self) -> String {
        let what = match self {
            Self::Missing { .. } => "missing",
            Self::Repeated { .. } => "repeated",
            Self::NotFinite { .. } | Self::OutOfRange { .. } => "impossible",
        };
        format!("{}_{what}", self.measurement())
    }

    fn place(&self) -> Option<String> {
        Some(self.measurement().to_string())
    }

    fn cure(&self) -> String {
        match self {
            Self::Missing { measurement } => format!("measure {measurement}"),
            Self::NotFinite { .. } => "give its value".to_owned(),
            Self::OutOfRange { measurement, value } => slip(*measurement, *value)
                .trim_start_matches("; ")
                .to_owned(),
            Self::Repeated { .. } => "keep one value".to_owned(),
        }
    }
}
