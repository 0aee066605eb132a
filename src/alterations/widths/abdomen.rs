//! Abdomen: prominent or flat.

use crate::alterations::cutting::quarter::Half;
use crate::alterations::lengths::centre_opening::CentreLength;
use crate::alterations::{Alteration, AlterationError, Altered, Promise};
use crate::piece::Pattern;
use serde::{Deserialize, Serialize};

/// Gives length over a prominent abdomen (or takes it over a flat one).
///
/// For a skirt whose front rises and strains below the waist: a slash at the level of the abdomen
/// from the centre front to a hinge at the side seam is opened at the centre.
/// The fold is straight again, the side seam where it was and the waist as long as before; the
/// other half is not touched. On a skirt the waist rises at the front centre; in one piece from neck
/// to hem, where nothing can rise, the hem drops there. Length only: where width is wanted too,
/// add hip_girth.
///
/// ```
/// use blockwright::alterations::{Alteration, Abdomen, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let pattern = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(Abdomen { amount: 12.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::CENTRE_FRONT);
/// let centre = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((centre(&done.pattern) - centre(&pattern) - 12.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/abdomen.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Abdomen {
    /// By how much the centre front gets longer, in millimetres: usually 10 to 20; shorter
    /// with a minus.
    pub amount: f64,
}

/// Least and most at once, in millimetres (the usual amounts are values from memory, medium
/// confidence).
const LEAST: f64 = -15.0;
const MOST: f64 = 25.0;

impl Abdomen {
    fn centre(self) -> CentreLength {
        CentreLength {
            half: Half::Front,
            amount: self.amount,
            range: (LEAST, MOST),
            missing: (
                "a front that reaches to the hip line",
                "the abdomen is altered on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            ),
        }
    }
}

impl Alteration for Abdomen {
    fn name(&self) -> &'static str {
        "abdomen"
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
