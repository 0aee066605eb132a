//! Why an observation makes no step.

use crate::explain::Explain;
use thiserror::Error;

/// Why an observation makes no step.
///
/// ```
/// use blockwright::signs::{Found, Observed, observed};
/// let error = observed(&Observed::new("centre back waste", Found::Pinned, 25.0)).unwrap_err();
/// assert!(error.to_string().contains("did you mean `centre back waist`?"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ObservedError {
    /// No sign is known at that place.
    #[error("nothing is known of `{place}`; {hint}")]
    Unknown {
        /// The place, shortened if long.
        place: String,
        /// The place that was meant, or where to look.
        hint: String,
    },
    /// At that place cloth is opened, not pinned, or the like.
    #[error("at `{place}` the amount is {known}, not {said}: {measure}")]
    OtherWay {
        /// The place.
        place: &'static str,
        /// How it is found there.
        known: &'static str,
        /// What was said.
        said: &'static str,
        /// How it is measured.
        measure: &'static str,
    },
    /// An amount that nobody pins.
    #[error("{amount:.1} mm at `{place}` is no amount that a toile shows; write 1 to 100 mm")]
    Amount {
        /// The place.
        place: &'static str,
        /// The amount.
        amount: f64,
    },
}

impl Explain for ObservedError {
    fn code(&self) -> String {
        match self {
            Self::Unknown { .. } => "unknown_place",
            Self::OtherWay { .. } => "pinned_or_opened",
            Self::Amount { .. } => "no_such_amount",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Unknown { place, .. } => Some(place.clone()),
            Self::OtherWay { place, .. } | Self::Amount { place, .. } => Some((*place).to_owned()),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Unknown { hint, .. } => hint.clone(),
            Self::OtherWay { known, .. } => format!("write `{known}:` and the amount"),
            Self::Amount { .. } => "write 1 to 100 mm".to_owned(),
        }
    }
}
