//! A slash from the centre to a hinge at the side seam, opened at the centre.

use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::chain::promise::{edges_stay, edges_stay_if_there, girths_stay};
use crate::alterations::cutting::quarter::{Half, centre, hem, quarters, upper};
use crate::alterations::cutting::stations::{Station, move_edge};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::widths::redrawn_waist::{WaistMoves, redraw_waist};
use crate::alterations::widths::undarted_waist::move_undarted_waist;
use crate::alterations::{AlterationError, Altered, Promise, Sketch};
use crate::geometry::{Curve, Vec2};
use crate::piece::{EdgeName, Measure, Pattern, Piece};

/// Least distance of the grain line's ends from waist and hem, in millimetres.
const GRAIN_INSIDE: f64 = 18.0;

/// Length given or taken at the centre of one half of the garment: the seat behind, the abdomen
/// in front.
#[derive(Debug, Clone, Copy)]
pub(in crate::alterations) struct CentreLength {
    /// The half whose centre is opened; the other is not touched.
    pub half: Half,
    /// By how much, in millimetres.
    pub amount: f64,
    /// Least and most at once, in millimetres.
    pub range: (f64, f64),
    /// What the pattern has not when it has no such half, and what to do about it.
    pub missing: (&'static str, &'static str),
}

impl CentreLength {
    /// The pieces of that half that reach over the hips, each with the name of its centre edge.
    pub fn pieces<'p>(&self, pattern: &'p Pattern) -> impl Iterator<Item = (&'p Piece, EdgeName)> {
        let wanted = self.half;
        quarters(pattern).filter_map(move |piece| {
            let (half, edge) = centre(piece)?;
            let over_hips = piece.line("hip").is_some() && hem(piece).is_some();
            (half == wanted && over_hips).then_some((piece, edge))
        })
    }

    /// Kept are every girth and the edges of the half but its centre and hem; the centre changes
    /// by the amount.
    pub fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises: Vec<Promise> = girths_stay(before, &[]).collect();
        for (piece, centre) in self.pieces(before) {
            promises.extend(edges_stay(piece, &[EdgeName::SIDE_SEAM]));
            // A skirt has no neck, a dress no waist seam.
            let edges = [
                EdgeName::WAIST,
                EdgeName::NECKLINE,
                EdgeName::SHOULDER,
                EdgeName::ARMSCYE,
            ];
            promises.extend(edges_stay_if_there(piece, &edges));
            let centre = Measure::edge_length(piece.name(), centre);
            promises.push(Promise::changes_by(centre, self.amount));
        }
        promises
    }

    /// The amount, if it is one that such a half bears.
    pub fn checked(&self, pattern: &Pattern) -> Result<f64, AlterationError> {
        let amount = number(self.amount)?;
        at_most(amount, self.range, "mm", "more than that is another block")?;
        if self.pieces(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: self.missing.0.to_owned(),
                advice: self.missing.1,
            });
        }
        Ok(amount)
    }

    /// Opens the centre of every piece of the half.
    pub fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let amount = self.checked(pattern)?;
        let mut altered = pattern.clone();
        if amount != 0.0 {
            for (piece, _) in self.pieces(pattern) {
                altered = replaced(&altered, open_centre(piece, amount)?)?;
            }
        }
        Ok(altered.into())
    }
}

/// Opens a piece (or closes it) at its centre along a slash to a hinge at the side seam, and
/// trues it.
///
/// The turned panel leans away from the fold by as much as it leans over the side seam. The fold
/// is drawn straight again, which gives that width, and the side seam is drawn back to where it
/// was, which takes it: what remains is the centre's gain. On a skirt the upper panel turns: the
/// waist rises at the centre, to nothing at the side seam, its darts' apexes with it, and the
/// darts take in what keeps its length; without darts its side end gives way by that little. In one piece from neck to hem the lower panel
/// turns: the hem drops at the centre.
fn open_centre(piece: &Piece, amount: f64) -> Result<Piece, AlterationError> {
    let Some((_, fold_name)) = centre(piece) else {
        return Err(AlterationError::Missing {
            what: format!("a centre edge on the {}", piece.name()),
            advice: "seat and abdomen are altered on pieces with a centre",
        });
    };
    let mut sketch = Sketch::of(piece);
    let fold = sketch.curve(&fold_name)?.clone();
    // Walked up from the hem, as every block with a hem is.
    let (low, high) = (fold.start(), fold.end());
    if upper(piece) {
        let down = Vec2::new(0.0, amount);
        let edge = hem(piece).ok_or_else(|| AlterationError::Missing {
            what: format!("a hem on the {}", piece.name()),
            advice: "seat and abdomen are altered on a skirt, or on a block in one piece to the hem",
        })?;
        let length = sketch.curve(edge)?.length();
        let stations = [Station::new(0.0, Vec2::ZERO), Station::new(length, down)];
        move_edge(&mut sketch, piece, edge, &stations)?;
        sketch.replace(&fold_name, Curve::line(low + down, high)?)?;
        let grain = &mut sketch.parts_mut().grain;
        grain[0].y = grain[0].y.min(low.y + amount - GRAIN_INSIDE);
    } else {
        let up = Vec2::new(0.0, -amount);
        let moves = WaistMoves {
            centre: up,
            side: Vec2::ZERO,
            longer: 0.0,
            apex: &|along| -amount * (1.0 - along),
        };
        if piece.mouths(&EdgeName::WAIST).is_empty() {
            move_undarted_waist(&mut sketch, piece, up)?;
        } else {
            redraw_waist(&mut sketch, piece, &moves)?;
        }
        sketch.replace(&fold_name, Curve::line(low, high + up)?)?;
        let grain = &mut sketch.parts_mut().grain;
        grain[1].y = grain[1].y.max(high.y - amount + GRAIN_INSIDE);
    }
    sketch.finish()
}
