//! The side seam swung forward or back over the hips.

use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{all_but_side_and_hem_stay, girths_stay};
use crate::alterations::cutting::quarter::{Half, centre, hem, over_hips};
use crate::alterations::cutting::side_moves::{SideMove, out_at_hip, with_sides_moved};
use crate::alterations::{Alteration, AlterationError, Altered, Promise};
use crate::piece::{Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Swings the side seams forward (or back) over the hips.
///
/// For a side seam that does not hang plumb below the waist although the hips have width enough:
/// where it runs back towards the hem, the back has too little of the width and the front too
/// much. The back is let out by the amount at each side edge and the front taken in by as much,
/// nothing at the waist, all of it at the hip line, parallel from there to the hem. No girth
/// changes.
///
/// ```
/// use blockwright::alterations::{Alteration, SideSeam, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{EdgeName, Measure};
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(SideSeam { amount: 6.0 });
/// let done = alter(&pattern, &[step])?.pattern;
/// let wider = |measure: &Measure| Some(done.measured(measure)? - pattern.measured(measure)?);
/// assert!(wider(&Measure::girth("hip")).is_some_and(|by| by.abs() < 1e-6));
/// let hem = Measure::edge_length("back", EdgeName::HEM);
/// assert!(wider(&hem).is_some_and(|by| (by - 6.0).abs() < 0.1));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/side_seam.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SideSeam {
    /// How far each side seam moves at the hip, in millimetres: usually 4 to 12, forward; back
    /// with a minus (values from memory).
    pub amount: f64,
}

/// Most that one side edge is moved at the hip, in millimetres, as for [`HipGirth`]
/// (value from memory, medium confidence: up to 10 to 12 before the panel is slashed instead).
///
/// [`HipGirth`]: crate::alterations::HipGirth
const MOST: f64 = 12.0;

/// How far a hem may miss the amount, in millimetres: its end at the side drops or rises by the
/// little that keeps both seams of one length.
const HEM_WITHIN: f64 = 0.1;

/// What it needs of a piece.
const ADVICE: &str = "the side seam is swung on a piece with a side seam, a waist and a hip line";

impl Alteration for SideSeam {
    fn name(&self) -> &'static str {
        "side_seam"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises: Vec<Promise> = girths_stay(before, &[]).collect();
        for piece in over_hips(before) {
            promises.extend(all_but_side_and_hem_stay(piece));
            if let Some(hem) = hem(piece) {
                let hem = Measure::edge_length(piece.name(), hem.clone());
                let change = self.out(piece);
                promises.push(Promise::changes_by(hem, change).within(HEM_WITHIN));
            }
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            number(self.amount)?,
            (-MOST, MOST),
            "mm",
            "each side edge moves by no more than 12 mm at once",
        )?;
        let halves = |half| move |piece: &&Piece| centre(piece).is_some_and(|(of, _)| of == half);
        let has = |half| over_hips(pattern).any(|piece| halves(half)(&piece));
        if !(has(Half::Back) && has(Half::Front)) {
            return Err(AlterationError::Missing {
                what: "a hip line on back and front".to_owned(),
                advice: "the side seam is swung on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            });
        }
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let moves: Vec<SideMove<'_>> = over_hips(pattern)
            .map(|piece| Ok((piece, out_at_hip(piece, self.out(piece), ADVICE)?)))
            .collect::<Result<_, AlterationError>>()?;
        Ok(with_sides_moved(pattern, moves)?.into())
    }
}

impl SideSeam {
    /// By how much the side edge of a piece goes out.
    fn out(&self, piece: &Piece) -> f64 {
        match centre(piece) {
            Some((Half::Front, _)) => -self.amount,
            _ => self.amount,
        }
    }
}
