//! Width of a long sleeve at the elbow.

use super::sleeve_width::ArmLevel;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, StructureChange};
use crate::piece::Pattern;
use serde::{Deserialize, Serialize};

/// Widens (or narrows) a long sleeve at the elbow.
///
/// For a sleeve that binds at the bent elbow, or folds there. The legs of the elbow dart are drawn
/// out, its tip and its angle stay; a sleeve without one goes out at the level of the elbow, where a
/// line `elbow` is drawn. Nothing moves at the biceps line nor at the wrist, the seams run smooth
/// between them and stay of one length.
///
/// ```
/// use blockwright::alterations::{Alteration, ElbowWidth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let mut options = DraftOptions::of(Block::Tunic);
/// options.sleeve = Some(SleeveLength::Long);
/// let pattern = draft_figure(&Figure::cylinder(900.0), &options)?;
/// let by = |amount| Box::new(ElbowWidth { amount }) as Box<dyn Alteration>;
/// let done = alter(&pattern, &[by(6.0), by(6.0)])?;
/// let what = Measure::line_girth("elbow");
/// let wider = done.accounts[1].changes.iter().find(|change| change.measure == what);
/// assert!(wider.and_then(|c| c.difference()).is_some_and(|by| (by - 6.0).abs() < 1e-6));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/elbow_width.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ElbowWidth {
    /// By how much the sleeve gets wider at the elbow, in millimetres, all round: usually 6 to 20;
    /// narrower with a minus (values from memory).
    pub amount: f64,
}

impl Alteration for ElbowWidth {
    fn name(&self) -> &'static str {
        "elbow_width"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn structure_change(&self, before: &Pattern) -> StructureChange {
        ArmLevel::Elbow.structure_change(before)
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        ArmLevel::Elbow.promises(before, self.amount)
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        Ok(ArmLevel::Elbow.widened(pattern, self.amount)?.into())
    }
}
