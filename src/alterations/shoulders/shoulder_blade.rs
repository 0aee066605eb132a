//! A prominent shoulder blade.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::asked_ease::{taken_by_ease, with_shoulder_ease};
use crate::alterations::chain::promise::{edges_stay, girths_stay, upper_stays};
use crate::alterations::chain::way_back::taken_back;
use crate::alterations::cutting::armscye_line::hinge_at;
use crate::alterations::cutting::led::led;
use crate::alterations::cutting::shared_lean::trued_across_shoulder;
use crate::alterations::cutting::true_up::{turned_end, with_mouth, without_mouth};
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::darts::dart_room::{check_dart, check_point};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch, solve_sleeves};
use crate::geometry::elementary::{atan2, tan};
use crate::geometry::{Point, Rigid, Vec2, angle_between, perpendicular};
use crate::piece::{Apexes, Dart, EdgeName, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Gives length and width over a prominent shoulder blade (positive), or takes them from a flat one.
///
/// For a back that strains over the blade and whose armhole stands off, while centre back and neck are
/// right; with `side: left` for one blade. The back is slashed from the shoulder down its dart to the
/// blade and from there across to the armscye, half way between nape and underarm, where it is
/// hinged. The shoulder panel swings up and out until half way between centre back and armscye it gives
/// the amount in length; the shoulder dart opens by the swing, and its tip goes a little toward the
/// armscye, to where the dart then closes without a corner. Centre back, neckline and the
/// shoulder beside the neck do not move; the armscye is drawn smooth over its hinge at its length;
/// shoulder, side seam and every girth stay.
///
/// A shoulder without a dart gets longer by what opens, which is eased in.
///
/// Usual amounts: 3 to 8 mm, eased 3 to 6 (values from memory); a dart for prominent blades takes in
/// 16 to 20 mm (a Russian drafting text).
///
/// ```
/// use blockwright::alterations::{Alteration, ShoulderBlade, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Bodice))?;
/// let step: Box<dyn Alteration> = Box::new(ShoulderBlade::by(6.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::dart_intake("back", "shoulder");
/// let dart = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!(dart(&done.pattern) > dart(&pattern) + 3.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/shoulder_blade.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShoulderBlade {
    /// How much length is given over the blade, in millimetres.
    pub amount: f64,
}

/// The most at once, in millimetres (value from memory).
const MOST: f64 = 20.0;

/// How often the hinge is laid half way anew: each time it moves by a fiftieth as much.
const ROUNDS: usize = 5;

impl ShoulderBlade {
    /// So much more length.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

impl Alteration for ShoulderBlade {
    fn name(&self) -> &'static str {
        "shoulder_blade"
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
            let edges = [
                EdgeName::CENTRE_BACK,
                EdgeName::NECKLINE,
                EdgeName::ARMSCYE,
                EdgeName::SIDE_SEAM,
            ];
            promises.extend(upper_stays(back.piece, &edges));
            if back.shoulder_dart().is_some() {
                promises.extend(edges_stay(back.piece, &[EdgeName::SHOULDER]));
            }
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no blade stands out so far at once: give length at the centre too (back_length_increase)",
        )?;
        if self.amount == 0.0 {
            UpperHalf::back(pattern)?;
            return Ok(pattern.clone().into());
        }
        let mut altered = self.trunk(pattern)?;
        if self.amount < 0.0 {
            let more = Self::by(-self.amount);
            let forth = |p: &Pattern| more.trunk(&with_shoulder_ease(p.clone())?);
            altered = with_shoulder_ease(taken_back(pattern, altered, forth))?;
        }
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

/// How the shoulder panel swings.
struct Swing {
    motion: Rigid,
    angle: f64,
}

impl Swing {
    fn about(hinge: Point, amount: f64) -> Self {
        let angle = 2.0 * atan2(0.5 * amount, 0.5 * hinge.x);
        Self {
            motion: Rigid::turn_about(hinge, angle),
            angle,
        }
    }
}

impl ShoulderBlade {
    /// Back and front altered.
    fn trunk(&self, pattern: &Pattern) -> Result<Pattern, AlterationError> {
        let back = UpperHalf::back(pattern)?;
        let swing = self.swing(&back)?;
        let piece = match back.shoulder_dart() {
            Some(dart) => self.by_dart(&back, dart, &swing)?,
            None => self.by_ease(pattern, &back, &swing)?,
        };
        let altered = trued_across_shoulder(replaced(pattern, piece)?)?;
        with_shoulder_ease(altered)
    }

