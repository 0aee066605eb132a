//! Ease: what a garment is larger than the body, place by place.

use super::DraftError;
use super::choices::Block;
use super::error::check_options;

/// How a garment is meant to fit.
///
/// ```
/// use blockwright::draft::{Ease, Fit};
/// assert!(Ease::of(Fit::Close).bust < Ease::of(Fit::Loose).bust);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Fit {
    /// Near the body: the least in which one can breathe and sit.
    Close,
    /// A fitted garment worn over underclothes.
    Regular,
    /// An easy garment.
    Loose,
}

impl Fit {
    /// The name used in job files.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Close => "close",
            Self::Regular => "regular",
            Self::Loose => "loose",
        }
    }
}

impl std::fmt::Display for Fit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// Ease in millimetres, on the whole girth or width.
///
/// Sources, in millimetres. Bust: 38 to 51 the least for wearing (Robinson, costume
/// construction text, ch. 16), 76 to 102 for garments in general (New Mexico State University
/// guide C-228). Waist: 19 to 25 for a dress (Robinson), half the step between sizes, 20
/// (Zakaria and Gupta, *Anthropometry, Apparel Sizing and Design*, p. 228). Hip: 30 on a
/// straight skirt (Aldrich, *Metric Pattern Cutting*, as transcribed), 51 to 70 on any garment
/// (Robinson). Back width: 10 on a close block (Aldrich, as transcribed). Upper arm: 51 at
/// least for comfort (*Threads* 200), 38 to 51 (Santa Rosa Junior College, FASH 60). The rest
/// are values from memory: back width 10 to 25, armscye lowered 10 to 20 below the armpit, wrist
/// 15 to 30 and 20 to 35 for the thumb of a hand that is 35 mm larger round than the wrist
/// (spread 6; computed from the 1988 U.S. Army survey).
///
/// ```
/// use blockwright::draft::{Ease, Fit};
/// let mut ease = Ease::of(Fit::Regular);
/// ease.bust = 80.0;
/// assert_eq!(ease.waist, 25.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ease {
    /// At the bust, measured along the underarm line.
    pub bust: f64,
    /// At the waist.
    pub waist: f64,
    /// At the hip line.
    pub hip: f64,
    /// Across the back.
    pub back_width: f64,
    /// At the upper arm.
    pub upper_arm: f64,
    /// At the wrist of a long sleeve.
    pub wrist: f64,
    /// By how much the armscye lies below the armpit.
    pub armscye_depth: f64,
}

impl Ease {
    /// The least and the greatest ease of bust, waist and hip in mm. Woven cloth does not stretch,
    /// so that nothing is negative; beyond the most a block is the wrong beginning.
    pub const OF_GIRTHS: (f64, f64) = (0.0, 400.0);
    /// The least and the greatest ease of the back width, and of how far the armscye is lowered,
    /// in mm.
    pub const OF_WIDTHS: (f64, f64) = (0.0, 80.0);
    /// The least and the greatest ease of the arm in mm.
    pub const OF_ARMS: (f64, f64) = (0.0, 200.0);

    /// The ease of a fit for a block.
    ///
    /// Bodice, skirt and dress take that of [`of`](Self::of). Tunic and shirt hang from the
    /// shoulders: bust 80 to 140, hip 60 to 120 (values from memory); 38 to 64 at the chest of
    /// a fitted shirt, to 76 of a standard one (Robinson, costume construction text, ch. 16).
    /// Where their waist has no darts, the shape of the side seam decides its ease.
    ///
    /// ```
    /// use blockwright::draft::{Block, Ease, Fit};
    /// assert!(Ease::for_block(Block::Tunic, Fit::Close).bust > Ease::of(Fit::Close).bust);
    /// ```
    #[must_use]
    pub fn for_block(block: Block, fit: Fit) -> Self {
        let places = match (block, fit) {
            (Block::Tunic, Fit::Close) => [80.0, 80.0, 70.0, 16.0, 90.0, 80.0, 26.0],
            (Block::Tunic, Fit::Regular) => [110.0, 110.0, 90.0, 24.0, 100.0, 95.0, 34.0],
            (Block::Tunic, Fit::Loose) => [140.0, 150.0, 120.0, 32.0, 115.0, 110.0, 42.0],
            (Block::Shirt, Fit::Close) => [64.0, 64.0, 60.0, 14.0, 85.0, 70.0, 24.0],
            (Block::Shirt, Fit::Regular) => [90.0, 96.0, 80.0, 20.0, 95.0, 80.0, 30.0],
            (Block::Shirt, Fit::Loose) => [120.0, 130.0, 110.0, 28.0, 110.0, 90.0, 38.0],
            _ => return Self::of(fit),
        };
        Self::of_places(places)
    }

    /// The ease of a fit for bodice, skirt and dress.
    #[must_use]
    pub fn of(fit: Fit) -> Self {
        let places = match fit {
            Fit::Close => [40.0, 20.0, 30.0, 10.0, 40.0, 40.0, 16.0],
            Fit::Regular => [60.0, 25.0, 52.0, 14.0, 52.0, 64.0, 22.0],
            Fit::Loose => [90.0, 40.0, 70.0, 20.0, 64.0, 80.0, 30.0],
        };
        Self::of_places(places)
    }

    /// The ease of every place, in the order of the fields.
    const fn of_places(places: [f64; 7]) -> Self {
        let [
            bust,
            waist,
            hip,
            back_width,
            upper_arm,
            wrist,
            armscye_depth,
        ] = places;
        Self {
            bust,
            waist,
            hip,
            back_width,
            upper_arm,
            wrist,
            armscye_depth,
        }
    }

    /// Refuses ease that is not a number or outside its bounds.
    pub(super) fn check(&self) -> Result<(), DraftError> {
        check_options([
            ("ease.bust", self.bust, Self::OF_GIRTHS),
            ("ease.waist", self.waist, Self::OF_GIRTHS),
            ("ease.hip", self.hip, Self::OF_GIRTHS),
            ("ease.back_width", self.back_width, Self::OF_WIDTHS),
            ("ease.upper_arm", self.upper_arm, Self::OF_ARMS),
            ("ease.wrist", self.wrist, Self::OF_ARMS),
            ("ease.armscye_depth", self.armscye_depth, Self::OF_WIDTHS),
        ])
    }
}
