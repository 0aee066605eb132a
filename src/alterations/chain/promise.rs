//! What an alteration promises to keep.

use super::readings::Readings;
use crate::explain::Explain;
use crate::geometry::tolerance;
use crate::piece::{BodySide, EdgeName, Measure, MeasureKind, Pattern, Piece};
use crate::units::rounded;
use thiserror::Error;

/// A measure that an alteration keeps, or changes by a known amount.
///
/// What is promised must be there, before the alteration and after it, unless the promise is
/// made only [if it is there](Self::if_there).
///
/// ```
/// use blockwright::alterations::Promise;
/// use blockwright::piece::{EdgeName, Measure};
/// let kept = Promise::exactly(Measure::edge_length("back", EdgeName::SIDE_SEAM));
/// assert_eq!(kept.change, 0.0);
/// let waist = Promise::exactly(Measure::edge_length("back", EdgeName::WAIST)).if_there();
/// assert!(waist.optional);
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Promise {
    /// What is promised.
    pub measure: Measure,
    /// By how much it is to change: zero to stay.
    pub change: f64,
    /// How far it may miss that, in millimetres or degrees.
    pub within: f64,
    /// Whether nothing is promised where the pattern does not have it.
    pub optional: bool,
}

impl Promise {
    /// It stays, to the hundredth of a millimetre.
    #[must_use]
    pub fn exactly(measure: Measure) -> Self {
        Self {
            measure,
            change: 0.0,
            within: tolerance::SEAM_DRAFTED,
            optional: false,
        }
    }

    /// It changes by exactly so much.
    #[must_use]
    pub fn changes_by(measure: Measure, change: f64) -> Self {
        Self {
            change,
            ..Self::exactly(measure)
        }
    }

    /// It may miss that by so much, in millimetres or degrees.
    #[must_use]
    pub fn within(self, within: f64) -> Self {
        Self { within, ..self }
    }

    /// The promise holds only where the pattern has what it speaks of: a waist seam, say, that
    /// some blocks do not have.
    #[must_use]
    pub fn if_there(self) -> Self {
        Self {
            optional: true,
            ..self
        }
    }

    /// The promise of a pattern that is alike on both sides, as it holds on one side of the
    /// whole: of a girth of the trunk that side has half.
    pub(in crate::alterations) fn on(&self, side: BodySide, half: &Pattern) -> Self {
        let mut girths = half.girths().iter();
        let is_half = match self.measure.kind() {
            MeasureKind::FinishedGirth { girth } => girths.any(|g| g.name == *girth && !g.limb),
            MeasureKind::LineGirth { line } => half.pieces().iter().any(|p| {
                p.line(line).is_some() && p.outline().edge(&EdgeName::SLEEVE_CAP).is_none()
            }),
            _ => false,
        };
        let share = if is_half { 0.5 } else { 1.0 };
        Self {
            measure: self.measure.on(side),
            change: share * self.change,
            within: share * self.within,
            optional: self.optional,
        }
    }

    /// Checks the promise on a pattern measured before and after.
    ///
    /// # Errors
    /// [`Broken`] when it was not kept, or when there was nothing to keep.
    pub fn check(&self, before: &Readings, after: &Readings) -> Result<(), Broken> {
        let measure = || self.measure.clone();
        let Some(before) = before.get(&self.measure) else {
            return match self.optional {
                true => Ok(()),
                false => Err(Broken::Absent { measure: measure() }),
            };
        };
        let Some(after) = after.get(&self.measure) else {
            return Err(Broken::Lost {
                measure: measure(),
                before,
            });
        };
        if (after - before - self.change).abs() <= self.within {
            return Ok(());
        }
        Err(Broken::Changed {
            measure: measure(),
            before,
            after,
            promised: self.change,
        })
    }
}

