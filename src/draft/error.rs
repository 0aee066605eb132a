//! Why a body cannot be drafted, by name and with numbers.

use crate::explain::Explain;
use crate::geometry::GeometryError;
use crate::piece::PieceError;
use crate::units::{Unit, rounded, speak};
use thiserror::Error;

/// A body for which the block cannot be drafted.
///
/// ```
/// use blockwright::draft::DraftError;
/// use blockwright::explain::Explain;
/// let e = DraftError::OutOfReach {
///     what: "shoulder slope", found: 44.0, low: 4.0, high: 38.0, unit: "degrees",
///     advice: "measure it again: the shoulder point may have been taken on the arm",
/// };
/// assert_eq!(e.code(), "shoulder_slope_out_of_reach");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum DraftError {
    /// A measurement, or something that follows from several, cannot be made into a block.
    #[error(
        "{what} is {:.1} {unit}; a block can be drafted from {low:.1} to {high:.1} {unit}. {advice}",
        rounded(*found, 1)
    )]
    OutOfReach {
        /// What is out of reach.
        what: &'static str,
        /// What it is.
        found: f64,
        /// The least that can be drafted.
        low: f64,
        /// The most that can be drafted.
        high: f64,
        /// The unit of the three numbers.
        unit: &'static str,
        /// What to do about it.
        advice: &'static str,
    },
    /// Measurements that do not go together, in one body or for one block.
    #[error(
        "{what} cannot be drafted: {} contradict each other. {advice}",
        listed(measurements)
    )]
    Contradiction {
        /// What cannot be drafted.
        what: &'static str,
        /// The measurements by name, each with its value in millimetres.
        measurements: Vec<(&'static str, f64)>,
        /// What to do about it.
        advice: &'static str,
    },
    /// An option lies outside what can be meant; a job file has the same bounds.
    #[error("{option} is {found} mm; it can be {low} to {high} mm")]
    Option {
        /// Which, by its path in a job file: `length`, `ease.bust`.
        option: &'static str,
        /// What was asked for, in mm.
        found: f64,
        /// The least, in mm.
        low: f64,
        /// The most, in mm.
        high: f64,
    },
    /// A number that the draft works from is none.
    #[error(
        "{what} is not a number of use to a draft: it has to be finite and {}. Give it as one",
        if *positive { "above nothing" } else { "less than ten metres" }
    )]
    NotANumber {
        /// What is not a number: a field of [`Figure`](super::Figure), [`Ease`](super::Ease) or
        /// [`DraftOptions`](super::DraftOptions).
        what: &'static str,
        /// Whether it has to be above nothing, too.
        positive: bool,
    },
    /// A construction has no solution for this body.
    #[error(
        "{step} cannot be constructed for this body: {source}. Check the measurements it follows from: {from}"
    )]
    Construction {
        /// The step that failed.
        step: &'static str,
        /// The measurements it follows from.
        from: &'static str,
        /// What geometry said.
        source: GeometryError,
    },
    /// Parts that do not make a piece: a fault of the draft, not of the body.
    #[error(
        "the draft does not close: {0}. This is a fault in the draft; please report it with the measurements"
    )]
    Piece(#[from] PieceError),
}

impl DraftError {
    /// What is wrong, with lengths in the unit in which the body was measured.
    ///
    /// ```
    /// use blockwright::draft::DraftError;
    /// use blockwright::units::Unit;
    /// let error = DraftError::Contradiction {
    ///     what: "waist",
    ///     measurements: vec![("bust_girth", 1549.4), ("waist_girth", 622.3)],
    ///     advice: "Measure both again",
    /// };
    /// assert!(error.in_unit(Unit::In).contains("bust_girth 61 in and waist_girth 24 1/2 in"));
    /// ```
    #[must_use]
    pub fn in_unit(&self, unit: Unit) -> String {
        speak(&self.to_string(), unit)
    }
}

