//! The bust point moved, with its darts.

use super::redrawn_waist::from_fold;
use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::asked_ease::{bust_ease_taken, with_girth_as_drawn};
use crate::alterations::chain::promise::{girths_stay, upper_stays};
use crate::alterations::cutting::notch_clear::with_side_notches_clear;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::darts::dart_follow::{Stops, follow};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, Sketch};
use crate::geometry::Vec2;
use crate::piece::{BUST_POINT, Dart, EdgeName, EdgeRef, Measure, Pattern, Piece};
use serde::{Deserialize, Serialize};

/// Which way the bust point goes.
///
/// ```
/// use blockwright::alterations::BustDirection;
/// let read: Result<BustDirection, _> = blockwright::alterations::serde_json::from_str("\"down\"");
/// assert_eq!(read.ok(), Some(BustDirection::Down));
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BustDirection {
    /// Toward the shoulder.
    Up,
    /// Toward the waist.
    Down,
    /// Toward the centre front.
    In,
    /// Toward the side seam.
    Out,
}

impl BustDirection {
    fn by(self, amount: f64) -> Vec2 {
        match self {
            Self::Up => Vec2::new(0.0, -amount),
            Self::Down => Vec2::new(0.0, amount),
            Self::In => Vec2::new(-amount, 0.0),
            Self::Out => Vec2::new(amount, 0.0),
        }
    }
}

/// Moves the bust point up, down, in or out, with its darts.
///
/// For darts that end above or below the fullest place of the bust, or beside it, while the size of the
/// dart is right. Every dart that is turned about the bust point goes along: its tip as far as the
/// point, its mouth along its edge, so that it aims as it did; a double-pointed waist dart goes
/// across whole, up or down with its upper tip. Intakes stay to a few tenths of a millimetre, the
/// sewn lengths of all edges and every girth exactly. The edges beside the mouths are drawn anew; a
/// skirt's dart that meets a waist dart goes across with it. A dart over the underarm line takes in more or less there: then
/// the ease of the bust girth changes by that, which is reported. The point `bust_point` and the
/// bust line move.
///
/// Usual amounts: 10 to 25 mm up or down, 5 to 15 in or out (values from memory; the bust lies 22
/// to 26 cm below the side of the neck on young women, 27 to 30 on women of middle age, as read in a
/// sewing text).
///
/// ```
/// use blockwright::alterations::{Alteration, BustDirection, BustPoint, alter};
/// use blockwright::draft::{Block, DraftOptions, draft};
/// use blockwright::geometry::Point;
/// use blockwright::measurements::{Body, Measurement};
/// use blockwright::piece::Pattern;
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let pattern = draft(&body, &DraftOptions::of(Block::Dress))?;
/// let step: Box<dyn Alteration> = Box::new(BustPoint { amount: 15.0, direction: BustDirection::Down });
/// let done = alter(&pattern, &[step])?;
/// let point = |p: &Pattern| p.piece("front").and_then(|front| front.bust_point()).map_or(0.0, |at| at.y);
/// assert!((point(&done.pattern) - point(&pattern) - 15.0).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/bust_point.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BustPoint {
    /// How far the bust point goes, in millimetres; the other way with a minus.
    pub amount: f64,
    /// Which way.
    pub direction: BustDirection,
}

/// Most at once, in millimetres: more is another front (value from memory).
const MOST: f64 = 40.0;

/// How closely intakes are kept, in millimetres: the ends of the legs give way for the sewn edge.
const SAME_INTAKE: f64 = 1.0;

/// Waist darts of bodice and skirt that close so near to each other meet, in millimetres.
const MEETS: f64 = 1.0;

/// A dart whose tip or bust point lies nearer below the underarm line than this, in millimetres, may
/// reach it.
const NEAR_UNDERARM: f64 = 1.0;

/// The darts of a front that go along.
fn darts(front: &Piece) -> impl Iterator<Item = &Dart> {
    front.darts().iter().filter(|dart| front.aims_at_bust(dart))
}

/// The pieces that are sewn to a piece's waist.
fn across_waist<'p>(pattern: &'p Pattern, piece: &Piece) -> impl Iterator<Item = &'p Piece> {
    let name = piece.name().to_owned();
    pattern.seams().iter().filter_map(move |seam| {
        let waist = |side: &[EdgeRef]| match side {
            [one] if one.edge == EdgeName::WAIST => Some(one.piece.clone()),
            _ => None,
        };
        let (a, b) = (waist(&seam.a)?, waist(&seam.b)?);
        let other = match (a == name, b == name) {
            (true, false) => b,
            (false, true) => a,
            _ => return None,
        };
        pattern.piece(&other)
    })
}

/// How far from the centre a waist dart closes.
fn from_centre(piece: &Piece, dart: &Dart) -> Option<f64> {
    let waist = &EdgeName::WAIST;
    let mouths = piece.mouths(waist);
    let (_, opens, _) = mouths.iter().find(|(other, ..)| other.name == dart.name)?;
    let sewn = piece.sewn_position(waist, *opens);
    Some(if from_fold(piece) {
        sewn
    } else {
        piece.seam_length(waist)? - sewn
    })
}

