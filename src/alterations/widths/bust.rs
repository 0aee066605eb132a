//! Bust: full or small, by amount at the bust point.

use super::bust_spread::spread;
use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{edges_stay, edges_stay_if_there, girths_stay};
use crate::alterations::chain::way_back::taken_back;
use crate::alterations::darts::dart_tip::{bust_fullness, tip_backed_off, tip_to_fullness};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{
    Alteration, AlterationError, Altered, Promise, solve_sleeves, with_girth_ease,
};
use crate::piece::{Dart, EdgeName, Pattern, Piece, Warning};
use serde::{Deserialize, Serialize};

/// Gives room for a full bust, or takes it from a small one, at the bust point.
///
/// For folds that point to the bust, a front waist that rises and an armscye that gapes; or for
/// slack there. The front is cut from the waist up to the bust point and on to the
/// armscye, hinged at its notch, and through the bust dart. It is spread at the bust point by the
/// amount with the vertical edges parallel; the side drops with it, and the lower front is
/// levelled by dropping its centre as much. The bust dart gets deeper. The waist keeps its width:
/// the waist dart takes the amount back, or, where there is none on a block in one piece, the
/// side seam below the bust; hips and hem keep theirs at the side seam. Armscye, shoulder,
/// neckline, the side seam with its dart closed, and the back stay.
///
/// At the bust point the whole garment gets wider by twice the amount. The underarm line, about half
/// way up to the hinge, gains half as much: the finished bust and its ease change by the amount.
///
/// ```
/// use blockwright::alterations::{Alteration, Bust, alter};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::piece::{Measure, Pattern};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 940.0),
///     (Measurement::WaistGirth, 780.0), (Measurement::HipGirth, 1020.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Bodice))?;
/// let step: Box<dyn Alteration> = Box::new(Bust { amount: 10.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::dart_angle("front", "bust");
/// let angle = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!(angle(&done.pattern) > angle(&pattern) + 2.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/bust.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bust {
    /// By how much each half gets wider at the bust point, in millimetres: usually 6 to 15 for a
    /// full bust, 5 to 12 less for a small one.
    pub amount: f64,
}

/// Least and most at once, in millimetres (values from memory, medium confidence: above 25 to 30
/// in two steps; small bust up to 12).
const LEAST: f64 = -15.0;
const MOST: f64 = 30.0;

impl Alteration for Bust {
    fn name(&self) -> &'static str {
        "bust"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        for (piece, _) in fronts(before) {
            let edges = [
                EdgeName::SIDE_SEAM,
                EdgeName::ARMSCYE,
                EdgeName::SHOULDER,
                EdgeName::NECKLINE,
            ];
            promises.extend(edges_stay(piece, &edges));
            promises.extend(edges_stay_if_there(piece, &[EdgeName::WAIST]));
        }
        promises.extend(girths_stay(before, &["bust"]));
        promises.into_iter().map(|p| p.within(NEAR)).collect()
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = number(self.amount)?;
        at_most(
            amount,
            (LEAST, MOST),
            "mm",
            "so much is spread in two steps",
        )?;
        if fronts(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: "a front with a bust dart at its side seam".to_owned(),
                advice: "the bust is altered on bodice, dress, tunic or shirt, its dart not yet relocated",
            });
        }
        if amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = spread_fronts(pattern, amount)?;
        if amount < 0.0 {
            altered = taken_back(pattern, altered, |p| spread_fronts(p, -amount));
        }
        let mut gained = 0.0;
        if let Some(bust) = pattern.girths().iter().find(|g| g.name == "bust") {
            gained = altered.finished(bust) - pattern.finished(bust);
            altered = with_girth_ease(&altered, "bust", gained)?;
        }
        let warning = Warning::new(
            "bust_point_girth",
            format!(
                "at the bust point the garment is {:.1} mm {} all round; along the underarm line it is {:.1} mm",
                2.0 * amount.abs(),
                if amount > 0.0 { "wider" } else { "narrower" },
                gained.abs()
            ),
        );
        Ok(Altered {
            pattern: solve_sleeves(pattern, altered)?,
            warnings: vec![warning],
        })
    }
}

/// The pattern with its fronts wider at the bust point.
fn spread_fronts(pattern: &Pattern, amount: f64) -> Result<Pattern, AlterationError> {
    let mut altered = pattern.clone();
    for (piece, dart) in fronts(pattern) {
        let fullness = bust_fullness(piece, dart);
        let turning = tip_to_fullness(piece, dart)?;
        let dart = turning.dart(&dart.name).unwrap_or(dart);
        let wider = spread(&turning, dart, amount)?;
        altered = replaced(&altered, tip_backed_off(&wider, &dart.name, fullness)?)?;
    }
    Ok(altered)
}

/// How closely lengths are kept that a blend may change, in millimetres: what a person sees.
const NEAR: f64 = crate::geometry::tolerance::PRINT;

/// Fronts with the dart to the bust at their side seam.
fn fronts(pattern: &Pattern) -> impl Iterator<Item = (&Piece, &Dart)> {
    pattern
        .pieces()
        .iter()
        .filter(|p| {
            p.outline().edge(&EdgeName::CENTRE_FRONT).is_some()
                && p.outline().edge(&EdgeName::ARMSCYE).is_some()
        })
        .filter_map(|p| match p.mouths(&EdgeName::SIDE_SEAM).as_slice() {
            [(dart, ..)] => Some((p, *dart)),
            _ => None,
        })
}
