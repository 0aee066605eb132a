//! Armscye gape: for an armscye that stands off in front or at the back.

use super::neckline_gape::bust_dart;
use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::asked_ease::{bust_ease_taken, with_girth_as_drawn};
use crate::alterations::chain::promise::{girths_stay, upper_stays};
use crate::alterations::cutting::led::led;
use crate::alterations::cutting::one_way::Armscye;
use crate::alterations::cutting::shared_lean::trued_across_shoulder;
use crate::alterations::cutting::upper_half::{UpperHalf, put_level};
use crate::alterations::cutting::wedge::pass_wedge;
use crate::alterations::darts::dart_room::check_dart;
use crate::alterations::darts::dart_tip::{bust_fullness, tip_backed_off, tip_to_fullness};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, solve_sleeves};
use crate::geometry::{Curve, GeometryError, Point, Rigid, root};
use crate::piece::{Dart, EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// The side of the body on which an armscye gapes.
///
/// ```
/// use blockwright::alterations::GapeSide;
/// assert_ne!(GapeSide::Front, GapeSide::Back);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum GapeSide {
    /// In front: the wedge goes into the bust dart.
    Front,
    /// At the back: the wedge goes into the shoulder dart.
    Back,
}

/// Takes a gaping armscye in (positive), or lets a tight one out.
///
/// A wedge is folded from the armscye at the width line to the tip of the bust dart (front) or
/// of the shoulder dart (back) and passed into that dart, which gets wider. The armscye is drawn
/// smooth again, shorter by exactly the amount, the width staying as it is; the sleeve is solved
/// again. In front the fold crosses the underarm line, and the underarm comes up and
/// in: what the bust girth loses there, from once to one and a half times the amount over the
/// whole, is taken from its ease and reported.
///
/// Usual amounts: 4 to 12 mm, as at the neckline (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, ArmscyeGape, GapeSide, alter};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Dress))?;
/// let step: Box<dyn Alteration> = Box::new(ArmscyeGape { amount: 6.0, side: GapeSide::Front });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::ARMSCYE);
/// let armscye = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((armscye(&pattern) - armscye(&done.pattern) - 6.0).abs() < 1e-4);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/armscye_gape.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ArmscyeGape {
    /// By how much the armscye gets shorter on that side, in millimetres.
    pub amount: f64,
    /// The side.
    pub side: GapeSide,
}

/// The most at once, in millimetres: three times the usual (value from memory).
const MOST: f64 = 40.0;

impl ArmscyeGape {
    fn half<'p>(&self, pattern: &'p Pattern) -> Result<UpperHalf<'p>, AlterationError> {
        match self.side {
            GapeSide::Front => UpperHalf::front(pattern),
            GapeSide::Back => UpperHalf::back(pattern),
        }
    }

    fn dart<'p>(&self, half: &UpperHalf<'p>) -> Result<&'p Dart, AlterationError> {
        match self.side {
            GapeSide::Front => bust_dart(half),
            GapeSide::Back => half.shoulder_dart().ok_or_else(|| AlterationError::Missing {
                what: "a shoulder dart on the back".to_owned(),
                advice: "a back with an eased shoulder has no dart to pass the wedge into; use a bodice or a dress",
            }),
        }
    }
}

impl Alteration for ArmscyeGape {
    fn name(&self) -> &'static str {
        "armscye_gape"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        if let Ok(half) = self.half(before) {
            let edges = [EdgeName::NECKLINE, EdgeName::SHOULDER, EdgeName::SIDE_SEAM];
            promises.extend(upper_stays(half.piece, &edges));
            let armscye = Measure::edge_length(half.piece.name(), EdgeName::ARMSCYE);
            promises.push(Promise::changes_by(armscye, -self.amount));
        }
        let reported: &[&str] = match self.side {
            GapeSide::Front => &["bust"],
            GapeSide::Back => &[],
        };
        promises.extend(girths_stay(before, reported));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(self.amount, (-MOST, MOST), "mm", "no armscye gapes so far")?;
        let half = self.half(pattern)?;
        let dart = self.dart(&half)?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let fullness = bust_fullness(half.piece, dart);
        let turning = replaced(pattern, tip_to_fullness(half.piece, dart)?)?;
        let half = self.half(&turning)?;
        let dart = self.dart(&half)?;
        let (upper, lower) = half.armscye_parts()?;
        let (apex, width_point) = (dart.apex(), lower.start());
        let stay = Rigid::IDENTITY;
        // In front the part below the wedge swings up, against the clock; at the back the part
        // above it swings down, with the clock.
        let sign = match self.side {
            GapeSide::Front => -1.0,
            GapeSide::Back => 1.0,
        };
        let shape = Armscye::of(half.armscye, half.width_at);
        let drawn = |turn: f64| -> Result<(Curve, Point), GeometryError> {
            let swing = Rigid::turn_about(apex, turn);
            let curve = match (&shape, self.side) {
                (Some(shape), GapeSide::Front) => return shape.on(&shape.course().below(&swing)),
                (Some(shape), GapeSide::Back) => return shape.on(&shape.course().above(&swing)),
                (None, GapeSide::Front) => upper.clone().then(&led(&lower, &stay, &swing)?),
                (None, GapeSide::Back) => led(&upper, &swing, &stay)?.then(&lower),
            };
            Ok((curve?, width_point))
        };
        let near = sign * self.amount / width_point.distance(apex);
        let old = half.armscye.length();
        let turn = root("wedge at the armscye", 0.3 * near, 3.0 * near, |turn| {
            drawn(turn).map_or(f64::NAN, |(c, _)| c.length() - old + self.amount)
        })
        .map_err(|source| AlterationError::Construction {
            step: "wedge from the armscye to the dart",
            source,
        })?;
        check_dart(dart, sign * turn, self.amount)?;
        let place = (&EdgeName::ARMSCYE, half.width_at);
        let passed = pass_wedge(half.piece, dart, place, turn)?;
        let mut sketch = passed.sketch;
        let (armscye, width_point) = drawn(turn)?;
        half.put_armscye(&mut sketch, armscye, width_point)?;
        if self.side == GapeSide::Front {
            put_level(&mut sketch, "underarm", passed.motion.apply(lower.end()))?;
        } else {
            put_level(&mut sketch, "underarm", lower.end())?;
        }
        let piece = tip_backed_off(&sketch.finish()?, &dart.name, fullness)?;
        let altered = trued_across_shoulder(replaced(pattern, piece)?)?;
        let altered = with_girth_as_drawn(altered, "bust")?;
        Ok(Altered {
            warnings: bust_ease_taken(pattern, &altered),
            pattern: solve_sleeves(pattern, altered)?,
        })
    }
}
