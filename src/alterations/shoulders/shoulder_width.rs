//! Shoulder width: for shoulders broader or narrower than the block's.

use super::shoulder_turn::{Turn, turned_together};
use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{girths_stay, upper_stays};
use crate::alterations::chain::way_back::taken_back;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, solve_sleeves};
use crate::geometry::{Rigid, root};
use crate::piece::{EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Makes the shoulders broader (positive) or narrower.
///
/// A slash from the middle of the shoulder to the width point of the armscye, hinged there, is
/// spread or overlapped until the shoulder is longer or shorter by the amount, on back and
/// front alike; then the shoulder is ruled straight again. The widths on the width and
/// underarm lines, the side seams and the lengths of neckline and armscye stay; the sleeve with
/// them.
///
/// Usual amounts: 5 to 12 mm, at most 15 to 18 (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, ShoulderWidth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(ShoulderWidth::by(-8.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::SHOULDER);
/// let shoulder = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((shoulder(&pattern) - shoulder(&done.pattern) - 8.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/shoulder_width.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShoulderWidth {
    /// By how much each shoulder gets longer, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres: twice what is usual at most (value from memory).
const MOST: f64 = 36.0;

impl ShoulderWidth {
    /// So much longer.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

/// By how much the shoulder turns when the panel with its point swings about the width point.
fn turn(half: &UpperHalf<'_>, amount: f64) -> Result<f64, AlterationError> {
    let (side, tip) = (half.shoulder.start(), half.shoulder.end());
    let hinge = half.armscye_parts()?.1.start();
    let out = tip + half.shoulder.end_direction() * amount;
    let found = root("turn of the shoulder", -0.3, 0.3, |turn| {
        Rigid::turn_about(side, turn).apply(out).distance(hinge) - tip.distance(hinge)
    });
    found.map_err(|source| AlterationError::Construction {
        step: "shoulder spread about the width point",
        source,
    })
}

impl Alteration for ShoulderWidth {
    fn name(&self) -> &'static str {
        "shoulder_width"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        let halves = [UpperHalf::back(before), UpperHalf::front(before)];
        for half in halves.into_iter().flatten() {
            let edges = [EdgeName::NECKLINE, EdgeName::ARMSCYE, EdgeName::SIDE_SEAM];
            promises.extend(upper_stays(half.piece, &edges));
            let shoulder = Measure::edge_length(half.piece.name(), EdgeName::SHOULDER);
            promises.push(Promise::changes_by(shoulder, self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no shoulder is altered so far at once",
        )?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = self.trunk(pattern)?;
        if self.amount < 0.0 {
            let more = Self::by(-self.amount);
            altered = taken_back(pattern, altered, |p| more.trunk(p));
        }
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

impl ShoulderWidth {
    /// Back and front altered.
    fn trunk(&self, pattern: &Pattern) -> Result<Pattern, AlterationError> {
        let (back, front) = (UpperHalf::back(pattern)?, UpperHalf::front(pattern)?);
        let turned = |half, turn| Turn {
            half,
            turn,
            longer: self.amount,
            drop: 0.0,
            kept: true,
        };
        let behind = turned(&back, turn(&back, self.amount)?);
        let before = turned(&front, turn(&front, self.amount)?);
        turned_together(pattern, &behind, &before)
    }
}
