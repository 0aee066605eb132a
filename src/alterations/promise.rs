//! What an alteration promises to keep.

use super::readings::Readings;
use crate::geometry::tolerance;
use thiserror::Error;

/// Something that an alteration keeps, by the name it has in accounts.
///
/// ```
/// use blockwright::alterations::Promise;
/// let p = Promise::exactly("back side_seam length");
/// assert_eq!(p.what, "back side_seam length");
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Promise {
    /// What is kept.
    pub what: String,
    /// By how much it is to change: zero to stay.
    pub change: f64,
    /// How far it may miss that, in millimetres or degrees.
    pub within: f64,
}

impl Promise {
    /// It stays, to the hundredth of a millimetre.
    #[must_use]
    pub fn exactly(what: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            change: 0.0,
            within: tolerance::SEAM_DRAFTED,
        }
    }

    /// It changes by exactly so much.
    #[must_use]
    pub fn changes_by(what: impl Into<String>, change: f64) -> Self {
        Self {
            change,
            ..Self::exactly(what)
        }
    }

    /// Checks the promise on a pattern measured before and after.
    ///
    /// # Errors
    /// [`Broken`] with both numbers when it was not kept. What the pattern never had is kept.
    pub fn check(&self, before: &Readings, after: &Readings) -> Result<(), Broken> {
        let Some(old) = before.get(&self.what) else {
            return Ok(());
        };
        let new = after.get(&self.what).unwrap_or(f64::NAN);
        if (new - old - self.change).abs() <= self.within {
            return Ok(());
        }
        Err(Broken {
            what: self.what.clone(),
            before: old,
            after: new,
            promised: self.change,
        })
    }
}

/// A promise that was not kept.
///
/// ```
/// use blockwright::alterations::Broken;
/// let b = Broken { what: "back side_seam length".into(), before: 400.0, after: 402.0, promised: 0.0 };
/// assert!(b.to_string().contains("side_seam"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error("{what} went from {before:.2} to {after:.2}; promised was a change of {promised:.2}")]
pub struct Broken {
    /// What was promised to stay.
    pub what: String,
    /// Before the alteration.
    pub before: f64,
    /// After it.
    pub after: f64,
    /// The change promised.
    pub promised: f64,
}
