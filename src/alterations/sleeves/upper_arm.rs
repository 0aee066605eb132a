//! Width of the sleeve at the upper arm.

use super::sleeve::{replaced, sleeves};
use super::wider_sleeve::wider;
use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{edges_stay, girths_stay};
use crate::alterations::{Alteration, AlterationError, Altered, Promise, with_girth_ease};
use crate::piece::{EdgeName, Measure, Pattern, Warning};
use serde::{Deserialize, Serialize};

/// The girth it changes.
const ARM: &str = "upper_arm";

/// Widens (or narrows) the sleeve at the biceps.
///
/// For cross strain at the upper arm. The sleeve is slashed from cap to wrist and across its
/// biceps line and spread there, half to each side of its grain; the wrist stays. The cap is
/// solved again at its old length, so that it still fits its armscye with its old ease: it gets
/// lower, which is reported. Both underarm seams stay of one length. The ease of the upper arm
/// changes by the amount.
///
/// ```
/// use blockwright::alterations::{Alteration, UpperArm, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let mut options = DraftOptions::of(Block::Tunic);
/// options.sleeve = Some(SleeveLength::Long);
/// let pattern = draft_figure(&Figure::cylinder(900.0), &options)?;
/// let step: Box<dyn Alteration> = Box::new(UpperArm { amount: 15.0 });
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::girth("upper_arm");
/// let arm = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((arm(&done.pattern) - arm(&pattern) - 15.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/upper_arm.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UpperArm {
    /// By how much the sleeve gets wider at the biceps, in millimetres, all round: usually 6 to
    /// 25; narrower with a minus.
    pub amount: f64,
}

/// Most at once, in millimetres (value from memory, medium confidence: 38 to 50).
const MOST: f64 = 50.0;

impl Alteration for UpperArm {
    fn name(&self) -> &'static str {
        "upper_arm"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let arm = Promise::changes_by(Measure::girth(ARM), self.amount);
        let mut promises = vec![arm];
        promises.extend(girths_stay(before, &[ARM]));
        for piece in sleeves(before) {
            let edges = [EdgeName::SLEEVE_CAP, EdgeName::WRIST];
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
            "draft with more ease at the upper arm",
        )?;
        if sleeves(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: "a sleeve".to_owned(),
                advice: "draft with a sleeve",
            });
        }
        if amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let mut altered = Altered::from(pattern.clone());
        for piece in sleeves(pattern) {
            altered.pattern = replaced(&altered.pattern, wider(piece, amount)?)?;
            let cap = Measure::cap_height(piece.name());
            let height = |p: &Pattern| p.measured(&cap);
            if let (Some(old), Some(new)) = (height(pattern), height(&altered.pattern)) {
                altered.warnings.push(Warning::new(
                    "cap_height_changed",
                    format!(
                        "the {}'s cap is {:.1} mm {}, and the sleeve over the arm as much {}: alter its length if it should stay",
                        piece.name(),
                        (old - new).abs(),
                        if new < old { "lower" } else { "higher" },
                        if new < old { "shorter" } else { "longer" },
                    ),
                ));
            }
        }
        altered.pattern = with_girth_ease(&altered.pattern, ARM, amount)?;
        Ok(altered)
    }
}
