//! Seat: prominent or flat.

use crate::alterations::chain::amounts::{at_most, number};
use crate::alterations::cutting::quarter::{Half, line_on_side, waist_on_side};
use crate::alterations::cutting::side_moves::follow_side;
use crate::alterations::cutting::stations::{Station, move_edge, moved_at};
use crate::alterations::lengths::centre_opening::CentreLength;
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch, with_girth_ease};
use crate::geometry::{Vec2, root};
use crate::piece::{EdgeName, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Gives length over a prominent seat (or takes it over a flat one).
///
/// For a skirt whose back rises and pokes out at the hem, or folds below the waist: a slash across
/// the hip line from the centre back to a hinge at the side seam is opened at the centre.
/// The fold is straight again, the side seam where it was and the waist as long as before; the
/// other half is not touched. On a skirt the waist rises at the back centre; in one piece from neck
/// to hem, where nothing can rise, the hem drops there.
///
/// A large seat wants width besides, on the back alone: `width` is added at the back's side edges,
/// half on each, nothing at the waist, all of it at the hip line, parallel from there to the hem. The
/// back's side seam stays as long as the front's, the hip's ease changes by the width.
///
/// ```
/// use blockwright::alterations::{Alteration, Seat, alter};
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::piece::{EdgeName, Measure, Pattern};
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let pattern = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(Seat::by(12.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::edge_length("back", EdgeName::CENTRE_BACK);
/// let centre = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((centre(&done.pattern) - centre(&pattern) - 12.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/seat.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seat {
    /// By how much the centre back gets longer, in millimetres: usually 10 to 25 (flat: 6 to 15 less); shorter
    /// with a minus.
    pub amount: f64,
    /// By how much the whole back gets wider at the hip, in millimetres: usually 8 to 24 for a large
    /// seat; narrower with a minus.
    #[serde(default)]
    pub width: f64,
}

/// Least and most at once, in millimetres (the usual amounts are values from memory, medium
/// confidence).
const LEAST: f64 = -20.0;
const MOST: f64 = 30.0;

/// Most that a side edge of the back is moved at the hip, in millimetres (value from memory, medium
/// confidence: up to 10 to 12 before the panel is slashed instead).
const MOST_AN_EDGE: f64 = 12.0;

const HIP: &str = "hip";

impl Seat {
    /// Length alone.
    #[must_use]
    pub fn by(amount: f64) -> Self {
        Self { amount, width: 0.0 }
    }

    fn centre(self) -> CentreLength {
        CentreLength {
            half: Half::Back,
            amount: self.amount,
            range: (LEAST, MOST),
            missing: (
                "a back that reaches to the hip line",
                "the seat is altered on a skirt, or on a dress, tunic or shirt that reaches below the hip",
            ),
        }
    }
}

impl Alteration for Seat {
    fn name(&self) -> &'static str {
        "seat"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = self.centre().promises(before);
        let hip = Measure::girth(HIP);
        for promise in promises.iter_mut().filter(|p| p.measure == hip) {
            promise.change = self.width;
        }
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        let width = number(self.width)?;
        let most = 2.0 * MOST_AN_EDGE;
        at_most(
            width,
            (-most, most),
            "mm",
            "each side edge of the back moves by half of the width, and by no more than 12 mm at once",
        )?;
        let longer = self.centre().alter(pattern)?;
        if width == 0.0 {
            return Ok(longer);
        }
        let mut altered = longer.pattern.clone();
        for (piece, _) in self.centre().pieces(&longer.pattern) {
            altered = replaced(&altered, wider(piece, 0.5 * width)?)?;
        }
        Ok(Altered {
            pattern: with_girth_ease(&altered, HIP, width)?,
            ..longer
        })
    }
}

/// A back whose side seam is moved out at the hip, at its length: what the way out would add to it
/// is taken at the hem.
fn wider(piece: &Piece, by: f64) -> Result<Piece, AlterationError> {
    let missing = |what: &str| AlterationError::Missing {
        what: format!("{what} on the {}", piece.name()),
        advice: "the back is widened on a piece with a side seam, a waist and a hip line",
    };
    let waist = waist_on_side(piece).ok_or_else(|| missing("a waist at the side seam"))?;
    let hip = hip_on_side(piece).ok_or_else(|| missing("a hip line"))?;
    let mut sketch = Sketch::of(piece);
    let side = sketch.curve(&EdgeName::SIDE_SEAM)?.clone();
    let stations = |drop: f64| {
        let out = Vec2::new(by, drop);
        [Station::new(waist, Vec2::ZERO), Station::new(hip, out)]
    };
    let reach = by.abs() + 1.0;
    let drop = root(
        "level of the hip at the side of the back",
        -reach,
        reach,
        |drop| {
            let moved = moved_at(&side, &stations(drop));
            moved.map_or(f64::NAN, |seam| seam.length() - side.length())
        },
    )
    .map_err(|source| AlterationError::Construction {
        step: "side seam of the back, at its length",
        source,
    })?;
    move_edge(&mut sketch, piece, &EdgeName::SIDE_SEAM, &stations(drop))?;
    follow_side(&mut sketch, piece, &stations(drop))?;
    sketch.finish()
}

/// Where along the side seam the hip is: at its notch, which is a hair off the level of its line once
/// the seam was moved; else where its line ends.
fn hip_on_side(piece: &Piece) -> Option<f64> {
    let notches = piece.notches().iter();
    let mut on_side = notches.filter(|n| n.edge == EdgeName::SIDE_SEAM && n.name == HIP);
    let notch = on_side.next().map(|n| n.at);
    notch.or_else(|| line_on_side(piece, HIP))
}
