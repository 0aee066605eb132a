//! Length of bodice, skirt or sleeve: a parallel spread or tuck.

use super::length_below::{bodice_longer, hips_longer, skirt_longer};
use super::length_sleeve::{forearm_longer, sleeve_longer};
use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{edges_stay, edges_stay_if_there, girths_stay};
use crate::alterations::cutting::quarter::{centre, quarters, upper};
use crate::alterations::sleeves::sleeve::{replaced, sleeves};
use crate::alterations::{Alteration, AlterationError, Altered, Promise};
use crate::piece::{EdgeName, Measure, Pattern};
use serde::{Deserialize, Serialize};

/// Where length is given or taken.
///
/// ```
/// use blockwright::alterations::LengthAt;
/// assert_ne!(LengthAt::Bodice, LengthAt::Skirt);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum LengthAt {
    /// Between scye and waist.
    Bodice,
    /// Between waist and hip line.
    Hips,
    /// Below the hip line.
    Skirt,
    /// Below the biceps line: down to the elbow where the sleeve has an elbow line, else down
    /// to the wrist.
    Sleeve,
    /// Below the elbow line.
    Forearm,
}

/// Lengthens (or shortens) bodice, skirt or sleeve by a parallel spread (or tuck).
///
/// On a bodice, dress, tunic or shirt, for a waist above or below the natural one all round: back
/// and front are spread alike between the bust dart and the waist. Whatever lies below goes down
/// whole, the waist darts are redrawn to their old apexes at their old place on the waist, and
/// the side seams are blended. Between waist and hips, for a hip line above or below the fullest
/// seat, what lies from the hip line down goes down; on a skirt everything below the hip line. On a
/// sleeve both underarm seams are spread below the biceps line, or below the elbow. No girth changes.
///
/// ```
/// use blockwright::alterations::{Alteration, LengthAt, LengthChange, alter};
/// use blockwright::draft::{Ease, Figure, Fit, bodice};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let mut figure = Figure::cylinder(900.0);
/// figure.waist_girth = 720.0;
/// let pattern = bodice(&figure, &Ease::of(Fit::Regular))?;
/// let step: Box<dyn Alteration> = Box::new(LengthChange { at: LengthAt::Bodice, amount: 12.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("front", EdgeName::CENTRE_FRONT);
/// let centre = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((centre(&done.pattern) - centre(&pattern) - 12.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/length.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LengthChange {
    /// Where.
    pub at: LengthAt,
    /// By how much it gets longer, in millimetres: on a bodice usually 6 to 25; shorter with a
    /// minus.
    pub amount: f64,
}

/// Most that is spread at once, in millimetres: between scye and waist about twice the usual 25
/// (value from memory, medium confidence), elsewhere what a hem or a sleeve may be asked for.
const MOST_BODICE: f64 = 50.0;
const MOST_SKIRT: f64 = 600.0;
const MOST_SLEEVE: f64 = 80.0;

impl Alteration for LengthChange {
    fn name(&self) -> &'static str {
        "length"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises: Vec<Promise> = girths_stay(before, &[]).collect();
        for piece in quarters(before) {
            // Bodice and skirt differ in these.
            let edges = [
                EdgeName::NECKLINE,
                EdgeName::SHOULDER,
                EdgeName::ARMSCYE,
                EdgeName::WAIST,
                EdgeName::HEM,
            ];
            promises.extend(edges_stay_if_there(piece, &edges));
            let change = match self.at {
                LengthAt::Bodice if upper(piece) => self.amount,
                LengthAt::Hips | LengthAt::Skirt if piece.line("hip").is_some() => self.amount,
                _ => 0.0,
            };
            if let Some((_, edge)) = centre(piece) {
                let centre = Measure::edge_length(piece.name(), edge);
                promises.push(Promise::changes_by(centre, change));
            }
        }
        for sleeve in sleeves(before) {
            promises.extend(edges_stay(sleeve, &[EdgeName::SLEEVE_CAP]));
            promises.push(Promise::exactly(Measure::cap_height(sleeve.name())));
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = number(self.amount)?;
        let most = match self.at {
            LengthAt::Bodice | LengthAt::Hips => MOST_BODICE,
            LengthAt::Skirt => MOST_SKIRT,
            LengthAt::Sleeve | LengthAt::Forearm => MOST_SLEEVE,
        };
        at_most(amount, (-most, most), "mm", "spread in two places instead")?;
        let pieces = match self.at {
            LengthAt::Bodice => bodice_longer(pattern, amount)?,
            LengthAt::Hips => hips_longer(pattern, amount)?,
            LengthAt::Skirt => skirt_longer(pattern, amount)?,
            LengthAt::Sleeve => sleeves(pattern)
                .map(|p| sleeve_longer(p, amount))
                .collect::<Result<_, _>>()?,
            LengthAt::Forearm => sleeves(pattern)
                .filter(|p| p.line("elbow").is_some())
                .map(|p| forearm_longer(p, amount))
                .collect::<Result<_, _>>()?,
        };
        if pieces.is_empty() {
            return Err(AlterationError::Missing {
                what: match self.at {
                    LengthAt::Bodice => "a bodice",
                    LengthAt::Hips | LengthAt::Skirt => "a hip line above its hem",
                    LengthAt::Sleeve => "a sleeve",
                    LengthAt::Forearm => "a sleeve with an elbow line",
                }
                .to_owned(),
                advice: "say at which part of this block length is wanted: bodice, hips, skirt, sleeve or forearm",
            });
        }
        if amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = pattern.clone();
        for piece in pieces {
            altered = replaced(&altered, piece)?;
        }
        Ok(altered.into())
    }
}
