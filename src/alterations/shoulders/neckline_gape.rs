//! Neckline gape: for a front neckline that stands off.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::asked_ease::{bust_ease_taken, with_girth_as_drawn};
use crate::alterations::chain::promise::{girths_stay, upper_stays};
use crate::alterations::cutting::one_way::end_moved;
use crate::alterations::cutting::upper_half::{UpperHalf, put_level};
use crate::alterations::cutting::wedge::pass_wedge;
use crate::alterations::darts::dart_room::check_dart;
use crate::alterations::darts::dart_tip::{bust_fullness, tip_backed_off, tip_to_fullness};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise};
use crate::geometry::{Rigid, root};
use crate::piece::{Dart, EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Takes a gaping front neckline in (positive), or lets a tight one out.
///
/// A wedge is folded from the middle of the neckline to the tip of the bust dart and passed
/// into that dart, which gets wider; then the neckline is drawn smooth again, shorter by
/// exactly the amount. Centre front, shoulder, armscye, side seam and waist stay as they are.
/// The fold also crosses the underarm line, a little above the dart's tip: what the bust girth
/// loses there, a few millimetres over the whole, is taken from its ease and reported.
///
/// Usual amounts: 4 to 12 mm on a half front (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, NecklineGape, alter};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Dress))?;
/// let step: Box<dyn Alteration> = Box::new(NecklineGape::by(6.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::NECKLINE);
/// let neckline = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((neckline(&pattern) - neckline(&done.pattern) - 6.0).abs() < 1e-4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/neckline_gape.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NecklineGape {
    /// By how much half of the front neckline gets shorter, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres on a half: three times the usual (value from memory).
const MOST: f64 = 40.0;

impl NecklineGape {
    /// So much shorter.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

/// The bust dart of a front.
pub(in crate::alterations) fn bust_dart<'p>(
    front: &UpperHalf<'p>,
) -> Result<&'p Dart, AlterationError> {
    let found = front
        .piece
        .darts()
        .iter()
        .find(|d| d.name == "bust" && d.edge == Some(EdgeName::SIDE_SEAM));
    found.ok_or_else(|| AlterationError::Missing {
        what: "a bust dart on the side seam of the front".to_owned(),
        advice: "there is no dart to pass the wedge into: this body's front was drafted without one",
    })
}

impl Alteration for NecklineGape {
    fn name(&self) -> &'static str {
        "neckline_gape"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        if let Ok(front) = UpperHalf::front(before) {
            let edges = [
                EdgeName::CENTRE_FRONT,
                EdgeName::SHOULDER,
                EdgeName::ARMSCYE,
                EdgeName::SIDE_SEAM,
            ];
            promises.extend(upper_stays(front.piece, &edges));
            let neckline = Measure::edge_length(front.piece.name(), EdgeName::NECKLINE);
            promises.push(Promise::changes_by(neckline, -self.amount));
        }
        promises.extend(girths_stay(before, &["bust"]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(self.amount, (-MOST, MOST), "mm", "no neckline gapes so far")?;
        let front = UpperHalf::front(pattern)?;
        let dart = bust_dart(&front)?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let fullness = bust_fullness(front.piece, dart);
        let turning = replaced(pattern, tip_to_fullness(front.piece, dart)?)?;
        let front = UpperHalf::front(&turning)?;
        let dart = bust_dart(&front)?;
        let (apex, neckline) = (dart.apex(), front.neckline);
        let at = 0.5 * neckline.length();
        let drawn = |turn: f64| {
            let swing = Rigid::turn_about(apex, turn);
            end_moved(neckline, &swing)
        };
        // The panel swings toward the centre front: against the clock.
        let near = -self.amount / neckline.point_at(at)?.0.distance(apex);
        let turn = root("wedge at the neckline", 0.4 * near, 2.5 * near, |turn| {
            drawn(turn).map_or(f64::NAN, |c| c.length() - neckline.length() + self.amount)
        })
        .map_err(|source| AlterationError::Construction {
            step: "wedge from the neckline to the bust dart",
            source,
        })?;
        check_dart(dart, -turn, self.amount)?;
        let passed = pass_wedge(front.piece, dart, (&EdgeName::NECKLINE, at), turn)?;
        let mut sketch = passed.sketch;
        sketch.replace(&EdgeName::NECKLINE, drawn(turn)?)?;
        let (_, below) = front.armscye_parts()?;
        put_level(&mut sketch, "width", passed.motion.apply(below.start()))?;
        put_level(&mut sketch, "underarm", passed.motion.apply(below.end()))?;
        let front = tip_backed_off(&sketch.finish()?, &dart.name, fullness)?;
        let altered = replaced(pattern, front)?;
        let altered = with_girth_as_drawn(altered, "bust")?;
        Ok(Altered {
            warnings: bust_ease_taken(pattern, &altered),
            pattern: altered,
        })
    }
}
