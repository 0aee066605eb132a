//! Neckline width: for a neck that stands against the throat at the sides, or is too wide.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{edges_stay, edges_stay_if_there, girths_stay};
use crate::alterations::cutting::one_way::bent;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch};
use crate::geometry::{Curve, GeometryError, Rigid};
use crate::piece::{EdgeName, Measure, Pattern, Warning};
use serde::{Deserialize, Serialize};

/// Widens the neckline along the shoulders (positive) or narrows it.
///
/// The neck side point of back and front moves along the shoulder by the amount, which shortens
/// both shoulders alike; both necklines are drawn anew to it, so that they still meet in one
/// line. Depths and everything below stay.
///
/// Usual amounts: 3 to 10 mm on a block; a style goes farther (value from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, NecklineWidth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(NecklineWidth::by(6.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::SHOULDER);
/// let shoulder = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((shoulder(&pattern) - shoulder(&done.pattern) - 6.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/neckline_width.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NecklineWidth {
    /// By how much each shoulder gets shorter at the neck, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres: half a shoulder outward, a small correction inward (values
/// from memory).
const MOST: (f64, f64) = (-15.0, 60.0);

/// A dart on the shoulder stays at least this far from the neck, in millimetres.
const BESIDE_DART: f64 = 12.0;

/// The grain line stays this far below the centre of the neck, in millimetres.
pub(in crate::alterations) const GRAIN_BELOW: f64 = 18.0;

impl NecklineWidth {
    /// So much wider on each side.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

impl Alteration for NecklineWidth {
    fn name(&self) -> &'static str {
        "neckline_width"
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
            let edges = [EdgeName::ARMSCYE, EdgeName::SIDE_SEAM];
            promises.extend(edges_stay(half.piece, &edges));
            let others = [
                EdgeName::WAIST,
                EdgeName::HEM,
                EdgeName::CENTRE_BACK,
                EdgeName::CENTRE_FRONT,
            ];
            promises.extend(edges_stay_if_there(half.piece, &others));
            let shoulder = Measure::edge_length(half.piece.name(), EdgeName::SHOULDER);
            promises.push(Promise::changes_by(shoulder, -self.amount));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            MOST,
            "mm",
            "no neckline of a block is widened so far",
        )?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = pattern.clone();
        for half in [UpperHalf::back(pattern)?, UpperHalf::front(pattern)?] {
            let dart = half.piece.mouths(&EdgeName::SHOULDER);
            let room = dart
                .first()
                .map_or(half.shoulder.length() - 2.0 * BESIDE_DART, |m| m.1)
                - BESIDE_DART;
            at_most(
                self.amount,
                (MOST.0, room.max(0.0)),
                "mm",
                "the neckline would come too near to the shoulder dart or to the shoulder point",
            )?;
            let mut sketch = Sketch::of(half.piece);
            let shoulder = shortened(half.shoulder, self.amount)?;
            let out = Rigid::shift(shoulder.start() - half.shoulder.start());
            let neckline = bent(half.neckline, (&Rigid::IDENTITY, &out), None)
                .ok_or_else(|| AlterationError::First {
                    why: format!(
                        "the neckline of the {} is drawn in several parts, as with a dart in it",
                        half.piece.name()
                    ),
                    advice: "move the dart to another edge first".to_owned(),
                })?
                .map_err(|source| AlterationError::Construction {
                    step: "neckline to its new neck side point",
                    source,
                })?;
            sketch.replace(&EdgeName::NECKLINE, neckline)?;
            sketch.replace(&EdgeName::SHOULDER, shoulder)?;
            for notch in &mut sketch.parts_mut().notches {
                if notch.edge == EdgeName::SHOULDER {
                    notch.at -= self.amount;
                }
            }
            altered = replaced(&altered, sketch.finish()?)?;
        }
        Ok(remark(altered))
    }
}

/// A shoulder that starts so much later, or earlier, along its own line.
fn shortened(shoulder: &Curve, by: f64) -> Result<Curve, GeometryError> {
    if by >= 0.0 {
        return shoulder.part(by, shoulder.length());
    }
    let start = shoulder.start();
    Curve::line(start + shoulder.start_direction() * by, start)?.then(shoulder)
}

/// A pattern whose neckline changed, with what that means for an opening at the neck.
pub(in crate::alterations) fn remark(pattern: Pattern) -> Altered {
    let half: f64 = pattern
        .pieces()
        .iter()
        .filter_map(|piece| piece.seam_length(&EdgeName::NECKLINE))
        .sum();
    let warning = Warning::new(
        "neckline_changed",
        format!(
            "the neckline is {:.0} mm round now: measure it against the head before an opening is cut as long as the draft says",
            2.0 * half
        ),
    );
    Altered {
        warnings: vec![warning],
        pattern,
    }
}
