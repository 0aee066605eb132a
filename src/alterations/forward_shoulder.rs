//! Forward shoulder: for shoulder points that stand forward of the seam.

use super::amounts::at_most;
use super::promise::{edges_stay, edges_stay_if_there, girths_stay};
use super::sleeve::replaced;
use super::sleeve::sleeves;
use super::upper_half::UpperHalf;
use super::{Alteration, AlterationError, Altered, Promise, Sketch};
use crate::geometry::elementary::asin;
use crate::geometry::{Curve, Point, Vec2, root};
use crate::piece::{EdgeName, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Moves the shoulder seam forward (positive) or back at the shoulder point.
///
/// The back's shoulder point goes up by the amount, the front's down, and both shoulders run
/// straight on to their neck side points, which stay; shoulder and neckline keep their lengths,
/// the back's dart goes with its shoulder. Front and back armscye together keep their length
/// exactly, so the sleeve keeps its cap as it is; its shoulder notch moves forward with the
/// seam.
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

/// An armscye whose shoulder is turned about the neck side point; the armscye keeps the
/// direction in which it leaves.
fn swung(half: &UpperHalf<'_>, turn: f64) -> Result<(Curve, Point), AlterationError> {
    let tip = half.shoulder_turned(turn, 0.0)?.edge.end();
    Ok(half.armscye_from(tip, 0.0, (Vec2::ZERO, Vec2::ZERO))?)
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
            promises.extend(edges_stay(half.piece, &edges));
            let lower = [EdgeName::WAIST, EdgeName::HEM];
            promises.extend(edges_stay_if_there(half.piece, &lower));
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
        let reach = back.shoulder.start().distance(back.shoulder.end());
        let up = -2.0 * asin(0.5 * self.amount / reach.max(2.0 * MOST));
        let old = back.armscye.length() + front.armscye.length();
        let rest = old - swung(&back, up)?.0.length();
        let down = if self.amount == 0.0 {
            0.0
        } else {
            root(
                "drop of the front shoulder point",
                -0.5 * up,
                -2.0 * up,
                |turn| swung(&front, turn).map_or(f64::NAN, |(c, _)| c.length() - rest),
            )?
        };
        let mut altered = pattern.clone();
        for (half, turn) in [(&back, up), (&front, down)] {
            let mut sketch = Sketch::of(half.piece);
            half.put_shoulder(&mut sketch, &half.shoulder_turned(turn, 0.0)?, 0.0)?;
            let (armscye, width_point) = swung(half, turn)?;
            half.put_armscye(&mut sketch, armscye, width_point)?;
            altered = replaced(&altered, sketch.finish()?)?;
        }
        let forward = swung(&back, up)?.0.length() - back.armscye.length();
        Ok(notch_moved(altered, forward)?.into())
    }
}
