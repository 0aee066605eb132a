//! Bust girth, at the side seams.

use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{edges_stay, edges_stay_if_there, girths_stay};
use crate::alterations::cutting::side_let_out::LetOut;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{
    Alteration, AlterationError, Altered, Promise, Sketch, solve_sleeves, with_girth_ease,
};
use crate::geometry::{Vec2, tolerance};
use crate::piece::{EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Widens (or narrows) the garment at the underarm, at the side seams.
///
/// For a garment that is tight or slack all round the chest, where the cup fits; for a fuller or
/// smaller cup take `bust`. A quarter of the amount is added at each side edge under the arm, and
/// runs to nothing at the waist; the legs of a bust dart run on to the new seam. Every side seam
/// keeps its sewn length. The armscye gets longer by about half of the amount and the sleeve is
/// solved again; let the sleeve out by `upper_arm` if the arm is to follow. The bust's ease changes
/// by the amount.
///
/// Usual amounts: 8 to 40 mm (value from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, BustGirth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(BustGirth::by(20.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::girth("bust");
/// let bust = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((bust(&done.pattern) - bust(&pattern) - 20.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/bust_girth.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BustGirth {
    /// By how much the whole garment gets wider at the underarm, in millimetres; narrower with a
    /// minus.
    pub amount: f64,
}

/// Most that one side edge is moved at the underarm at once, in millimetres: what a side edge is
/// moved at the hip (value from memory, medium confidence).
const MOST_AN_EDGE: f64 = 12.0;

/// Edges at the sides of the whole garment.
const EDGES: f64 = 4.0;

/// Rounds in which the girth is brought to its amount: each takes what the last one left.
const ROUNDS: usize = 4;

impl BustGirth {
    /// So much wider.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

impl Alteration for BustGirth {
    fn name(&self) -> &'static str {
        "bust_girth"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = vec![Promise::changes_by(Measure::girth("bust"), self.amount)];
        promises.extend(girths_stay(before, &["bust"]));
        let halves = [UpperHalf::back(before), UpperHalf::front(before)];
        for half in halves.into_iter().flatten() {
            let kept = [EdgeName::NECKLINE, EdgeName::SHOULDER, EdgeName::SIDE_SEAM];
            promises.extend(edges_stay(half.piece, &kept));
            let lower = [
                EdgeName::WAIST,
                EdgeName::HEM,
                EdgeName::CENTRE_BACK,
                EdgeName::CENTRE_FRONT,
            ];
            promises.extend(edges_stay_if_there(half.piece, &lower));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let out = number(self.amount)? / EDGES;
        let most = EDGES * MOST_AN_EDGE;
        at_most(
            self.amount,
            (-most, most),
            "mm",
            "each side edge moves by a quarter of it, and by no more than 12 mm at once",
        )?;
        let halves = [UpperHalf::back(pattern)?, UpperHalf::front(pattern)?];
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let bust = |p: &Pattern| p.measured(&Measure::girth("bust"));
        let before = bust(pattern);
        // Where a dart reaches up to the underarm line, what it takes there changes with the line.
        let (mut moved, mut altered) = (out, let_out(pattern, &halves, out)?);
        for _ in 0..ROUNDS {
            let Some((before, after)) = before.zip(bust(&altered)) else {
                break;
            };
            let missing = self.amount - (after - before);
            if missing.abs() <= tolerance::SOLVE {
                break;
            }
            moved += missing / EDGES;
            altered = let_out(pattern, &halves, moved)?;
        }
        let altered = with_girth_ease(&altered, "bust", self.amount)?;
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

/// The pattern with the underarms of both halves moved out by so much.
fn let_out(
    pattern: &Pattern,
    halves: &[UpperHalf<'_>],
    out: f64,
) -> Result<Pattern, AlterationError> {
    let mut altered = pattern.clone();
    for half in halves {
        let side = LetOut::of(half, out)?;
        let by = side.underarm() - half.armscye.end();
        let mut sketch = Sketch::of(half.piece);
        let tip = half.shoulder.end();
        let (armscye, width_point) = half.armscye_from(tip, 0.0, (Vec2::ZERO, by))?;
        half.put_armscye(&mut sketch, armscye, width_point)?;
        side.put(half, &mut sketch)?;
        altered = replaced(&altered, sketch.finish()?)?;
    }
    Ok(altered)
}
