//! What can be wrong with a length or an angle.

use crate::explain::Explain;
use thiserror::Error;

/// A text or number that is no usable length or angle: what was wrong, what was
/// expected and what to write instead.
///
/// ```
/// use blockwright::units::{Length, Unit, UnitError};
///
/// let error = Length::parse("92 ells", Some(Unit::Cm)).unwrap_err();
/// assert!(matches!(error, UnitError::UnknownUnit { .. }));
/// assert!(error.to_string().contains("ells"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum UnitError {
    /// Nothing was written.
    #[error("no value is written; write a number with its unit, such as `92 cm`")]
    Empty,
    /// The text does not start with a number of a known form.
    #[error(
        "`{text}` is not a number; write it as `92`, `92.5`, `92,5`, `36 1/2` or `36½`, \
         then the unit"
    )]
    NotANumber {
        /// The text as it was written, shortened if long.
        text: String,
    },
    /// A fraction whose lower number is zero, or whose upper number is not below the
    /// lower one after a whole number.
    #[error("`{text}` is not a fraction; write it as `1/2`, the upper number below the lower")]
    BadFraction {
        /// The text as it was written, shortened if long.
        text: String,
    },
    /// A comma that could part thousands as well as decimals.
    #[error(
        "the comma in `{text}` can be read in two ways; write the decimals with a point, \
         and no mark between thousands"
    )]
    AmbiguousComma {
        /// The text as it was written, shortened if long.
        text: String,
    },
    /// The unit is not known.
    #[error("`{unit}` in `{text}` is not a known unit; use {expected}")]
    UnknownUnit {
        /// The text as it was written, shortened if long.
        text: String,
        /// The part that was taken for the unit.
        unit: String,
        /// The units that are known.
        expected: &'static str,
    },
    /// A bare number where no unit is agreed.
    #[error("`{text}` has no unit; write `mm`, `cm` or `in` after the number")]
    MissingUnit {
        /// The text as it was written, shortened if long.
        text: String,
    },
    /// The number is not a number, or infinite.
    #[error("the value is not a finite number; give a number")]
    NotFinite,
    /// A negative value where none can be.
    #[error("{value} {unit} is negative; give a value of zero or more")]
    Negative {
        /// The value in `unit`.
        value: f64,
        /// Its unit.
        unit: &'static str,
    },
    /// The value is beyond anything that can be meant.
    #[error("the value is larger than {limit} {unit}; check the number and its unit")]
    TooLarge {
        /// The largest value accepted, in `unit`.
        limit: f64,
        /// Its unit.
        unit: &'static str,
    },
}

/// The text for an error message: at most forty characters, on one line.
pub(super) fn quoted(text: &str) -> String {
    const LONGEST: usize = 40;
    let mut shown: String = text
        .trim()
        .chars()
        .take(LONGEST)
        .map(|c| if c.is_control() { ' ' } else { c })
        .collect();
    if text.trim().chars().count() > LONGEST {
        shown.push('…');
    }
    shown
}

impl Explain for UnitError {
    fn code(&self) -> String {
        match self {
            Self::Empty => "no_value",
            Self::NotANumber { .. } => "not_a_number",
            Self::BadFraction { .. } => "bad_fraction",
            Self::AmbiguousComma { .. } => "ambiguous_comma",
            Self::UnknownUnit { .. } => "unknown_unit",
            Self::MissingUnit { .. } => "missing_unit",
            Self::NotFinite => "not_finite",
            Self::Negative { .. } => "negative",
            Self::TooLarge { .. } => "too_large",
        }
        .to_owned()
    }

    fn cure(&self) -> String {
        match self {
            Self::Empty => "write a number with its unit, such as `92 cm`".to_owned(),
            Self::NotANumber { .. } => {
                "write it as `92`, `92.5`, `92,5`, `36 1/2` or `36½`, then the unit".to_owned()
            }
            Self::BadFraction { .. } => "write it as `1/2`".to_owned(),
            Self::AmbiguousComma { .. } => {
                "write the decimals with a point, and no mark between thousands".to_owned()
            }
            Self::UnknownUnit { expected, .. } => format!("use {expected}"),
            Self::MissingUnit { .. } => "write `mm`, `cm` or `in` after the number".to_owned(),
            Self::NotFinite => "give a number".to_owned(),
            Self::Negative { .. } => "give a value of zero or more".to_owned(),
            Self::TooLarge { .. } => "check the number and its unit".to_owned(),
        }
    }
}