/// Whether a dart comes from above, over the underarm line: its width there changes with its length.
fn from_above(dart: &Dart) -> bool {
    let above = [
        EdgeName::SHOULDER,
        EdgeName::NECKLINE,
        EdgeName::ARMSCYE,
        EdgeName::CENTRE_FRONT,
    ];
    dart.edge.as_ref().is_some_and(|edge| above.contains(edge))
}

impl Alteration for BustPoint {
    fn name(&self) -> &'static str {
        "bust_point"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.amount)
    }

    fn with_amount(&self, amount: f64) -> Box<dyn Alteration> {
        Box::new(Self { amount, ..*self })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let Ok(front) = UpperHalf::front(before) else {
            return Vec::new();
        };
        let piece = front.piece;
        let edges = [
            EdgeName::CENTRE_FRONT,
            EdgeName::NECKLINE,
            EdgeName::SHOULDER,
            EdgeName::ARMSCYE,
            EdgeName::SIDE_SEAM,
        ];
        let mut promises: Vec<Promise> = upper_stays(piece, &edges).collect();
        let intake = |dart: &Dart| Measure::dart_intake(piece.name(), &dart.name);
        let intakes = piece.darts().iter().map(|d| Promise::exactly(intake(d)));
        promises.extend(intakes.map(|promise| promise.within(SAME_INTAKE)));
        let but: &[&str] = if self.crosses_underarm(piece) {
            &["bust"]
        } else {
            &[]
        };
        promises.extend(girths_stay(before, but));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.amount,
            (-MOST, MOST),
            "mm",
            "a bust that far off wants another front: measure neck_to_bust_point and bust_point_width, and draft anew",
        )?;
        let front = UpperHalf::front(pattern)?.piece;
        let Some(bust) = front.bust_point() else {
            return Err(AlterationError::Missing {
                what: "a bust point on the front".to_owned(),
                advice: "the bust point is moved on a front from shoulder to waist or hem, before it is divided in panels",
            });
        };
        if self.amount == 0.0 {
            return Ok(pattern.clone().into());
        }
        let by = self.direction.by(self.amount);
        let names: Vec<String> = darts(front).map(|dart| dart.name.clone()).collect();
        let crosses = self.crosses_underarm(front);
        let mut moved = front.clone();
        for name in &names {
            if let Some(dart) = moved.dart(name) {
                moved = follow(&moved, dart, by).map_err(|stops| self.refused(name, stops))?;
            }
        }
        let mut sketch = Sketch::of(&moved);
        for point in sketch
            .points_mut()
            .iter_mut()
            .filter(|p| p.name == BUST_POINT)
        {
            point.at = bust + by;
        }
        let altered = replaced(pattern, sketch.finish()?)?;
        let altered = self.partners(pattern, altered, (front, by))?;
        let altered = with_side_notches_clear(pattern, altered)?;
        if !crosses {
            return Ok(altered.into());
        }
        let altered = with_girth_as_drawn(altered, "bust")?;
        Ok(Altered {
            warnings: bust_ease_taken(pattern, &altered),
            pattern: altered,
        })
    }
}

impl BustPoint {
    /// The pattern with the darts across a waist seam that meet those of the front gone along.
    fn partners(
        &self,
        before: &Pattern,
        altered: Pattern,
        (front, by): (&Piece, Vec2),
    ) -> Result<Pattern, AlterationError> {
        let mut altered = altered;
        let across = Vec2::new(by.x, 0.0);
        if across == Vec2::ZERO {
            return Ok(altered);
        }
        for partner in across_waist(before, front) {
            let mut piece = partner.clone();
            for dart in darts(front).filter(|dart| dart.edge == Some(EdgeName::WAIST)) {
                let at = from_centre(front, dart);
                let meets = |other: &&Dart| {
                    let there = from_centre(partner, other);
                    matches!((at, there), (Some(a), Some(b)) if (a - b).abs() <= MEETS)
                };
                if let Some(other) = partner.darts().iter().find(meets) {
                    let moved = follow(&piece, other, across);
                    piece = moved.map_err(|stops| self.refused(&other.name, stops))?;
                }
            }
            altered = replaced(&altered, piece)?;
        }
        Ok(altered)
    }

    /// Whether a dart lies over the underarm line, before or after: what it takes in there changes.
    fn crosses_underarm(&self, front: &Piece) -> bool {
        let underarm = front.line("underarm").map(|line| line.curve.end().y);
        let up = self.direction.by(self.amount).y.min(0.0);
        darts(front).any(|dart| {
            let top = front.fullness(dart).y.min(dart.apex().y);
            let over = |level: f64| top + up < level + NEAR_UNDERARM;
            from_above(dart) || underarm.is_some_and(over)
        })
    }

    fn too_much(&self, share: f64, why: String) -> AlterationError {
        AlterationError::TooMuch {
            amount: self.amount,
            most: share * self.amount,
            unit: "mm",
            why,
        }
    }

    fn refused(&self, dart: &str, stops: Stops) -> AlterationError {
        match stops {
            Stops::Share(share, why) => self.too_much(share, format!("the {dart} dart: {why}")),
            Stops::Other(error) => error,
        }
    }
}
