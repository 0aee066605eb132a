//! Back width and front width: for a back or chest broader or narrower than the block's.

use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::asked_ease::{taken_by_ease, with_shoulder_ease};
use crate::alterations::chain::girths::with_girth_ease;
use crate::alterations::chain::promise::{girths_stay, upper_stays};
use crate::alterations::cutting::shared_lean::trued_across_shoulder;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::darts::dart_room::{check_dart, check_point};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch, solve_sleeves};
use crate::geometry::{Vec2, tolerance};
use crate::piece::{EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// What becomes of the back shoulder when the back gets broader or narrower.
///
/// ```
/// use blockwright::alterations::BackShoulder;
/// assert_eq!(BackShoulder::default(), BackShoulder::Follow);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BackShoulder {
    /// The shoulder point moves out with the armscye; the excess goes into dart or ease.
    #[default]
    Follow,
    /// The shoulder point stays, and the armscye alone moves out between it and the underarm: for
    /// a back that is tight across the arms where the shoulders fit.
    Keep,
}

/// Makes the back broader (positive) or narrower between the armscyes.
///
/// On each half the armscye from the shoulder point to the width line moves out or in, parallel,
/// by half of the amount. What the shoulder gets longer goes into its dart, or into its ease
/// where it has none, as far as those can take it: the shoulder point moves out that much less;
/// with `shoulder: keep` the armscye moves at the width line alone. The underarm, and with it bust girth and side seam, stays. The back width
/// is changed on purpose: its ease changes by the amount. The sleeve is solved again.
///
/// Usual amounts: 10 to 24 mm over the whole back, at most 30 to 40 (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, BackWidth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Bodice))?;
/// let step: Box<dyn Alteration> = Box::new(BackWidth::by(10.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::girth("back_width");
/// let width = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((width(&done.pattern) - width(&pattern) - 10.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/back_width.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BackWidth {
    /// By how much the whole back gets wider, in millimetres.
    pub amount: f64,
    /// What becomes of the shoulder.
    #[serde(default)]
    pub shoulder: BackShoulder,
}

/// Makes the front broader (positive) or narrower between the armscyes.
///
/// On each half the armscye at the width line moves out or in by half of the amount, running to
/// nothing at the shoulder point and at the underarm: the front shoulder has no dart to take an
/// excess. Shoulder, neckline, side seam and every girth stay; a front width among the girths
/// has its ease changed by the amount. The sleeve is solved again.
///
/// Usual amounts: 10 to 24 mm over the whole front (values from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, FrontWidth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Bodice))?;
/// let step: Box<dyn Alteration> = Box::new(FrontWidth::by(10.0));
/// let done = alter(&pattern, &[step])?;
/// let width = |p: &blockwright::piece::Pattern| {
///     p.piece("front").and_then(|f| f.line("width")).map_or(0.0, |l| l.curve.length())
/// };
/// assert!((width(&done.pattern) - width(&pattern) - 5.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/front_width.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FrontWidth {
    /// By how much the whole front gets wider, in millimetres.
    pub amount: f64,
}

/// The most at once over a whole width, in millimetres (value from memory).
const MOST: f64 = 60.0;

impl BackWidth {
    /// So much wider, the shoulder following.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self {
            amount,
            shoulder: BackShoulder::Follow,
        }
    }
}

impl FrontWidth {
    /// So much wider.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

/// What both keep: edges of one half, and every girth but the one changed on purpose.
fn kept(pattern: &Pattern, half: &UpperHalf<'_>, edges: &[EdgeName], but: &str) -> Vec<Promise> {
    upper_stays(half.piece, edges)
        .chain(girths_stay(pattern, &[but]))
        .collect()
}

impl Alteration for BackWidth {
    fn name(&self) -> &'static str {
        "back_width"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let Ok(back) = UpperHalf::back(before) else {
            return Vec::new();
        };
        let mut edges = vec![
            EdgeName::NECKLINE,
            EdgeName::SIDE_SEAM,
            EdgeName::CENTRE_BACK,
        ];
        if back.shoulder_dart().is_some() || self.shoulder == BackShoulder::Keep {
            edges.push(EdgeName::SHOULDER);
        }
        let mut promises = kept(before, &back, &edges, "back_width");
        let width = Measure::girth("back_width");
        promises.push(Promise::changes_by(width, self.amount));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no back is altered so far at once",
        )?;
        let back = UpperHalf::back(pattern)?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let out = Vec2::new(0.5 * self.amount, 0.0);
        if self.shoulder == BackShoulder::Keep {
            return widened(pattern, &back, ("back_width", self.amount));
        }
        let (side, old) = (back.shoulder.start(), back.shoulder.end());
        let wanted = old + out;
        let shoulder = if let Some(dart) = back.shoulder_dart() {
            let shoulder = back.shoulder_to(wanted)?;
            let wider = shoulder.turn_at_tip - shoulder.turn_at_neck;
            check_dart(dart, wider, self.amount)?;
            shoulder
        } else {
            let longer = side.distance(wanted) - side.distance(old);
            let left = longer - taken_by_ease(pattern, longer);
            back.shoulder_to(wanted - (wanted - side).normalize() * left)?
        };
        let tip = shoulder.edge.end();
        check_point(tip.distance(wanted), self.amount)?;
        let mut sketch = Sketch::of(back.piece);
        back.put_shoulder(&mut sketch, &shoulder, shoulder.turn_at_neck)?;
        // What dart or ease leave to the shoulder point does not change how long the armscye gets:
        // whatever fills them before or after, it is the same.
        let (turn, moves) = (shoulder.turn_at_tip, (out, Vec2::ZERO));
        let free = back.armscye_from(wanted, turn, moves)?;
        let (armscye, width_point) = if tip.distance(wanted) <= tolerance::POINT {
            free
        } else {
            back.armscye_of_length(free.0.length(), tip, turn, moves)?
        };
        back.put_armscye(&mut sketch, armscye, width_point)?;
        let altered = trued_across_shoulder(replaced(pattern, sketch.finish()?)?)?;
        let altered = with_shoulder_ease(altered)?;
        let altered = with_girth_ease(&altered, "back_width", self.amount)?;
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

impl Alteration for FrontWidth {
    fn name(&self) -> &'static str {
        "front_width"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let Ok(front) = UpperHalf::front(before) else {
            return Vec::new();
        };
        let edges = [
            EdgeName::SHOULDER,
            EdgeName::NECKLINE,
            EdgeName::SIDE_SEAM,
            EdgeName::CENTRE_FRONT,
        ];
        kept(before, &front, &edges, "front_width")
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no front is altered so far at once",
        )?;
        let front = UpperHalf::front(pattern)?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        widened(pattern, &front, ("front_width", self.amount))
    }
}

/// The armscye of a half moved out at the width line, by half of the amount of a whole width,
/// running to nothing at the shoulder point and at the underarm.
fn widened(
    pattern: &Pattern,
    half: &UpperHalf<'_>,
    (girth, amount): (&str, f64),
) -> Result<Altered, AlterationError> {
    let out = Vec2::new(0.5 * amount, 0.0);
    let mut sketch = Sketch::of(half.piece);
    let tip = half.shoulder.end();
    let (armscye, width_point) = half.armscye_from(tip, 0.0, (out, Vec2::ZERO))?;
    half.put_armscye(&mut sketch, armscye, width_point)?;
    let altered = trued_across_shoulder(replaced(pattern, sketch.finish()?)?)?;
    let altered = with_girth_ease(&altered, girth, amount)?;
    Ok(solve_sleeves(pattern, altered)?.into())
}
