//! Why there is no form.

use super::parameter::ShapeParameter;
use crate::explain::Explain;
use crate::measurements::Measurement;
use thiserror::Error;

/// Why a body has no form.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::form::{Form, FormError};
/// use blockwright::measurements::{Body, Measurement};
/// // A back that ends above the armpits.
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
///     (Measurement::BackWaistLength, 300.0), (Measurement::ScyeDepth, 290.0),
/// ])?;
/// let error = Form::of(&body).unwrap_err();
/// assert_eq!(error.code(), "no_such_body");
/// assert!(matches!(error, FormError::Contradiction { .. }));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum FormError {
    /// Two measurements contradict each other.
    #[error(
        "no body in the round has {one} {one_value:.0} mm together with {other} {other_value:.0} mm: \
         {what}"
    )]
    Contradiction {
        /// The measurement that is hardest to believe.
        one: Measurement,
        /// Its value in mm.
        one_value: f64,
        /// The one that it contradicts most.
        other: Measurement,
        /// Its value in mm.
        other_value: f64,
        /// What the nearest body would have.
        what: OutOfReach,
    },
    /// Too few measurements were taken to say which of them are wrong.
    #[error("no body in the round has these measurements: {what}")]
    Unusual {
        /// What the nearest body would have.
        what: OutOfReach,
    },
}

/// What the nearest body in the round would have.
///
/// ```
/// use blockwright::form::{OutOfReach, ShapeParameter};
/// let what = OutOfReach::Dimension { of: ShapeParameter::WaistDepth, spreads: -5.2 };
/// assert!(what.to_string().contains("waist_depth"));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum OutOfReach {
    /// A measurement is missed.
    Measurement {
        /// Which.
        of: Measurement,
        /// What a tape would find, in mm.
        found: f64,
    },
    /// Two levels are too close, or the wrong way round.
    Levels {
        /// The lower one.
        lower: &'static str,
        /// The upper one.
        upper: &'static str,
        /// How far the upper one would be above it, in mm.
        gap: f64,
        /// How far it has to be at least, in mm.
        least: f64,
    },
    /// A dimension is far from those of the women surveyed.
    Dimension {
        /// Which.
        of: ShapeParameter,
        /// By how many spreads it is off.
        spreads: f64,
    },
}

impl std::fmt::Display for OutOfReach {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Measurement { of, found } => {
                write!(f, "on the nearest one a tape finds {of} {found:.0} mm")
            }
            Self::Levels {
                lower, upper, gap, ..
            } => write!(
                f,
                "on the nearest one the {upper} are {gap:.0} mm above the {lower}"
            ),
            Self::Dimension { of, spreads } => write!(
                f,
                "on the nearest one {of} is {:.1} standard deviations {} than expected",
                spreads.abs(),
                if *spreads < 0.0 { "less" } else { "more" }
            ),
        }
    }
}

impl Explain for FormError {
    fn code(&self) -> String {
        "no_such_body".to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Contradiction { one, .. } => Some(one.name().to_owned()),
            Self::Unusual { .. } => None,
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Contradiction { one, other, .. } => format!("take {one} and {other} again"),
            Self::Unusual { .. } => "take height, bust, waist and hip again".to_owned(),
        }
    }
}
