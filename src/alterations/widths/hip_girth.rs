//! Hip girth, at the side seams.

use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{all_but_side_and_hem_stay, girths_stay};
use crate::alterations::cutting::quarter::{hem, over_hips, quarters};
use crate::alterations::cutting::side_moves::{SideMove, out_at_hip, with_sides_moved};
use crate::alterations::{Alteration, AlterationError, Altered, Promise, with_girth_ease};
use crate::piece::{Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Widens (or narrows) the hips at the side seams.
///
/// For a skirt that draws across the hips and rides up, or hangs in vertical folds there. A
/// quarter of the amount is added at each side edge: nothing at the waist, all of it at the hip
/// line, parallel from there to the hem. The hip's ease changes by the amount.
///
/// ```
/// use blockwright::alterations::{Alteration, HipGirth, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{Measure, Pattern};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(HipGirth { amount: 24.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::girth("hip");
/// let hip = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((hip(&done.pattern) - hip(&pattern) - 24.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/hip_girth.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HipGirth {
    /// By how much the whole hip gets wider, in millimetres: usually 8 to 40, narrower with a
    /// minus.
    pub amount: f64,
}

/// Most that one side edge is moved at the hip, in millimetres (value from memory, medium
/// confidence: up to 10 to 12 before the panel is slashed instead).
const MOST_AN_EDGE: f64 = 12.0;

/// Edges at the sides of the whole garment.
const EDGES: f64 = 4.0;

/// What it needs of a piece.
const ADVICE: &str = "hip girth is altered on a piece with a side seam, a waist and a hem";

impl Alteration for HipGirth {
    fn name(&self) -> &'static str {
        "hip_girth"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let hip = Promise::changes_by(Measure::girth("hip"), self.amount);
        let mut promises = vec![hip];
        promises.extend(girths_stay(before, &["hip"]));
        for piece in quarters(before) {
            promises.extend(all_but_side_and_hem_stay(piece));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let edge = number(self.amount)? / EDGES;
        let most = EDGES * MOST_AN_EDGE;
        at_most(
            self.amount,
            (-most, most),
            "mm",
            "each side edge moves by a quarter of it, and by no more than 12 mm at once",
        )?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let moves: Vec<SideMove<'_>> = over_hips(pattern)
            .map(|piece| {
                hem(piece).ok_or_else(|| AlterationError::Missing {
                    what: format!("a hem on the {}", piece.name()),
                    advice: ADVICE,
                })?;
                Ok((piece, out_at_hip(piece, edge, ADVICE)?))
            })
            .collect::<Result<_, AlterationError>>()?;
        if moves.is_empty() {
            return Err(AlterationError::Missing {
                what: "a hip line above its hem".to_owned(),
                advice: "hip girth is altered on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            });
        }
        let altered = with_sides_moved(pattern, moves)?;
        Ok(with_girth_ease(&altered, "hip", self.amount)?.into())
    }
}
