//! Seat: prominent or flat.

use super::centre_opening::CentreLength;
use super::quarter::Half;
use super::{Alteration, AlterationError, Altered, Promise};
use crate::piece::Pattern;
use serde::{Deserialize, Serialize};

/// Gives length over a prominent seat (or takes it over a flat one).
///
/// For a skirt whose back rises and pokes out at the hem, or folds below the waist: a slash across
/// the hip line from the centre back to a hinge at the side seam is opened at the centre.
/// The fold is straight again, the side seam where it was and the waist as long as before; the
/// other half is not touched. On a skirt the waist rises at the back centre; in one piece from neck
/// to hem, where nothing can rise, the hem drops there. Length only: where width is wanted too,
/// add hip_girth.
///
/// ```
/// use blockwright::alterations::{Alteration, Seat, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let pattern = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(Seat { amount: 12.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// let centre = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((centre(&done.pattern) - centre(&pattern) - 12.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seat {
    /// By how much the centre back gets longer, in millimetres: usually 10 to 25 (flat: 6 to 15 less); shorter
    /// with a minus.
    pub amount: f64,
}

/// Least and most at once, in millimetres (the usual amounts are values from memory, medium
/// confidence).
const LEAST: f64 = -20.0;
const MOST: f64 = 30.0;

impl Seat {
    fn centre(self) -> CentreLength {
        CentreLength {
            half: Half::Back,
            amount: self.amount,
            range: (LEAST, MOST),
            missing: (
                "a back that reaches to the hip line",
                "the seat is altered on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            ),
        }
    }
}

impl Alteration for Seat {
    fn name(&self) -> &'static str {
        "seat"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        self.centre().promises(before)
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        self.centre().alter(pattern)
    }
}
