//! Forward shoulder: for shoulder points that stand forward of the seam.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{edges_stay, girths_stay, upper_stays};
use crate::alterations::cutting::shared_lean::trued_across_shoulder;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::sleeves::sleeve::{replaced, sleeves, with_notches_below};
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch};
use crate::geometry::Vec2;
use crate::geometry::elementary::asin;
use crate::piece::{EdgeName, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Moves the shoulder seam forward (positive) or back at the shoulder point.
///
/// The back's shoulder point goes up by the amount, the front's down, and both shoulders run
/// straight on to their neck side points, which stay; shoulder and neckline keep their lengths,
/// the back's dart goes with its shoulder. The back armscye gets longer by exactly the amount and
/// the front's shorter, so the sleeve keeps its cap as it is; its shoulder notch moves forward with
/// the seam.
///
/// Usual amounts: 5 to 12 mm (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, ForwardShoulder, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(ForwardShoulder::by(8.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("back", EdgeName::ARMSCYE);
/// let armscye = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((armscye(&done.pattern) - armscye(&pattern) - 8.0).abs() < 0.5);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/forward_shoulder.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ForwardShoulder {
    /// By how much the seam moves forward at the shoulder point, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres: twice the usual (value from memory).
const MOST: f64 = 25.0;

impl ForwardShoulder {
    /// So far forward.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

/// The shoulder notch of every sleeve moved along its cap, from the back toward the front.
fn notch_moved(pattern: Pattern, by: f64) -> Result<Pattern, AlterationError> {
    let mut parts = pattern.into_parts();
    for slot in &mut parts.pieces {
        let mut piece = slot.clone().into_parts();
        let on_cap =
            |name: &str, edge: &EdgeName| name == "shoulder" && edge == &EdgeName::SLEEVE_CAP;
        for notch in &mut piece.notches {
            if on_cap(&notch.name, &notch.edge) {
                notch.at += by;
            }
        }
        *slot = Piece::new(piece)?;
    }
    Ok(Pattern::new(parts)?)
}

impl Alteration for ForwardShoulder {
    fn name(&self) -> &'static str {
        "forward_shoulder"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        for sleeve in sleeves(before) {
            promises.extend(edges_stay(sleeve, &[EdgeName::SLEEVE_CAP]));
            promises.push(Promise::exactly(Measure::cap_height(sleeve.name())));
        }
        let halves = [UpperHalf::back(before), UpperHalf::front(before)];
        for half in halves.into_iter().flatten() {
            let edges = [EdgeName::SHOULDER, EdgeName::NECKLINE, EdgeName::SIDE_SEAM];
            promises.extend(upper_stays(half.piece, &edges));
            let back = half.piece.outline().edge(&EdgeName::CENTRE_BACK).is_some();
            let longer = if back { self.amount } else { -self.amount };
            let armscye = Measure::edge_length(half.piece.name(), EdgeName::ARMSCYE);
            promises.push(Promise::changes_by(armscye, longer));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no shoulder stands so far forward",
        )?;
        let (back, front) = (UpperHalf::back(pattern)?, UpperHalf::front(pattern)?);
        let mut altered = pattern.clone();
        for (half, up) in [(&back, self.amount), (&front, -self.amount)] {
            let reach = half.shoulder.start().distance(half.shoulder.end());
            let turn = -2.0 * asin(0.5 * up / reach.max(2.0 * MOST));
            let mut sketch = Sketch::of(half.piece);
            let shoulder = half.shoulder_turned(turn, 0.0)?;
            half.put_shoulder(&mut sketch, &shoulder, 0.0)?;
            let length = half.armscye.length() + up;
            let (tip, stay) = (shoulder.edge.end(), (Vec2::ZERO, Vec2::ZERO));
            let (armscye, width_point) = half.armscye_of_length(length, tip, 0.0, stay)?;
            half.put_armscye(&mut sketch, armscye, width_point)?;
            altered = replaced(&altered, sketch.finish()?)?;
        }
        let altered = notch_moved(trued_across_shoulder(altered)?, self.amount)?;
        Ok(with_notches_below(altered)?.into())
    }
}
