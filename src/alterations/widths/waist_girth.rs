//! Waist girth, at side seams and darts.

use super::waist_wider::{Taken, capacity, drawn_wider, side_stations};
use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::edges_stay_if_there;
use crate::alterations::cutting::quarter::{free_above_waist, quarters, upper};
use crate::alterations::cutting::side_moves::matched;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, with_girth_ease};
use crate::piece::{EdgeName, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Widens (or narrows) the waist at side seams and waist darts.
///
/// For strain or slack at the waist alone. Each quarter changes by a quarter of the amount: a
/// third of that at the side edge, the rest in the darts, whose apexes stay; what the darts
/// cannot give goes to the side edge as well. No edge and no dart leg moves by more than 6 mm.
/// Joined bodices and skirts change alike. The waist's ease changes by the amount.
///
/// ```
/// use blockwright::alterations::{Alteration, WaistGirth, alter};
/// use blockwright::draft::{Ease, Figure, Fit, bodice};
/// use blockwright::piece::{Measure, Pattern};
/// let mut figure = Figure::cylinder(900.0);
/// figure.waist_girth = 720.0;
/// let pattern = bodice(&figure, &Ease::of(Fit::Regular))?;
/// let step: Box<dyn Alteration> = Box::new(WaistGirth { amount: 20.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::girth("waist");
/// let waist = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((waist(&done.pattern) - waist(&pattern) - 20.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/waist_girth.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WaistGirth {
    /// By how much the whole waist gets wider, in millimetres: usually 8 to 40, narrower with a
    /// minus.
    pub amount: f64,
}

/// Most that one edge or dart leg moves, in millimetres (value from memory, medium confidence:
/// up to 6 per seam edge and 6 per dart leg before lines elsewhere are changed).
const MOST_AN_EDGE: f64 = 6.0;

/// Share of a quarter's change that is taken at the side edge: one edge beside two dart legs.
const SIDE_SHARE: f64 = 1.0 / 3.0;

impl Alteration for WaistGirth {
    fn name(&self) -> &'static str {
        "waist_girth"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        for girth in before.girths() {
            let change = if is_waist(&girth.name) {
                self.amount
            } else {
                0.0
            };
            promises.push(Promise::changes_by(Measure::girth(&girth.name), change));
        }
        for piece in quarters(before) {
            // Bodice, skirt and dress differ in these; back and front have one centre each.
            let edges = [
                EdgeName::NECKLINE,
                EdgeName::SHOULDER,
                EdgeName::ARMSCYE,
                EdgeName::CENTRE_BACK,
                EdgeName::CENTRE_FRONT,
                EdgeName::HEM,
            ];
            promises.extend(edges_stay_if_there(piece, &edges));
            let waist = Measure::edge_length(piece.name(), EdgeName::WAIST);
            promises.push(Promise::changes_by(waist, self.amount / 4.0).if_there());
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = number(self.amount)?;
        if quarters(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: "a waist".to_owned(),
                advice: "waist girth is altered on a garment of the trunk",
            });
        }
        if amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = pattern.clone();
        // Bodice and skirt each on their own: their sides need not move alike, back and front must.
        for is_upper in [true, false] {
            let pieces: Vec<&Piece> = quarters(pattern).filter(|p| upper(p) == is_upper).collect();
            if pieces.is_empty() {
                continue;
            }
            let taken = share(&pieces, amount)?;
            let moves = pieces
                .into_iter()
                .map(|piece| Ok((piece, side_stations(piece, taken)?)))
                .collect::<Result<_, AlterationError>>()?;
            for (piece, stations) in matched(moves)? {
                altered = replaced(&altered, drawn_wider(piece, taken, &stations)?)?;
            }
        }
        for girth in pattern.girths().iter().filter(|g| is_waist(&g.name)) {
            altered = with_girth_ease(&altered, &girth.name, amount)?;
        }
        Ok(altered.into())
    }
}

/// A pattern of bodice and skirt measures its waist on both.
fn is_waist(girth: &str) -> bool {
    girth == "waist" || girth == "skirt_waist"
}

/// How a quarter's change is shared between side edge and darts, alike for all pieces.
fn share(pieces: &[&Piece], amount: f64) -> Result<Taken, AlterationError> {
    let quarter = amount / 4.0;
    let darts = pieces
        .iter()
        .map(|p| capacity(p, quarter, MOST_AN_EDGE))
        .fold(f64::INFINITY, f64::min);
    let rest = (quarter.abs() - darts).max(0.0);
    let side = (SIDE_SHARE * quarter.abs()).max(rest) * quarter.signum();
    let most = 4.0 * (MOST_AN_EDGE + darts).min(MOST_AN_EDGE / SIDE_SHARE);
    if side.abs() > MOST_AN_EDGE {
        at_most(
            amount,
            (-most, most),
            "mm",
            "no side edge and no dart leg moves by more than 6 mm",
        )?;
    }
    let from = free_above_waist(pieces);
    Ok(Taken {
        quarter,
        side,
        from,
    })
}
