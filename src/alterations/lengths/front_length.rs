//! Front length above the chest: for a front that is too long or too short from the shoulder down.

use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{edges_stay, girths_stay, upper_stays};
use crate::alterations::cutting::shared_lean::trued_across_shoulder;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::shoulders::neckline_width::GRAIN_BELOW;
use crate::alterations::shoulders::shoulder_line::{Shoulder, moved_dart};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch, solve_sleeves};
use crate::geometry::{Curve, Rigid, Vec2};
use crate::piece::{EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Lengthens the front above the chest (positive) or shortens it.
///
/// Too long a front lies in loose folds across the chest; too short a one drags creases down the
/// front shoulder and is tight in the scye (*The Cutters' Practical Guide to the Cutting of Ladies'
/// Garments*, printed p. 50). The front is cut across between neck and width line and spread
/// or lapped, parallel: neckline and shoulder go up or down whole, and the upper armscye is drawn
/// to them. The back, the side seam and everything from the width line down stay; the sleeve is
/// solved again.
///
/// Usual amounts: 5 to 15 mm, as pinned (value from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, FrontLength, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(FrontLength::by(8.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::CENTRE_FRONT);
/// let centre = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((centre(&done.pattern) - centre(&pattern) - 8.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/front_length.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FrontLength {
    /// By how much the front gets longer above the chest, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres: twice what is usual (value from memory).
const MOST: f64 = 30.0;

impl FrontLength {
    /// So much longer.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

impl Alteration for FrontLength {
    fn name(&self) -> &'static str {
        "front_length"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        if let Ok(back) = UpperHalf::back(before) {
            let edges = [EdgeName::NECKLINE, EdgeName::SHOULDER, EdgeName::SIDE_SEAM];
            promises.extend(edges_stay(back.piece, &edges));
        }
        if let Ok(front) = UpperHalf::front(before) {
            let edges = [EdgeName::NECKLINE, EdgeName::SHOULDER, EdgeName::SIDE_SEAM];
            promises.extend(upper_stays(front.piece, &edges));
            let fold = Measure::edge_length(front.piece.name(), EdgeName::CENTRE_FRONT);
            promises.push(Promise::changes_by(fold, self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = number(self.amount)?;
        at_most(
            amount,
            (-MOST, MOST),
            "mm",
            "no front is altered so far at once",
        )?;
        let front = UpperHalf::front(pattern)?;
        if amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        if let Some(dart) = front.shoulder_dart() {
            front.check_reach(dart)?;
        }
        let by = Vec2::new(0.0, -amount);
        let up = Rigid::shift(by);
        let mut sketch = Sketch::of(front.piece);
        let shoulder = Shoulder {
            edge: front.shoulder.moved(&up),
            dart: front.shoulder_dart().map(|dart| moved_dart(dart, &up)),
            turn_at_neck: 0.0,
            turn_at_tip: 0.0,
        };
        let tip = shoulder.edge.end();
        front.put_shoulder(&mut sketch, &shoulder, 0.0)?;
        let neckline = front.neckline.moved(&up);
        let centre = neckline.start();
        sketch.replace(&EdgeName::NECKLINE, neckline)?;
        let from = sketch.curve(&EdgeName::CENTRE_FRONT)?.start();
        sketch.replace(&EdgeName::CENTRE_FRONT, Curve::line(from, centre)?)?;
        let (armscye, width_point) = front.armscye_from(tip, 0.0, (Vec2::ZERO, Vec2::ZERO))?;
        front.put_armscye(&mut sketch, armscye, width_point)?;
        let grain = &mut sketch.parts_mut().grain;
        grain[1].y = grain[1].y.max(centre.y + GRAIN_BELOW);
        let altered = trued_across_shoulder(replaced(pattern, sketch.finish()?)?)?;
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}
