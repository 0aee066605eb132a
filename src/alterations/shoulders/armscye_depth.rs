//! Armscye depth: for an armhole that cuts under the arm, or that hangs too low for the arm to
//! be raised.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{girths_stay, upper_stays};
use crate::alterations::cutting::underarm_line::check_lines;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch, solve_sleeves};
use crate::geometry::Vec2;
use crate::piece::{EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Lowers the underarm (positive) or raises it.
///
/// The lower half of the armscye, from the width point, is drawn anew to an underarm that lies
/// plumb below the old one, so that every girth stays; both side seams get shorter by the amount.
/// The sleeve's cap is solved to the new armscye over its old biceps line. A lower armhole
/// binds the raised arm, so lower it by no more than the fitting shows.
///
/// Usual amounts: 5 to 12 mm (value from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, ArmscyeDepth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(ArmscyeDepth::by(8.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::SIDE_SEAM);
/// let side = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((side(&pattern) - side(&done.pattern) - 8.0).abs() < 1e-3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/armscye_depth.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ArmscyeDepth {
    /// By how much each side seam gets shorter at the underarm, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres: three times what is usual (value from memory).
const MOST: f64 = 36.0;

impl ArmscyeDepth {
    /// So much lower.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

impl Alteration for ArmscyeDepth {
    fn name(&self) -> &'static str {
        "armscye_depth"
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
            promises.extend(upper_stays(
                half.piece,
                &[EdgeName::NECKLINE, EdgeName::SHOULDER],
            ));
            let side = Measure::edge_length(half.piece.name(), EdgeName::SIDE_SEAM);
            promises.push(Promise::changes_by(side, -self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no armhole is moved so far at once",
        )?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = pattern.clone();
        for half in [UpperHalf::back(pattern)?, UpperHalf::front(pattern)?] {
            let drop = half.side_blended()?.drop_for(self.amount)?;
            let down = Vec2::new(0.0, drop);
            let mut sketch = Sketch::of(half.piece);
            let tip = half.shoulder.end();
            let (armscye, width_point) = half.armscye_from(tip, 0.0, (Vec2::ZERO, down))?;
            half.put_armscye(&mut sketch, armscye, width_point)?;
            half.put_underarm(&mut sketch, down)?;
            altered = replaced(&altered, sketch.finish()?)?;
        }
        check_lines(pattern, &altered, "ask for less")?;
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}
