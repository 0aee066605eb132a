//! The one form of all errors, for a person and for a program.

use serde::Serialize;
use std::error::Error;

/// An error that says what was wrong, where, and what to do. Every public error of this crate does.
///
/// ```
/// use blockwright::explain::Explain;
/// use blockwright::units::{Length, Unit};
/// let error = Length::parse("92 ells", Some(Unit::Cm)).unwrap_err();
/// assert_eq!(error.code(), "unknown_unit");
/// assert!(error.message().contains("ells") && error.cure().contains("cm"));
/// ```
pub trait Explain: Error {
    /// A short name in snake case, for programs and for counting.
    fn code(&self) -> String;

    /// Where it lies: a piece and its edge, a seam, a measurement, a key, a size. `None` where
    /// the error has no place of its own.
    fn place(&self) -> Option<String> {
        None
    }

    /// What was wrong and what was expected: the error as it is written out.
    fn message(&self) -> String {
        self.to_string()
    }

    /// What to do about it, in one sentence.
    fn cure(&self) -> String;

    /// All four, to be sent or kept.
    fn explanation(&self) -> Explanation {
        Explanation {
            code: self.code(),
            place: self.place(),
            cause: self.message(),
            cure: self.cure(),
        }
    }
}

/// An error as plain words, as JSON `{"code", "place", "cause", "cure"}`; a place that there is
/// not is left out.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::explain::Explain;
/// let mut figure = Figure::cylinder(900.0);
/// figure.shoulder_slope = 50_f64.to_radians();
/// let error = draft_figure(&figure, &DraftOptions::of(Block::Bodice)).unwrap_err();
/// let sent = serde_json::to_value(error.explanation())?;
/// assert_eq!(sent["code"], "shoulder_slope_out_of_reach");
/// assert_eq!(sent["place"], "shoulder slope");
/// # Ok::<(), serde_json::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize)]
#[non_exhaustive]
pub struct Explanation {
    /// A short name in snake case, for programs and for counting.
    pub code: String,
    /// Where it lies, if it has a place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub place: Option<String>,
    /// What was wrong and what was expected.
    pub cause: String,
    /// What to do about it.
    pub cure: String,
}
