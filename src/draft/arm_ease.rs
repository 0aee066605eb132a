//! The ease of the upper arm: as asked, or within the block's range so that the cap gets a
//! height that suits the block.

use super::choices::{Block, SleeveWidth};
use super::sleeve_cap::{CapSpec, cap, width_at_height};
use super::{DraftOptions, Ease};

/// How the ease of the upper arm is chosen, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ArmEase {
    /// What is asked for.
    asked: f64,
    /// Between which it may be moved; nothing where it is to be kept.
    range: Option<(f64, f64)>,
    /// The least and the most height of the cap, as shares of the armscye.
    heights: (f64, f64),
}

/// Height of the cap as a share of the armscye: a third for a fitted sleeve (a mid-20th-century
/// drafting course, as transcribed), 0.27 to 0.34 for caps of 12 to 15 cm (computed), a quarter
/// to a fifth for a shirt (value from memory). Aimed at a little inside, for the armscye of a
/// chosen width is not quite that of its guess.
const FITTED_HEIGHTS: (f64, f64) = (0.255, 0.325);
const LOW_HEIGHTS: (f64, f64) = (0.185, 0.245);

/// How far the ease may be moved from what the block asks for: fitted sleeves from the least for
/// comfort, 38 mm (Santa Rosa Junior College, FASH 60), to about 76 (the drafting course).
const FITTED_REACH: (f64, f64) = (-14.0, 26.0);
/// The same for shirt and tunic, 90 to 115 mm and what lies about it (value from memory).
const LOW_REACH: (f64, f64) = (-40.0, 40.0);

impl ArmEase {
    pub fn of(options: &DraftOptions, ease: &Ease) -> Self {
        let low = matches!(options.block, Block::Tunic | Block::Shirt);
        let (heights, reach) = if low {
            (LOW_HEIGHTS, LOW_REACH)
        } else {
            (FITTED_HEIGHTS, FITTED_REACH)
        };
        let asked = ease.upper_arm;
        Self {
            asked,
            range: match options.sleeve_width {
                SleeveWidth::Exact => None,
                SleeveWidth::Suited => Some((asked + reach.0, asked + reach.1)),
            },
            heights,
        }
    }

    /// The ease: as asked where its cap is neither too low nor too high, else as near to that as
    /// gives such a cap.
    pub fn chosen(&self, arm: f64, armscye: f64, spec: impl Fn(f64) -> CapSpec) -> f64 {
        let Some((least, most)) = self.range else {
            return self.asked;
        };
        let mut ease = self.asked;
        // The direction in which the cap leaves the biceps line follows its width a little.
        for _ in 0..3 {
            let spec = spec(ease);
            let share = cap(&CapSpec {
                biceps: arm + self.asked,
                ..spec
            })
            .map(|cap| cap.height / armscye);
            // A cap that has no height at all is too narrow for its lines or too wide.
            let wished = match share {
                Ok(share) if share < self.heights.0 => self.heights.0,
                Ok(share) if share > self.heights.1 => self.heights.1,
                Ok(_) => return self.asked,
                Err(_) => 0.5 * (self.heights.0 + self.heights.1),
            };
            let Some(width) = width_at_height(&spec, wished * armscye) else {
                return ease;
            };
            ease = (width - arm).max(least).min(most);
        }
        ease
    }
}
