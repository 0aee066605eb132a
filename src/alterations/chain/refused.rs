//! A step that was refused: why, and the way out.

use super::plain_words::{law_in_words, promise_in_words};
use crate::alterations::{AlterationError, Broken, Undeclared};
use crate::explain::Explain;
use crate::invariants::Violation;
use crate::piece::MeasureUnit;
use std::fmt;
use thiserror::Error;

/// Why a step of a chain was refused.
///
/// ```
/// use blockwright::alterations::Reason;
/// fn is_law(reason: &Reason) -> bool { matches!(reason, Reason::Law(_)) }
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum Reason {
    /// The alteration itself refused.
    #[error(transparent)]
    Alteration(#[from] AlterationError),
    /// What came out cannot be sewn.
    #[error("{}", law_in_words(.0))]
    Law(Box<Violation>),
    /// A promise was not kept.
    #[error("{}", promise_in_words(.0))]
    Promise(#[from] Broken),
    /// A part of the pattern came or went that the alteration does not declare.
    #[error(transparent)]
    Structure(#[from] Undeclared),
}

/// A step of a chain that was refused, with the way out: the largest amount that would hold, or
/// an earlier step before which it holds as it was asked for.
///
/// ```
/// use blockwright::alterations::{AlterationError, EarlierStep, Reason, Refused};
/// use blockwright::piece::MeasureUnit;
/// let mut refused = Refused {
///     step: 2, alteration: "shoulder_slope".into(), amount: Some(40.0), most: Some(11.07),
///     unit: MeasureUnit::Degrees, before: None,
///     reason: Reason::Alteration(AlterationError::Setting("too steep".into())),
/// };
/// assert_eq!(refused.to_string(), "step 2, shoulder_slope by 40.0°: too steep; at most 11.0°");
/// refused.before = Some(EarlierStep { step: 1, alteration: "waist_girth".into() });
/// assert!(refused.to_string().ends_with("; at most 11.0°, or make it before step 1, waist_girth"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
pub struct Refused {
    /// Which step, counted from one.
    pub step: usize,
    /// The alteration's name.
    pub alteration: String,
    /// Its amount.
    pub amount: Option<f64>,
    /// Unit of both amounts.
    pub unit: MeasureUnit,
    /// The largest amount of the same sign that would hold, where a smaller one does.
    pub most: Option<f64>,
    /// The step before which it holds as asked for, and all that came before it still does.
    pub before: Option<EarlierStep>,
    /// What stands against it.
    pub reason: Reason,
}

/// A step of a chain, by its place and its name.
///
/// ```
/// use blockwright::alterations::EarlierStep;
/// let first = EarlierStep { step: 1, alteration: "bust".into() };
/// assert_eq!(first.to_string(), "step 1, bust");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EarlierStep {
    /// Which step, counted from one.
    pub step: usize,
    /// The alteration's name.
    pub alteration: String,
}

impl fmt::Display for EarlierStep {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "step {}, {}", self.step, self.alteration)
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "step {}, {}", self.step, self.alteration)?;
        if let Some(amount) = self.amount {
            write!(f, " by {amount:.1}{}", self.unit.symbol())?;
        }
        match &self.reason {
            // It has a number of its own, and there is to be one.
            Reason::Alteration(AlterationError::TooMuch { why, .. }) if self.most.is_some() => {
                write!(f, " is more than this pattern bears: {why}")?;
            }
            reason => write!(f, ": {reason}")?,
        }
        match (self.way_out(), &self.reason) {
            (Some(way), _) => write!(f, "; {way}"),
            // It says itself what to do.
            (None, Reason::Alteration(_)) => Ok(()),
            (None, reason) => write!(f, "; {}", reason.cure()),
        }
    }
}

impl Refused {
    /// What can be done about it, if that is known: less, or an earlier place.
    fn way_out(&self) -> Option<String> {
        // Rounded toward nought, so that what is said holds.
        let most = self.most.map(|most| (most * 10.0).trunc() / 10.0);
        let most = most.filter(|most| *most != 0.0);
        let less = most.map(|most| format!("at most {most:.1}{}", self.unit.symbol()));
        let sooner = self
            .before
            .as_ref()
            .map(|earlier| format!("make it before {earlier}"));
        match (less, sooner) {
            (Some(less), Some(sooner)) => Some(format!("{less}, or {sooner}")),
            (less, sooner) => less.or(sooner),
        }
    }
}

impl Explain for Reason {
    fn code(&self) -> String {
        match self {
            Self::Alteration(error) => error.code(),
            Self::Law(violation) => violation.code(),
            Self::Promise(broken) => broken.code(),
            Self::Structure(undeclared) => undeclared.code(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::Alteration(error) => error.place(),
            Self::Law(violation) => violation.place(),
            Self::Promise(broken) => broken.place(),
            Self::Structure(undeclared) => undeclared.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::Alteration(error) => error.cure(),
            Self::Law(_) | Self::Promise(_) => NO_AMOUNT.to_owned(),
            Self::Structure(undeclared) => undeclared.cure(),
        }
    }
}

/// What to do where no smaller amount holds either.
const NO_AMOUNT: &str = "leave the step out here, or make it before those that come before it";

impl Explain for Refused {
    fn code(&self) -> String {
        "alteration_refused".to_owned()
    }

    /// The step and its alteration, and what of the pattern stands against it.
    fn place(&self) -> Option<String> {
        let step = format!("step {}, {}", self.step, self.alteration);
        Some(match self.reason.place() {
            Some(place) => format!("{step}: {place}"),
            None => step,
        })
    }

    fn cure(&self) -> String {
        match self.way_out() {
            Some(way) if self.most.is_some() => format!("ask for {way}"),
            Some(way) => way,
            None => self.reason.cure(),
        }
    }
}
