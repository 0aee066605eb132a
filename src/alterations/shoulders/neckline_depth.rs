//! Neckline depth: for a front neck that presses on the throat, or one that is to be lower.

use super::neckline_width::{GRAIN_BELOW, remark};
use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{edges_stay, girths_stay, upper_stays};
use crate::alterations::cutting::one_way::bent;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch};
use crate::geometry::{Curve, GeometryError, Rigid, Vec2};
use crate::piece::{EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Lowers the front neckline at the centre (positive) or raises it.
///
/// The neckline is drawn anew from the lower centre, square to the fold as it was, to the same
/// neck side point, where it still meets the back in one line. Everything else stays.
///
/// Usual amounts: 5 to 15 mm on a block; a style goes farther (value from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, NecklineDepth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(NecklineDepth::by(10.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::CENTRE_FRONT);
/// let fold = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((fold(&pattern) - fold(&done.pattern) - 10.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/neckline_depth.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NecklineDepth {
    /// By how much the centre front gets shorter at the neck, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres: down to a low round neck; up to no more than a collar stand
/// would take (values from memory).
const MOST: (f64, f64) = (-25.0, 120.0);

/// A neckline stays this much above the underarm line, in millimetres, so that it ends on the
/// chest and not on the bust.
const ABOVE_UNDERARM: f64 = 25.0;

impl NecklineDepth {
    /// So much lower.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

impl Alteration for NecklineDepth {
    fn name(&self) -> &'static str {
        "neckline_depth"
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
            promises.extend(edges_stay(back.piece, &[EdgeName::NECKLINE]));
        }
        if let Ok(front) = UpperHalf::front(before) {
            let edges = [EdgeName::SHOULDER, EdgeName::ARMSCYE, EdgeName::SIDE_SEAM];
            promises.extend(upper_stays(front.piece, &edges));
            let fold = Measure::edge_length(front.piece.name(), EdgeName::CENTRE_FRONT);
            promises.push(Promise::changes_by(fold, -self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    /// The centre front is one line for both sides, and so is where the neckline meets it.
    fn check_one_side(&self, _half: &Pattern) -> Result<(), AlterationError> {
        Err(AlterationError::First {
            why: "the necklines of both sides meet at the centre front, and one of them cannot be lower there than the other".to_owned(),
            advice: "leave out side, or widen the neckline on that side (neckline_width)".to_owned(),
        })
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            MOST,
            "mm",
            "no neckline of a block is moved so far",
        )?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let front = UpperHalf::front(pattern)?;
        let room = front.armscye.end().y - ABOVE_UNDERARM - front.neckline.start().y;
        at_most(
            self.amount,
            (MOST.0, room.max(0.0)),
            "mm",
            "a lower neckline would end on the bust instead of above it",
        )?;
        let down = Rigid::shift(Vec2::new(0.0, self.amount));
        let neckline = bent(front.neckline, (&down, &Rigid::IDENTITY), None)
            .ok_or_else(|| AlterationError::First {
                why: "the front neckline is drawn in several parts, as with a dart in it"
                    .to_owned(),
                advice: "move the dart to another edge first".to_owned(),
            })?
            .map_err(construction)?;
        let centre = neckline.start();
        let mut sketch = Sketch::of(front.piece);
        sketch.replace(&EdgeName::NECKLINE, neckline)?;
        let from = sketch.curve(&EdgeName::CENTRE_FRONT)?.start();
        sketch.replace(&EdgeName::CENTRE_FRONT, Curve::line(from, centre)?)?;
        let grain = &mut sketch.parts_mut().grain;
        grain[1].y = grain[1].y.max(centre.y + GRAIN_BELOW);
        let altered = replaced(pattern, sketch.finish()?)?;
        Ok(remark(altered))
    }
}

fn construction(source: GeometryError) -> AlterationError {
    AlterationError::Construction {
        step: "front neckline from its new centre",
        source,
    }
}