/// Promises that these edges of a piece keep their sewn lengths.
pub(in crate::alterations) fn edges_stay<'a>(
    piece: &'a Piece,
    edges: &'a [EdgeName],
) -> impl Iterator<Item = Promise> + 'a {
    edges
        .iter()
        .map(|edge| Promise::exactly(Measure::edge_length(piece.name(), edge.clone())))
}

/// The same of edges that only some blocks have.
pub(in crate::alterations) fn edges_stay_if_there<'a>(
    piece: &'a Piece,
    edges: &'a [EdgeName],
) -> impl Iterator<Item = Promise> + 'a {
    edges_stay(piece, edges).map(Promise::if_there)
}

/// Promises that these edges of an upper piece stay, and below them its waist or hem, whichever it has.
pub(in crate::alterations) fn upper_stays<'a>(
    piece: &'a Piece,
    edges: &'a [EdgeName],
) -> impl Iterator<Item = Promise> + 'a {
    static BELOW: [EdgeName; 2] = [EdgeName::WAIST, EdgeName::HEM];
    edges_stay(piece, edges).chain(edges_stay_if_there(piece, &BELOW))
}

/// Promises of a piece that is altered at its side below the waist: every other edge stays that it has.
///
/// A skirt has no neck, a dress no waist seam; back and front have one centre each.
pub(in crate::alterations) fn all_but_side_and_hem_stay(
    piece: &Piece,
) -> impl Iterator<Item = Promise> {
    static EDGES: [EdgeName; 6] = [
        EdgeName::WAIST,
        EdgeName::NECKLINE,
        EdgeName::SHOULDER,
        EdgeName::ARMSCYE,
        EdgeName::CENTRE_BACK,
        EdgeName::CENTRE_FRONT,
    ];
    edges_stay_if_there(piece, &EDGES)
}

/// Promises that every finished girth stays but those named.
pub(in crate::alterations) fn girths_stay<'a>(
    pattern: &'a Pattern,
    but: &'a [&str],
) -> impl Iterator<Item = Promise> + 'a {
    pattern
        .girths()
        .iter()
        .filter(|girth| !but.contains(&girth.name.as_str()))
        .map(|girth| Promise::exactly(Measure::girth(&girth.name)))
}

/// A promise that was not kept.
///
/// ```
/// use blockwright::alterations::Broken;
/// use blockwright::piece::{EdgeName, Measure};
/// let measure = Measure::edge_length("back", EdgeName::SIDE_SEAM);
/// let longer = Broken::Changed { measure: measure.clone(), before: 400.0, after: 402.0, promised: 0.0 };
/// assert!(longer.to_string().starts_with("back side_seam length went from 400.00 to 402.00"));
/// assert!(Broken::Absent { measure }.to_string().contains("does not have"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum Broken {
    /// The measure did not change as promised.
    #[error(
        "{measure} went from {:.2} to {:.2}{unit}; promised was a change of {:.2}{unit}",
        rounded(*before, 2), rounded(*after, 2), rounded(*promised, 2), unit = measure.unit().symbol()
    )]
    Changed {
        /// What was promised.
        measure: Measure,
        /// Before the alteration.
        before: f64,
        /// After it.
        after: f64,
        /// The change promised.
        promised: f64,
    },
    /// The pattern does not have what the promise speaks of.
    #[error(
        "it promises {measure}, which the pattern does not have; promise what is there, or only if it is there"
    )]
    Absent {
        /// What was promised.
        measure: Measure,
    },
    /// It was there and is no longer.
    #[error("{measure} was {before:.2}{} and is no longer there", measure.unit().symbol())]
    Lost {
        /// What was promised.
        measure: Measure,
        /// Before the alteration.
        before: f64,
    },
}

impl Explain for Broken {
    fn code(&self) -> String {
        "promise_broken".to_owned()
    }

    fn place(&self) -> Option<String> {
        let (Self::Changed { measure, .. } | Self::Absent { measure } | Self::Lost { measure, .. }) =
            self;
        Some(measure.to_string())
    }

    fn cure(&self) -> String {
        "ask for less, or alter the pattern in another order".to_owned()
    }
}
