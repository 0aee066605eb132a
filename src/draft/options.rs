//! What is wanted of a draft besides the body.

use super::DraftError;
use super::choices::{Block, Side, SleeveLength, SleeveWidth};
use super::ease::{Ease, Fit};
use super::error::check_options;

/// What is wanted of a draft besides the body.
///
/// ```
/// use blockwright::draft::{Block, DraftOptions};
/// let mut options = DraftOptions::of(Block::Tunic);
/// options.length = Some(350.0);
/// assert!(options.sleeve.is_none());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct DraftOptions {
    /// The block.
    pub block: Block,
    /// Ease by place.
    pub ease: Ease,
    /// Waist to hem in millimetres; the block's usual length when none is given.
    pub length: Option<f64>,
    /// The sleeve, if any.
    pub sleeve: Option<SleeveLength>,
    /// By how much the sleeve cap is longer than the armscye, in millimetres; what suits the
    /// block when none is given.
    pub cap_ease: Option<f64>,
    /// Whether the ease of the upper arm may follow the armscye.
    pub sleeve_width: SleeveWidth,
    /// Whether a one-piece block has waist darts; what suits the block when not said.
    pub waist_darts: Option<bool>,
    /// The side seam of a one-piece block; what suits the block when not said.
    pub side: Option<Side>,
}

impl DraftOptions {
    /// The least and the greatest length in mm, from the high hip to the floor; the draft knows
    /// both more closely.
    pub const LENGTHS: (f64, f64) = (60.0, 1400.0);
    /// The least and the greatest ease of a sleeve cap in mm: 40 to 50 on tailored wool is the
    /// most (value from memory), a knitted look has none.
    pub const CAP_EASES: (f64, f64) = (0.0, 60.0);

    /// The block as it usually is: regular ease, no sleeve.
    #[must_use]
    pub fn of(block: Block) -> Self {
        Self::fitting(block, Fit::Regular)
    }

    /// The block with the ease of a fit, no sleeve.
    #[must_use]
    pub fn fitting(block: Block, fit: Fit) -> Self {
        Self {
            block,
            ease: Ease::for_block(block, fit),
            length: None,
            sleeve: None,
            cap_ease: None,
            sleeve_width: SleeveWidth::Suited,
            waist_darts: None,
            side: None,
        }
    }

    /// Whether the waist has darts (or a seam), so that its ease is as asked; without them the
    /// line of the side seam decides how wide it is.
    #[must_use]
    pub fn shapes_waist(&self) -> bool {
        match self.block {
            Block::Dress | Block::Tunic | Block::Shirt => self.has_waist_darts(),
            _ => true,
        }
    }

    /// Whether a one-piece block has waist darts: as asked, or a dress alone.
    #[must_use]
    pub fn has_waist_darts(&self) -> bool {
        self.waist_darts.unwrap_or(self.block == Block::Dress)
    }

    /// Refuses options that are not numbers or outside their bounds.
    pub(super) fn check(&self) -> Result<(), DraftError> {
        self.ease.check()?;
        let cap_ease = self.cap_ease.unwrap_or(0.0);
        check_options([("cap_ease", cap_ease, Self::CAP_EASES)])?;
        match self.length {
            Some(length) => check_options([("length", length, Self::LENGTHS)]),
            None => Ok(()),
        }
    }
}
