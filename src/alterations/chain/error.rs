//! Why an alteration cannot be made.

use crate::explain::Explain;
use crate::geometry::GeometryError;
use crate::piece::{Measure, PieceError};
use thiserror::Error;

/// An alteration that cannot be made on a pattern.
///
/// ```
/// use blockwright::alterations::AlterationError;
/// let e = AlterationError::Missing { what: "a piece named sleeve".into(), advice: "draft with a sleeve" };
/// assert!(e.to_string().contains("sleeve"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum AlterationError {
    /// The pattern has not what the alteration works on.
    #[error("the pattern lacks {what}: {advice}")]
    Missing {
        /// What is missing.
        what: String,
        /// What to do about it.
        advice: &'static str,
    },
    /// The amount is more than this pattern bears.
    #[error(
        "{:.1} {unit} is more than this pattern bears: {why}; at most {:.1} {unit}",
        tenths(*amount),
        tenths(*most)
    )]
    TooMuch {
        /// The amount asked for.
        amount: f64,
        /// The largest that could be kept.
        most: f64,
        /// Unit of both.
        unit: &'static str,
        /// What stands against more.
        why: String,
    },
    /// Something else has to be done first.
    #[error("{why}: {advice}")]
    First {
        /// What was found.
        why: String,
        /// What to do first.
        advice: String,
    },
    /// It needs a part of the crate that was left out when it was built.
    #[error("{what} was not built in: build with the feature {feature}, or choose {instead}")]
    NotBuilt {
        /// What was asked for.
        what: &'static str,
        /// The feature of the crate it needs.
        feature: &'static str,
        /// What does without.
        instead: &'static str,
    },
    /// The alteration's own settings contradict each other or are no numbers.
    #[error("{0}")]
    Setting(String),
    /// A measure of the pattern cannot be brought to what is wanted.
    #[error(
        "{measure} cannot be brought from {before:.1} to {to:.1} {unit}; the nearest found is {nearest:.1} {unit}, ask for that or less"
    )]
    OutOfReach {
        /// The measure.
        measure: Box<Measure>,
        /// What it is.
        before: f64,
        /// What it was to be.
        to: f64,
        /// The nearest to that which was found.
        nearest: f64,
        /// Unit of all three.
        unit: &'static str,
    },
    /// A construction has no solution.
    #[error(
        "this pattern leaves no room for it ({step}): ask for less, or make it earlier in the chain"
    )]
    Construction {
        /// The step that failed.
        step: &'static str,
        /// What geometry said.
        source: GeometryError,
    },
    /// What came out is no piece.
    #[error("a piece could no longer be cut out: ask for less, or make it earlier in the chain")]
    Piece(#[from] PieceError),
}

impl From<GeometryError> for AlterationError {
    fn from(source: GeometryError) -> Self {
        Self::Construction {
            step: "cutting and moving the paper",
            source,
        }
    }
}

/// A number to a tenth; rounded to nothing it loses its minus sign.
fn tenths(number: f64) -> f64 {
    (number * 10.0).round() / 10.0 + 0.0
}

impl Explain for AlterationError {
    fn code(&self) -> String {
        match self {
            Self::Missing { .. } => "alteration_has_nothing_to_alter",
            Self::TooMuch { .. } => "alteration_too_much",
            Self::First { .. } => "alteration_needs_something_first",
            Self::NotBuilt { .. } => "alteration_not_built",
            Self::Setting(_) => "bad_alteration",
            Self::OutOfReach { .. } => "target_out_of_reach",
            Self::Construction { .. } => "alteration_not_constructible",
            Self::Piece(_) => "altered_piece_does_not_close",
            #[allow(unreachable_patterns)]
            _ => "alteration_refused",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Missing { what, .. } => Some(what.clone()),
            Self::OutOfReach { measure, .. } => Some(measure.to_string()),
            Self::Construction { step, .. } => Some((*step).to_owned()),
            Self::Piece(error) => error.place(),
            _ => None,
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Missing { advice, .. } => (*advice).to_owned(),
            Self::TooMuch { most, unit, .. } => {
                format!("ask for at most {:.1} {unit}", tenths(*most))
            }
            Self::First { advice, .. } => advice.clone(),
            Self::NotBuilt {
                feature, instead, ..
            } => {
                format!("build with the feature {feature}, or choose {instead}")
            }
            Self::OutOfReach { nearest, unit, .. } => {
                format!("ask for {nearest:.1} {unit}, or for what lies nearer to the draft")
            }
            _ => "ask for less, or alter the pattern in another order".to_owned(),
        }
    }
}
