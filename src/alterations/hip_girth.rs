//! Hip girth, at the side seams.

use super::amounts::{at_most, number};
use super::promise::{edges_stay_if_there, girths_stay};
use super::quarter::{hem, line_on_side, quarters, waist_on_side};
use super::side_moves::{SideMove, with_sides_moved};
use super::stations::Station;
use super::with_girth_ease;
use super::{Alteration, AlterationError, Altered, Promise};
use crate::geometry::Vec2;
use crate::piece::{EdgeName, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Widens (or narrows) the hips at the side seams.
///
/// For a skirt that draws across the hips and rides up, or hangs in vertical folds there. A
/// quarter of the amount is added at each side edge: nothing at the waist, all of it at the hip
/// line, parallel from there to the hem. The hip's ease changes by the amount.
///
/// ```
/// use blockwright::alterations::{Alteration, HipGirth, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{Measure, Pattern};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(HipGirth { amount: 24.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::girth("hip");
/// let hip = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((hip(&done.pattern) - hip(&pattern) - 24.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("demonstrations/hip_girth.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HipGirth {
    /// By how much the whole hip gets wider, in millimetres: usually 8 to 40, narrower with a
    /// minus.
    pub amount: f64,
}

/// Most that one side edge is moved at the hip, in millimetres (value from memory, medium
/// confidence: up to 10 to 12 before the panel is slashed instead).
const MOST_AN_EDGE: f64 = 12.0;

/// Edges at the sides of the whole garment.
const EDGES: f64 = 4.0;

impl Alteration for HipGirth {
    fn name(&self) -> &'static str {
        "hip_girth"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let hip = Promise::changes_by(Measure::girth("hip"), self.amount);
        let mut promises = vec![hip];
        promises.extend(girths_stay(before, &["hip"]));
        for piece in quarters(before) {
            // A skirt has no neck, a dress no waist seam; back and front have one centre each.
            let edges = [
                EdgeName::WAIST,
                EdgeName::NECKLINE,
                EdgeName::SHOULDER,
                EdgeName::ARMSCYE,
                EdgeName::CENTRE_BACK,
                EdgeName::CENTRE_FRONT,
            ];
            promises.extend(edges_stay_if_there(piece, &edges));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let edge = number(self.amount)? / EDGES;
        let most = EDGES * MOST_AN_EDGE;
        at_most(
            self.amount,
            (-most, most),
            "mm",
            "each side edge moves by a quarter of it, and by no more than 12 mm at once",
        )?;
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let moves: Vec<SideMove<'_>> = quarters(pattern)
            .filter(|p| p.line("hip").is_some())
            .map(|piece| Ok((piece, side_stations(piece, edge)?)))
            .collect::<Result<_, AlterationError>>()?;
        if moves.is_empty() {
            return Err(AlterationError::Missing {
                what: "a hip line above its hem".to_owned(),
                advice: "hip girth is altered on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            });
        }
        let altered = with_sides_moved(pattern, moves)?;
        Ok(with_girth_ease(&altered, "hip", self.amount)?.into())
    }
}

/// How the side seam of a piece moves: not at the waist, out at the hip.
fn side_stations(piece: &Piece, by: f64) -> Result<Vec<Station>, AlterationError> {
    let missing = |what: &str| AlterationError::Missing {
        what: format!("{what} on the {}", piece.name()),
        advice: "hip girth is altered on a piece with a side seam, a waist and a hem",
    };
    let waist = waist_on_side(piece).ok_or_else(|| missing("a waist at the side seam"))?;
    let hip = line_on_side(piece, "hip").ok_or_else(|| missing("a hip line"))?;
    hem(piece).ok_or_else(|| missing("a hem"))?;
    let out = Vec2::new(by, 0.0);
    Ok(vec![
        Station::new(waist, Vec2::ZERO),
        Station::new(hip, out),
    ])
}