    /// The swing about a hinge half way between the armscye as it is and as it gets, so that the
    /// opposite amount swings about the same place.
    fn swing(&self, back: &UpperHalf<'_>) -> Result<Swing, AlterationError> {
        let level = 0.5 * (back.neckline.start().y + back.armscye.end().y);
        let edge = hinge_at(back.armscye, level)?;
        let (side, tip) = (back.shoulder.start(), back.armscye.start());
        let mut hinge = edge;
        for _ in 0..ROUNDS {
            let swing = Swing::about(hinge, self.amount);
            let stay = (Vec2::ZERO, Vec2::ZERO);
            let new_tip = swing.motion.apply(tip);
            let turn = match back.shoulder_dart() {
                Some(_) => swing.angle,
                None => angle_between(tip - side, new_tip - side),
            };
            let (armscye, _) = back.armscye_kept(new_tip, turn, stay)?;
            hinge = edge.midpoint(hinge_at(&armscye, level)?);
        }
        Ok(Swing::about(hinge, self.amount))
    }

    /// The fullness opens the shoulder dart.
    fn by_dart(
        &self,
        back: &UpperHalf<'_>,
        dart: &Dart,
        swing: &Swing,
    ) -> Result<Piece, AlterationError> {
        check_dart(dart, swing.angle, self.amount)?;
        let [inner, outer] = dart.legs;
        let apex = dart.apex();
        let (before, after) = without_mouth(back.piece, &EdgeName::SHOULDER)?;
        let outer_leg = swing.motion.apply(outer);
        // What lay beyond the dart was turned about its tip and is turned now about the hinge: both
        // turns are one about the new tip.
        let turn = angle_between(inner - apex, outer - apex) + swing.angle;
        let across = outer_leg - inner;
        let tip = inner.midpoint(outer_leg) + perpendicular(across) * (0.5 / tan(0.5 * turn));
        let opened = Dart {
            legs: [inner, outer_leg],
            apexes: Apexes::One(tip),
            ..dart.clone()
        };
        let mut sketch = Sketch::of(back.piece);
        let shoulder = with_mouth(&before, &opened, &after.moved(&swing.motion))?;
        sketch.replace(&EdgeName::SHOULDER, shoulder)?;
        if let Some(slot) = sketch.dart_mut(&dart.name) {
            *slot = opened;
        }
        finish(
            back,
            sketch,
            swing.motion.apply(back.armscye.start()),
            swing.angle,
        )
    }

    /// The fullness lengthens the shoulder, and is eased in.
    fn by_ease(
        &self,
        pattern: &Pattern,
        back: &UpperHalf<'_>,
        swing: &Swing,
    ) -> Result<Piece, AlterationError> {
        let (side, tip) = (back.shoulder.start(), back.shoulder.end());
        let swung = swing.motion.apply(tip);
        let (old, new) = (tip - side, swung - side);
        let longer = new.hypot() - old.hypot();
        let left = longer - taken_by_ease(pattern, longer);
        check_point(left, self.amount)?;
        let new_tip = swung - new.normalize() * left;
        let laid = |from: Point, to: Point| Rigid::lay(from, old, to, new);
        let mut sketch = Sketch::of(back.piece);
        let shoulder = led(back.shoulder, &laid(side, side), &laid(tip, new_tip))?;
        sketch.replace(&EdgeName::SHOULDER, shoulder)?;
        let turn = angle_between(old, new);
        let arrive = back.neckline.end_direction();
        let arrive = Rigid::turn_about(Point::ORIGIN, turn).apply_direction(arrive);
        let neckline = turned_end(back.neckline, arrive, back.neckline.length())?;
        sketch.replace(&EdgeName::NECKLINE, neckline)?;
        finish(back, sketch, new_tip, turn)
    }
}

/// The armscye from the new shoulder point.
fn finish(
    back: &UpperHalf<'_>,
    mut sketch: Sketch,
    tip: Point,
    turn: f64,
) -> Result<Piece, AlterationError> {
    let stay = (Vec2::ZERO, Vec2::ZERO);
    let (armscye, width_point) = back.armscye_kept(tip, turn, stay)?;
    back.put_armscye(&mut sketch, armscye, width_point)?;
    sketch.finish()
}
