//! Abdomen: prominent or flat.

use super::centre_opening::open_centre;
use super::quarter::{Half, at_most, centre, hem, number, quarters};
use super::sleeve::replaced;
use super::{Alteration, AlterationError, Altered, Promise};
use crate::piece::{Pattern, Piece};
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
/// use blockwright::alterations::{Alteration, Abdomen, alter, reading};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let pattern = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(Abdomen { amount: 12.0 });
/// let done = alter(&pattern, &[step])?;
/// let centre = |p| reading(p, "front centre_front length").unwrap_or(0.0);
/// assert!((centre(&done.pattern) - centre(&pattern) - 12.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
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
        let mut promises: Vec<Promise> = before
            .girths()
            .iter()
            .map(|g| Promise::exactly(format!("{} finished", g.name)))
            .collect();
        for piece in halves(before) {
            let name = piece.name();
            for edge in ["side_seam", "waist", "neckline", "shoulder", "armscye"] {
                promises.push(Promise::exactly(format!("{name} {edge} length")));
            }
            let centre = format!("{name} centre_front length");
            promises.push(Promise::changes_by(centre, self.amount));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = number(self.amount)?;
        at_most(amount, (LEAST, MOST), "more than that is another block")?;
        if halves(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: "a front that reaches to the hip line".to_owned(),
                advice: "the abdomen is altered on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            });
        }
        let mut altered = pattern.clone();
        if amount != 0.0 {
            for piece in halves(pattern) {
                altered = replaced(&altered, open_centre(piece, amount)?)?;
            }
        }
        Ok(altered.into())
    }
}

/// The front pieces that reach over the hips.
fn halves(pattern: &Pattern) -> impl Iterator<Item = &Piece> {
    quarters(pattern).filter(|p| {
        centre(p).is_some_and(|(half, _)| half == Half::Front)
            && p.line("hip").is_some()
            && hem(p).is_some()
    })
}
