//! Shoulder slope: for shoulders that slope more or less than the block's.

use super::shoulder_turn::{Turn, turned_together};
use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{girths_stay, upper_stays};
use crate::alterations::chain::way_back::taken_back;
use crate::alterations::cutting::underarm_line::check_lines;
use crate::alterations::cutting::upper_half::UpperHalf;
use crate::alterations::{Alteration, AlterationError, Altered, Promise, solve_sleeves};
use crate::geometry::Span;
use crate::geometry::elementary::sin;
use crate::piece::{EdgeName, Measure, MeasureUnit, Pattern, Piece, shoulder_slope};
use serde::{Deserialize, Serialize};

/// What becomes of the underarm when the shoulder slope changes.
///
/// ```
/// use blockwright::alterations::Underarm;
/// assert_eq!(Underarm::default(), Underarm::Follow);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Underarm {
    /// The whole armscye moves with the shoulder point, so that it and its sleeve stay as they
    /// are; the side seams get shorter or longer.
    #[default]
    Follow,
    /// The underarm stays; the armscye gets shorter or longer, and the sleeve is solved again.
    Keep,
}

/// Slopes the shoulders of back and front more (positive) or less (negative).
///
/// The shoulder is turned about the neck side point, its length kept, with its dart. The
/// armscye slides down or up with the shoulder point (an L-shaped slash from shoulder to side
/// seam, closed or opened), back and front alike, by as much as keeps its length; the widths
/// on the width and underarm lines stay. Neckline and armscye leave the shoulder at their old
/// corners, so that both still run on across the seam; the neckline keeps its length.
///
/// Usual amounts: 2° to 5° (5 to 10 mm at the shoulder point, at most 15 to 20; values from
/// memory).
///
/// ```
/// use blockwright::alterations::{Alteration, ShoulderSlope, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// use blockwright::piece::{Measure, Pattern};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(ShoulderSlope::by(3.0));
/// let done = alter(&pattern, &[step])?;
/// let what = Measure::shoulder_slope("front");
/// let slope = |p: &Pattern| p.measured(&what).unwrap_or(0.0);
/// assert!((slope(&done.pattern) - slope(&pattern) - 3.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # On paper
///
#[doc = include_str!("../demonstrations/shoulder_slope.svg")]
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShoulderSlope {
    /// By how much the shoulder slopes more, in degrees.
    pub degrees: f64,
    /// What becomes of the underarm.
    #[serde(default)]
    pub underarm: Underarm,
}

/// Flattest and steepest shoulder that is drawn, in degrees: level, and beyond any in the 1988
/// U.S. Army survey of women.
const SLOPES: (f64, f64) = (1.0, 45.0);

impl ShoulderSlope {
    /// So many degrees more, the armscye following.
    #[must_use]
    pub fn by(degrees: f64) -> Self {
        Self {
            degrees,
            underarm: Underarm::Follow,
        }
    }

    fn check(&self, piece: &Piece) -> Result<(), AlterationError> {
        let slope = shoulder_slope(piece).unwrap_or(0.0).to_degrees();
        let (low, high) = (SLOPES.0 - slope, SLOPES.1 - slope);
        if (low..=high).contains(&self.degrees) {
            return Ok(());
        }
        Err(AlterationError::TooMuch {
            amount: self.degrees,
            most: Span::from_low(low.min(0.0), high.max(0.0)).nearest(self.degrees),
            unit: "°",
            why: format!(
                "the {} shoulder slopes by {slope:.1}°, and none is drawn flatter than {:.0}° or steeper than {:.0}°",
                piece.name(),
                SLOPES.0,
                SLOPES.1
            ),
        })
    }
}

impl Alteration for ShoulderSlope {
    fn name(&self) -> &'static str {
        "shoulder_slope"
    }

    fn amount(&self) -> Option<f64> {
        Some(self.degrees)
    }

    fn unit(&self) -> MeasureUnit {
        MeasureUnit::Degrees
    }

    fn with_amount(&self, degrees: f64) -> Box<dyn Alteration> {
        Box::new(Self { degrees, ..*self })
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        let mut promises = Vec::new();
        let halves = [UpperHalf::back(before), UpperHalf::front(before)];
        for half in halves.into_iter().flatten() {
            let kept = match self.underarm {
                Underarm::Follow => EdgeName::ARMSCYE,
                Underarm::Keep => EdgeName::SIDE_SEAM,
            };
            let edges = [EdgeName::SHOULDER, EdgeName::NECKLINE, kept];
            promises.extend(upper_stays(half.piece, &edges));
            let slope = Measure::shoulder_slope(half.piece.name());
            promises.push(Promise::changes_by(slope, self.degrees));
        }
        promises.extend(girths_stay(before, &[]));
        promises
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        at_most(
            self.degrees,
            (-45.0, 45.0),
            "°",
            "shoulders do not slope so far",
        )?;
        self.check(UpperHalf::back(pattern)?.piece)?;
        self.check(UpperHalf::front(pattern)?.piece)?;
        let mut altered = self.trunk(pattern)?;
        if self.degrees < 0.0 {
            let more = Self {
                degrees: -self.degrees,
                ..*self
            };
            altered = taken_back(pattern, altered, |p| more.trunk(p));
        }
        check_lines(pattern, &altered, "say underarm: keep")?;
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

impl ShoulderSlope {
    /// Back and front altered.
    fn trunk(&self, pattern: &Pattern) -> Result<Pattern, AlterationError> {
        let (back, front) = (UpperHalf::back(pattern)?, UpperHalf::front(pattern)?);
        let turn = self.degrees.to_radians();
        let drops = match self.underarm {
            Underarm::Follow if turn != 0.0 => drops(&back, &front, turn)?,
            Underarm::Follow | Underarm::Keep => (0.0, 0.0),
        };
        let turned = |half, drop| Turn {
            half,
            turn,
            longer: 0.0,
            drop,
            kept: self.underarm == Underarm::Follow,
        };
        let (behind, before) = (turned(&back, drops.0), turned(&front, drops.1));
        turned_together(pattern, &behind, &before)
    }
}

/// By how much the underarms of back and front drop: as far as a shoulder as long as the garment is
/// wide there drops at its point, so that both armscyes together all but keep their length, and both
/// side seams get shorter by the same.
///
/// The shoulder's own length takes no part: lengthened before or after, it comes to the same.
fn drops(
    back: &UpperHalf<'_>,
    front: &UpperHalf<'_>,
    turn: f64,
) -> Result<(f64, f64), AlterationError> {
    let shorter = 0.5 * (fall(back, turn)? + fall(front, turn)?);
    Ok((
        back.side_blended()?.drop_for(shorter)?,
        front.side_blended()?.drop_for(shorter)?,
    ))
}

/// How far the shoulder line drops over the width point: alike from whatever slope, so that the
/// opposite turn lifts it by as much.
fn fall(half: &UpperHalf<'_>, turn: f64) -> Result<f64, AlterationError> {
    let width = half.armscye_parts()?.1.start();
    Ok(2.0 * sin(0.5 * turn) * (width.x - half.shoulder.start().x).abs())
}
