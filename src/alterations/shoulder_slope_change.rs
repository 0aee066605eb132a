//! Shoulder slope: for shoulders that slope more or less than the block's.

use super::amounts::at_most;
use super::promise::{edges_stay, edges_stay_if_there, girths_stay};
use super::shared_lean::trued_across_shoulder;
use super::sleeve::replaced;
use super::solve_sleeves;
use super::upper_half::{BlendedSide, UpperHalf};
use super::{Alteration, AlterationError, Altered, Promise, Sketch};
use crate::geometry::elementary::sin;
use crate::geometry::{Span, Vec2, root, tolerance};
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
            promises.extend(edges_stay(half.piece, &edges));
            let lower = [EdgeName::WAIST, EdgeName::HEM];
            promises.extend(edges_stay_if_there(half.piece, &lower));
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
        let (back, front) = (UpperHalf::back(pattern)?, UpperHalf::front(pattern)?);
        self.check(back.piece)?;
        self.check(front.piece)?;
        let turn = self.degrees.to_radians();
        let drops = match self.underarm {
            Underarm::Follow if turn != 0.0 => drops(&back, &front, turn)?,
            Underarm::Follow | Underarm::Keep => (0.0, 0.0),
        };
        let mut altered = pattern.clone();
        let lean = front.neck_lean(turn);
        for (half, drop, neck_turn) in [
            (&back, drops.0, turn + lean),
            (&front, drops.1, turn - lean),
        ] {
            let mut sketch = Sketch::of(half.piece);
            let shoulder = half.shoulder_turned(turn, 0.0)?;
            half.put_shoulder(&mut sketch, &shoulder, neck_turn)?;
            let down = Vec2::new(0.0, drop);
            let (tip, shifts) = (shoulder.edge.end(), (down, down));
            let (armscye, width_point) = match self.underarm {
                // Together they have their length: what one has over the other lacks.
                Underarm::Follow => half.armscye_kept(tip, turn, shifts)?,
                Underarm::Keep => half.armscye_from(tip, turn, shifts)?,
            };
            half.put_armscye(&mut sketch, armscye, width_point)?;
            if self.underarm == Underarm::Follow {
                half.put_underarm(&mut sketch, down)?;
            }
            altered = replaced(&altered, sketch.finish()?)?;
        }
        altered = trued_across_shoulder(altered)?;
        check_lines(pattern, &altered, "say underarm: keep")?;
        Ok(solve_sleeves(pattern, altered)?.into())
    }
}

/// Refuses an underarm that takes the underarm line down over a dart, where it would no longer
/// have its width.
pub(super) fn check_lines(
    before: &Pattern,
    after: &Pattern,
    or_else: &str,
) -> Result<(), AlterationError> {
    for girth in before.girths() {
        let (old, new) = (before.finished(girth), after.finished(girth));
        if (new - old).abs() > tolerance::SEAM_DRAFTED {
            return Err(AlterationError::First {
                why: format!(
                    "the line on which the {} girth is measured would come down over the tip of a dart, and the girth change from {old:.1} to {new:.1} mm",
                    girth.name
                ),
                advice: if girth.name == "bust" {
                    format!("shorten that dart first, or {or_else}")
                } else {
                    "shorten or move that dart first".to_owned()
                },
            });
        }
    }
    Ok(())
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
        drop_for(&back.side_blended()?, shorter)?,
        drop_for(&front.side_blended()?, shorter)?,
    ))
}

/// How far the shoulder line drops over the width point: alike from whatever slope, so that the
/// opposite turn lifts it by as much.
fn fall(half: &UpperHalf<'_>, turn: f64) -> Result<f64, AlterationError> {
    let width = half.armscye_parts()?.1.start();
    Ok(2.0 * sin(0.5 * turn) * (width.x - half.shoulder.start().x).abs())
}

/// How far an underarm drops plumb when its side seam gets shorter.
pub(super) fn drop_for(side: &BlendedSide, shorter: f64) -> Result<f64, AlterationError> {
    let at = |drop: f64| side.length_from(Vec2::new(0.0, drop));
    let wanted = at(0.0)? - shorter;
    let far = 1.0 + 0.6 * shorter.abs();
    Ok(root(
        "drop of an underarm",
        shorter - far,
        shorter + far,
        |drop| at(drop).map_or(f64::NAN, |length| length - wanted),
    )?)
}