/// Names and values, as in `bust_girth 1550 mm and waist_girth 620 mm`.
fn listed(measurements: &[(&'static str, f64)]) -> String {
    let each: Vec<String> = measurements
        .iter()
        .map(|(name, value)| format!("{name} {:.0} mm", rounded(*value, 0)))
        .collect();
    match each.split_last() {
        Some((last, before)) if !before.is_empty() => format!("{} and {last}", before.join(", ")),
        _ => each.concat(),
    }
}

impl From<GeometryError> for DraftError {
    fn from(source: GeometryError) -> Self {
        Self::Piece(PieceError::Geometry(source))
    }
}

/// Beyond this no number has to do with a garment, in millimetres: ten metres.
const MOST_NUMBER: f64 = 1e4;

/// Refuses numbers that are none, are beyond all garments, or have to be positive and are not.
pub(super) fn check_numbers(
    positive: bool,
    numbers: impl IntoIterator<Item = (&'static str, f64)>,
) -> Result<(), DraftError> {
    let least = if positive {
        f64::MIN_POSITIVE
    } else {
        -MOST_NUMBER
    };
    for (what, number) in numbers {
        if !(least..=MOST_NUMBER).contains(&number) {
            return Err(DraftError::NotANumber { what, positive });
        }
    }
    Ok(())
}

/// Refuses options outside their bounds, and any that is not a number.
pub(super) fn check_options<const N: usize>(
    options: [(&'static str, f64, (f64, f64)); N],
) -> Result<(), DraftError> {
    check_numbers(false, options.map(|(option, found, _)| (option, found)))?;
    for (option, found, (low, high)) in options {
        if !(low..=high).contains(&found) {
            return Err(DraftError::Option {
                option,
                found,
                low,
                high,
            });
        }
    }
    Ok(())
}

/// Refuses a value outside `low..=high`, and any that is not a number.
pub(super) fn within(
    what: &'static str,
    found: f64,
    (low, high): (f64, f64),
    unit: &'static str,
    advice: &'static str,
) -> Result<(), DraftError> {
    if (low..=high).contains(&found) {
        Ok(())
    } else {
        Err(DraftError::OutOfReach {
            what,
            found,
            low,
            high,
            unit,
            advice,
        })
    }
}

impl Explain for DraftError {
    fn code(&self) -> String {
        match self {
            Self::OutOfReach { what, .. } => format!("{}_out_of_reach", what.replace(' ', "_")),
            Self::Contradiction { what, .. } => {
                format!("{}_contradictory", what.replace(' ', "_"))
            }
            Self::Option { option, .. } => format!("{}_out_of_reach", option.replace('.', "_")),
            Self::NotANumber { what, .. } => format!("{}_not_a_number", what.replace('.', "_")),
            Self::Construction { step, .. } => {
                format!("{}_not_constructible", step.replace(' ', "_"))
            }
            Self::Piece(_) => "draft_does_not_close".to_owned(),
        }
    }

    fn place(&self) -> Option<String> {
        match self {
            Self::OutOfReach { what, .. }
            | Self::Contradiction { what, .. }
            | Self::NotANumber { what, .. } => Some((*what).to_owned()),
            Self::Option { option, .. } => Some((*option).to_owned()),
            Self::Construction { step, .. } => Some((*step).to_owned()),
            Self::Piece(error) => error.place(),
        }
    }

    fn cure(&self) -> String {
        match self {
            Self::OutOfReach { advice, .. } | Self::Contradiction { advice, .. } => {
                (*advice).to_owned()
            }
            Self::Option { low, high, .. } => format!("give {low} to {high} mm"),
            Self::NotANumber { .. } => "give a number".to_owned(),
            Self::Construction { from, .. } => {
                format!("check the measurements it follows from: {from}")
            }
            Self::Piece(_) => {
                "It is a fault of the program, not of the measurements: report it with them"
                    .to_owned()
            }
        }
    }
}
