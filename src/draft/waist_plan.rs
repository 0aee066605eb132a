//! How the waist is shared: side seams, darts, quarters. Bodice and skirt follow one plan, so
//! that their waists agree quarter by quarter and their darts meet.

use super::{DraftError, Ease, Figure};
use crate::geometry::Span;

/// What has to be taken in between the underarm and the waist, and where.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Shares {
    /// At each side seam; negative when the side seam goes out.
    pub side: f64,
    /// In the back dart; zero for none.
    pub back_dart: f64,
    /// In the front dart; zero for none.
    pub front_dart: f64,
}

/// Up to this much on the half, the side seams take all of it.
const NO_DART: f64 = 24.0;
/// Two darts of less than this together are not sewn.
const LEAST_DARTS: f64 = 16.0;
/// Share of the rest that each side seam takes.
const SIDE_SHARE: f64 = 0.185;
/// Deepest dart of a bodice: 40 mm (value from memory); more goes to the side.
const DEEPEST: f64 = 42.0;

/// Most that a side seam without darts comes in, in millimetres: beyond it the cloth drags
/// (value from memory).
const MOST_SIDE: f64 = 24.0;

/// Neither quarter of the waist is less than this share of both: side seams and darts that
/// leave less would meet.
const LEAST_QUARTER: f64 = 0.2;

impl Shares {
    /// Shares what half the waist is narrower than half the chest.
    pub fn of(spare: f64) -> Self {
        let side = NO_DART / 2.0 + SIDE_SHARE * (spare - NO_DART);
        if spare <= NO_DART {
            return Self {
                side: spare / 2.0,
                back_dart: 0.0,
                front_dart: 0.0,
            };
        }
        Self::with_side(spare, side)
    }

    /// The same where the side seam's share is given.
    fn with_side(spare: f64, side: f64) -> Self {
        let darts = spare - 2.0 * side;
        if darts < LEAST_DARTS {
            return Self {
                side: spare / 2.0,
                back_dart: 0.0,
                front_dart: 0.0,
            };
        }
        let darts = darts.min(2.0 * DEEPEST);
        Self {
            side: (spare - darts) / 2.0,
            back_dart: 0.51 * darts,
            front_dart: 0.49 * darts,
        }
    }

    /// The darts beside a side seam whose line is fixed: what they cannot take stays as ease.
    pub fn beside(spare: f64, side: f64) -> Self {
        let darts = spare - 2.0 * side;
        let darts = if darts < LEAST_DARTS {
            0.0
        } else {
            darts.min(2.0 * DEEPEST)
        };
        Self {
            side,
            back_dart: 0.51 * darts,
            front_dart: 0.49 * darts,
        }
    }

    /// The side seams alone, as far as they may come in; the waist keeps the rest as ease.
    pub fn at_sides(spare: f64) -> Self {
        Self {
            side: (spare / 2.0).min(MOST_SIDE),
            back_dart: 0.0,
            front_dart: 0.0,
        }
    }
}

/// The sewn waist, quarter by quarter.
///
/// ```
/// use blockwright::draft::{Ease, Figure, Fit, WaistPlan};
/// let plan = WaistPlan::of_waist(&Figure::cylinder(900.0), &Ease::of(Fit::Regular));
/// assert_eq!(plan.back + plan.front, 462.5);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WaistPlan {
    /// Length of the back quarter, in millimetres.
    pub back: f64,
    /// Length of the front quarter, in millimetres.
    pub front: f64,
    /// Distance of the back dart from the centre, along the sewn waist, in millimetres.
    pub back_dart_at: f64,
    /// Distance of the front dart from the centre, along the sewn waist, in millimetres.
    pub front_dart_at: f64,
}

impl WaistPlan {
    /// By how much a front quarter is longer than a quarter of the waist.
    pub(super) const FRONT_MORE: f64 = 5.0;

    /// A plan from the waist alone, for a skirt of a figure whose bodice cannot be drafted.
    #[must_use]
    pub fn of_waist(figure: &Figure, ease: &Ease) -> Self {
        let quarter = (figure.waist_girth + ease.waist) / 4.0;
        Self::placed(
            figure,
            quarter - Self::FRONT_MORE,
            quarter + Self::FRONT_MORE,
            30.0,
        )
    }

    /// The plan of a waist that is narrower than the chest by these shares: `chest` is the width
    /// of back and front at the underarm, the front's with its bust dart closed.
    pub(super) fn new(
        figure: &Figure,
        chest: [f64; 2],
        shares: &Shares,
    ) -> Result<Self, DraftError> {
        let back = chest[0] - shares.side - shares.back_dart;
        let front = chest[1] - shares.side - shares.front_dart;
        let least = LEAST_QUARTER * (back + front);
        if back.min(front) < least || least <= 0.0 {
            return Err(DraftError::Contradiction {
                what: "waist",
                measurements: vec![
                    ("bust_girth", figure.bust_girth),
                    ("back_width", figure.back_width),
                    ("waist_girth", figure.waist_girth),
                ],
                advice: "A quarter of the waist would come out at next to nothing. Measure the three again; if they are right, draft a block without waist darts",
            });
        }
        Ok(Self::placed(figure, back, front, shares.front_dart))
    }

    fn placed(figure: &Figure, back: f64, front: f64, front_dart: f64) -> Self {
        // The front dart stands under the bust point.
        let under_bust = (figure.bust_point_width - front_dart) / 2.0;
        Self {
            back,
            front,
            // The back dart stands a little inside the middle of its quarter, under the blade.
            back_dart_at: 0.42 * back,
            front_dart_at: Span::from_low(0.2 * front, 0.62 * front).nearest(under_bust),
        }
    }
}
