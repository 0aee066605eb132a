//! Width of a long sleeve at the forearm.

use super::sleeve_width::ArmLevel;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, StructureChange};
use crate::piece::Pattern;
use serde::{Deserialize, Serialize};

/// Widens (or narrows) a long sleeve at the forearm.
///
/// For a sleeve that binds over a strong forearm, or hangs hollow there. Both underarm seams go out a
/// third of the way from elbow to wrist, where a line `forearm` is drawn, and run smooth from the
/// biceps line to the wrist, where nothing moves. The legs of an elbow dart go out with them, its tip
/// and angle stay; the elbow gets a part of the width.
///
/// ```
/// use blockwright::alterations::{Alteration, ForearmWidth, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, SleeveLength, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let mut options = DraftOptions::of(Block::Tunic);
/// options.sleeve = Some(SleeveLength::Long);
/// let pattern = draft_figure(&Figure::cylinder(900.0), &options)?;
/// let by = |amount| Box::new(ForearmWidth { amount }) as Box<dyn Alteration>;
/// let done = alter(&pattern, &[by(6.0), by(6.0)])?;
/// let what = Measure::line_girth("forearm");
/// let wider = done.accounts[1].changes.iter().find(|change| change.measure == what);
/// assert!(wider.and_then(|c| c.difference()).is_some_and(|by| (by - 6.0).abs() < 1e-6));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/forearm_width.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ForearmWidth {
    /// By how much the sleeve gets wider at the forearm, in millimetres, all round: usually 6 to 16;
    /// narrower with a minus (values from memory).
    pub amount: f64,
}

impl Alteration for ForearmWidth {
    fn name(&self) -> &'static str {
        "forearm_width"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn structure_change(&self, before: &Pattern) -> StructureChange {
        ArmLevel::Forearm.structure_change(before)
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        ArmLevel::Forearm.promises(before, self.amount)
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        Ok(ArmLevel::Forearm.widened(pattern, self.amount)?.into())
    }
}
