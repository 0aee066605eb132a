//! Width of a long sleeve at the wrist.

use super::sleeve::{replaced, sleeves};
use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{edges_stay, girths_stay};
use crate::alterations::cutting::stations::{Station, moved_at};
use crate::alterations::cutting::true_up::with_mouth;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch, with_girth_ease};
use crate::geometry::{Curve, GeometryError, Vec2, root, tolerance};
use crate::piece::{EdgeName, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// The girth it changes.
const GIRTH: &str = "wrist";

/// Widens (or narrows) a long sleeve at the wrist.
///
/// Half of the amount is added at each underarm seam and runs to nothing at the elbow, where its dart
/// stays; both seams keep their lengths, and the cap and the arm stay. The wrist's ease changes by the
/// amount.
///
/// Usual amounts: 6 to 20 mm (value from memory).
///
/// ```
/// use blockwright::alterations::{Alteration, WristWidth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let mut options = DraftOptions::of(Block::Tunic);
/// options.sleeve = Some(SleeveLength::Long);
/// let pattern = draft_figure(&Figure::cylinder(900.0), &options)?;
/// let step: Box<dyn Alteration> = Box::new(WristWidth { amount: 12.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::girth("wrist");
/// let wrist = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((wrist(&done.pattern) - wrist(&pattern) - 12.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/wrist_width.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WristWidth {
    /// By how much the sleeve gets wider at the wrist, in millimetres, all round; narrower with a
    /// minus.
    pub amount: f64,
}

/// Most at once, in millimetres: a sleeve that is to flare is another style (value from memory).
const MOST: f64 = 60.0;

impl Alteration for WristWidth {
    fn name(&self) -> &'static str {
        "wrist_width"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = vec![Promise::changes_by(Measure::girth(GIRTH), self.amount).if_there()];
        promises.extend(girths_stay(before, &[GIRTH]));
        for piece in sleeves(before) {
            let [front, back] = underarms();
            let edges = [EdgeName::SLEEVE_CAP, front, back];
            promises.extend(edges_stay(piece, &edges));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = number(self.amount)?;
        at_most(
            amount,
            (-MOST, MOST),
            "mm",
            "no wrist of a block is altered so far",
        )?;
        if pattern
            .girths()
            .iter()
            .all(|girth| girth.base_name() != GIRTH)
        {
            return Err(AlterationError::Missing {
                what: "a long sleeve".to_owned(),
                advice: "draft with a long sleeve",
            });
        }
        if amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = pattern.clone();
        for piece in sleeves(pattern) {
            altered = replaced(&altered, wider(piece, amount)?)?;
        }
        Ok(with_girth_ease(&altered, GIRTH, amount)?.into())
    }
}

fn underarms() -> [EdgeName; 2] {
    ["underarm_front", "underarm_back"].map(EdgeName::new)
}

/// The back underarm seam, walked up from the wrist, with the mouth of its lowest dart shaped anew
/// for what lies below it.
pub(in crate::alterations) fn reshaped(
    piece: &Piece,
    seam: &Curve,
) -> Result<Curve, GeometryError> {
    let [_, name] = underarms();
    let mouths = piece.mouths(&name);
    let Some((dart, ..)) = mouths.first() else {
        return Ok(seam.clone());
    };
    let [from, to] = dart.legs.map(|leg| seam.joint_at(leg));
    match from.zip(to) {
        Some((from, to)) => {
            let after = seam.part(to, seam.length())?;
            with_mouth(&seam.part(0.0, from)?, dart, &after)
        }
        None => Ok(seam.clone()),
    }
}

/// The sleeve that much wider at its wrist.
fn wider(piece: &Piece, amount: f64) -> Result<Piece, AlterationError> {
    let mut sketch = Sketch::of(piece);
    let [front_name, back_name] = underarms();
    let front = sketch.curve(&front_name)?.clone();
    // Both are walked from the elbow down to the wrist.
    let back = sketch.curve(&back_name)?.reversed();
    let wrist = sketch.curve(&EdgeName::WRIST)?.clone();
    let elbow = piece.line("elbow").map(|line| line.curve.end());
    let front_from = elbow.map_or(0.0, |end| front.nearest(end).1);
    let mouths = piece.mouths(&back_name);
    let below_dart = mouths.iter().map(|(_, from, _)| *from);
    let below_dart = below_dart.fold(f64::INFINITY, f64::min);
    let back_from = if below_dart.is_finite() {
        back.length() - below_dart
    } else {
        elbow.map_or(0.0, |end| back.nearest(end).1)
    };
    let drawn = |out: f64| -> Result<[Curve; 3], GeometryError> {
        let fore = led_out(&front, front_from, out)?;
        let hind = led_out(&back, back_from, -out)?;
        let ends = [
            Station::new(0.0, fore.end() - front.end()),
            Station::new(wrist.length(), hind.end() - back.end()),
        ];
        Ok([fore, moved_at(&wrist, &ends)?, hind.reversed()])
    };
    let wanted = wrist.length() + amount;
    let reach = 1.0 + amount.abs();
    let out = root("wrist of a sleeve", -reach, reach, |out| {
        drawn(out).map_or(f64::NAN, |[_, wrist, _]| wrist.length() - wanted)
    })
    .map_err(|source| AlterationError::Construction {
        step: "wrist at its new width",
        source,
    })?;
    let [fore, end, hind] = drawn(out)?;
    let hind = reshaped(piece, &hind)?;
    for notch in &mut sketch.parts_mut().notches {
        if notch.edge == EdgeName::WRIST {
            notch.at *= end.length() / wrist.length();
        }
    }
    sketch.replace(&front_name, fore)?;
    sketch.replace(&EdgeName::WRIST, end)?;
    sketch.replace(&back_name, hind)?;
    sketch.finish()
}

/// A seam whose end at the wrist moves out by so much, and up or down as its length asks for; it
/// stays as it is above a place.
fn led_out(seam: &Curve, from: f64, out: f64) -> Result<Curve, GeometryError> {
    let length = seam.length();
    let drawn = |drop: f64| {
        let by = Vec2::new(out, drop);
        moved_at(
            seam,
            &[Station::new(from, Vec2::ZERO), Station::new(length, by)],
        )
    };
    if out.abs() <= tolerance::SOLVE {
        return Ok(seam.clone());
    }
    let reach = 1.0 + out.abs();
    let drop = root("drop of a wrist", -reach, reach, |drop| {
        drawn(drop).map_or(f64::NAN, |moved| moved.length() - length)
    })?;
    drawn(drop)
}
