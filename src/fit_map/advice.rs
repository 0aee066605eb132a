//! What a map says, and what it cannot say.

use crate::measurements::Measurement;
use serde::{Serialize, Serializer, ser::SerializeStruct as _};
use std::fmt;

/// What a map says, and what it cannot say. Written out it is a sentence; lengths are in mm.
///
/// Serialised as a code and the sentence.
///
/// ```
/// use blockwright::fit_map::Advice;
/// let advice = Advice::ReduceBack { amount: 18.0 };
/// assert_eq!(advice.code(), "reduce_back");
/// assert!(advice.to_string().contains("back_length_reduction"));
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Advice {
    /// The pattern was drafted from the wearer's own numbers, and nothing more is known.
    AgreesByConstruction,
    /// Measurements without which nothing can be said of lengths.
    NotMeasured {
        /// Which.
        missing: Vec<Measurement>,
    },
    /// The back is long for the wearer, the front is not short.
    ReduceBack {
        /// By how much, in mm.
        amount: f64,
    },
    /// The back is short.
    LengthenBack {
        /// By how much, in mm.
        amount: f64,
    },
    /// The front is short.
    ShortFront {
        /// By how much, in mm.
        amount: f64,
        /// Whether the back looks long as well.
        back_looks_long: bool,
    },
    /// The front is long.
    LongFront {
        /// By how much, in mm.
        amount: f64,
    },
    /// Nothing is off by more than threads can tell.
    Agrees,
}

impl Advice {
    /// A short name for programs.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::AgreesByConstruction => "agrees_by_construction",
            Self::NotMeasured { .. } => "not_measured",
            Self::ReduceBack { .. } => "reduce_back",
            Self::LengthenBack { .. } => "lengthen_back",
            Self::ShortFront { .. } => "short_front",
            Self::LongFront { .. } => "long_front",
            Self::Agrees => "agrees",
        }
    }
}

impl fmt::Display for Advice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::AgreesByConstruction => f.write_str(
                "Drafted from the same numbers: agrees by construction. A fault shows only with a \
                 block made for other numbers, or on a toile.",
            ),
            Self::NotMeasured { missing } => {
                let names: Vec<&str> = missing.iter().map(|of| of.name()).collect();
                write!(
                    f,
                    "No amount is suggested: {} not measured on the wearer.",
                    match names.as_slice() {
                        [one] => format!("{one} was"),
                        _ => format!("{} were", names.join(" and ")),
                    }
                )
            }
            Self::ReduceBack { amount } => write!(
                f,
                "The back is {amount:.0} mm longer than the wearer's, the front is long enough: \
                 back_length_reduction by {amount:.0} mm. Pin it on a toile first."
            ),
            Self::LengthenBack { amount } => write!(
                f,
                "The back is {amount:.0} mm shorter than the wearer's: back_length_increase by \
                 {amount:.0} mm."
            ),
            Self::ShortFront {
                amount,
                back_looks_long,
            } => {
                write!(
                    f,
                    "The front is {amount:.0} mm shorter than the wearer's: lengthen it first \
                     (front_length)."
                )?;
                if *back_looks_long {
                    f.write_str(
                        " A short front pulls the back down and makes folds that look like a long \
                         back: no back-length reduction is suggested before that.",
                    )?;
                }
                Ok(())
            }
            Self::LongFront { amount } => write!(
                f,
                "The front is {amount:.0} mm longer than the wearer's: shorten it (front_length)."
            ),
            Self::Agrees => f.write_str("Lengths agree within 3 mm."),
        }
    }
}

impl Serialize for Advice {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Advice", 2)?;
        out.serialize_field("code", self.code())?;
        out.serialize_field("text", &self.to_string())?;
        out.end()
    }
}
