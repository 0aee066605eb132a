//! Sleeve pitch: the sleeve turned in its armscye.

use super::sleeve::{replaced, sleeves};
use super::sleeve_seams::SleeveSeams;
use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{edges_stay, girths_stay};
use crate::alterations::cutting::led::{filled, led};
use crate::alterations::cutting::true_up::carried;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, tolerance};
use crate::piece::{EdgeName, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Turns the sleeve in its armscye, forward (positive) or back.
///
/// For an arm that is carried forward, or back, of where the sleeve hangs: slanting folds run from
/// the back, or the front, of the cap down to the elbow. The whole sleeve turns about the arm like
/// a tube; notches and underarm seam stay where they are on the armscye, so on the sleeve they move
/// the other way. Turned forward, a strip is cut off along the front underarm seam and laid on along
/// the back one: as wide as the amount at the cap, and in proportion at elbow and wrist. The legs of
/// the elbow dart get longer by it, its tip stays; grain and the top of the cap stay on the sleeve and
/// come to lie that much in front of the shoulder seam. Cap, wrist and every width keep their lengths,
/// both underarm seams are of one length.
///
/// Usual amounts: 5 to 15 mm along the armscye (value from memory; an armhole is moved 16 mm forward
/// and 10 mm back at most for the carriage of the arm).
///
/// ```
/// use blockwright::alterations::{Alteration, SleevePitch, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let mut options = DraftOptions::of(Block::Tunic);
/// options.sleeve = Some(SleeveLength::Long);
/// let pattern = draft_figure(&Figure::cylinder(900.0), &options)?;
/// let step: Box<dyn Alteration> = Box::new(SleevePitch::by(10.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("sleeve", EdgeName::SLEEVE_CAP);
/// let cap = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((cap(&done.pattern) - cap(&pattern)).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/sleeve_pitch.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SleevePitch {
    /// By how much the sleeve turns forward, in millimetres along the armscye; back with a minus.
    pub amount: f64,
}

/// Most at once, in millimetres (value from memory).
const MOST: f64 = 25.0;

impl SleevePitch {
    /// So much forward.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount }
    }
}

impl Alteration for SleevePitch {
    fn name(&self) -> &'static str {
        "sleeve_pitch"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises: Vec<Promise> = girths_stay(before, &[]).collect();
        for piece in sleeves(before) {
            let edges = [EdgeName::SLEEVE_CAP, EdgeName::WRIST];
            promises.extend(edges_stay(piece, &edges));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "no sleeve is turned farther: look at the shoulder and the armscye first",
        )?;
        if sleeves(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: "a sleeve".to_owned(),
                advice: "draft with a sleeve",
            });
        }
        let mut altered = pattern.clone();
        if self.amount != 0.0 {
            for piece in sleeves(pattern) {
                altered = replaced(&altered, turned(piece, self.amount)?)?;
            }
        }
        Ok(altered.into())
    }
}

/// A sleeve turned forward by so much at its cap.
fn turned(piece: &Piece, forward: f64) -> Result<Piece, AlterationError> {
    let mut sketch = Sketch::of(piece);
    let seams = SleeveSeams::of(piece)?;
    let cap = sketch.curve(&EdgeName::SLEEVE_CAP)?.clone();
    let biceps = cap.start().distance(cap.end());
    let share = |width: f64| forward * width / biceps;

    // Cap and wrist: the strip's end is cut off on one side and runs on at the other.
    let new_cap = as_wide(&passed_on(&cap, forward)?, biceps)?;
    let wrist = passed_on(&seams.wrist, -share(seams.wrist.length()))?;
    // The seams keep their directions: what the corner gets sharper by on one side, it gets blunter by
    // on the other.
    let to = |from: Point, to: Point| Rigid::shift(to - from);
    let front = to(cap.end(), new_cap.end());
    let back = to(cap.start(), new_cap.start());
    let front_wrist = to(seams.wrist.start(), wrist.start());
    let back_wrist = to(seams.wrist.end(), wrist.end());

    let elbow = piece.line("elbow").map(|line| line.curve.clone());
    let strip = share(elbow.map_or(biceps, |line| line.length()));
    let mut moved = seams.clone();
    moved.wrist = wrist;
    moved.front = led(&seams.front, &front, &front_wrist)?;
    match (&seams.above, &mut moved.above) {
        (Some((old, above)), Some((dart, new_above))) => {
            let apex = old.apex();
            let out = old.legs.map(|leg| (leg - apex).normalize() * strip);
            let [lower_out, upper_out] = out;
            let [lower_leg, upper_leg] = old.legs;
            dart.legs = [lower_leg + lower_out, upper_leg + upper_out];
            moved.lower = led(&seams.lower, &back_wrist, &Rigid::shift(lower_out))?;
            *new_above = led(above, &Rigid::shift(upper_out), &back)?;
        }
        _ => moved.lower = led(&seams.lower, &back_wrist, &back)?,
    }
    let moved = moved.matched(0.0)?;
    sketch.replace(&EdgeName::SLEEVE_CAP, new_cap)?;
    moved.put(&mut sketch)?;
    let leg = |seams: &SleeveSeams| {
        let dart = seams.above.as_ref().map(|(dart, _)| dart);
        dart.map(|dart| dart.legs)
    };
    for old in piece.lines() {
        let [from, to] = [old.curve.start(), old.curve.end()];
        if old.name == "biceps" {
            for line in sketch.lines_mut().iter_mut().filter(|l| l.name == old.name) {
                line.curve = Curve::line(back.apply(from), front.apply(to))?;
            }
            continue;
        }
        // The elbow line begins at the dart's upper leg.
        let by = match (leg(&seams), leg(&moved)) {
            (Some([_, was]), Some([_, is])) if was.distance(from) <= tolerance::PRINT => is - was,
            _ => Vec2::new(-strip, 0.0),
        };
        moved.put_line(&mut sketch, &old.name, [from + by, to + by])?;
    }
    sketch.finish()
}

/// A curve cut off at its end by a length, which runs on before its start; with a minus the other way
/// round.
fn passed_on(curve: &Curve, by: f64) -> Result<Curve, GeometryError> {
    let (start, end) = (Corner::start(curve), Corner::end(curve));
    if by >= 0.0 {
        let (kept, strip) = curve.split_at(curve.length() - by)?;
        let strip = strip.moved(&end.to(&start)).ending_at(kept.start())?;
        return strip.then(&kept);
    }
    let (strip, kept) = curve.split_at(-by)?;
    let strip = strip.moved(&start.to(&end));
    kept.ending_at(strip.start())?.then(&strip)
}

/// A cap with its ends brought to a distance, at its length: where it was cut it had risen a little, and
/// the sleeve is wider there.
fn as_wide(cap: &Curve, width: f64) -> Result<Curve, GeometryError> {
    let across = cap.end() - cap.start();
    let by = across * (0.5 * (1.0 - width / across.hypot()));
    let narrower = carried(cap, &Rigid::shift(by))?.reversed();
    let narrower = carried(&narrower, &Rigid::shift(-by))?.reversed();
    filled(&narrower, cap.length())
}

/// A place and a direction.
struct Corner(Point, Vec2);

impl Corner {
    fn start(curve: &Curve) -> Self {
        Self(curve.start(), curve.start_direction())
    }

    fn end(curve: &Curve) -> Self {
        Self(curve.end(), curve.end_direction())
    }

    /// The motion that lays it on another.
    fn to(&self, other: &Self) -> Rigid {
        Rigid::lay(self.0, self.1, other.0, other.1)
    }
}
