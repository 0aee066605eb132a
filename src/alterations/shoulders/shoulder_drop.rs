//! Shoulder slope asked for by how far the shoulder point is to drop.

use crate::alterations::{Alteration, AlterationError, Altered, Promise, ShoulderSlope, Underarm};
use crate::geometry::elementary;
use crate::piece::{EdgeName, MeasureUnit, Pattern, shoulder_slope};
use serde::{Deserialize, Serialize};

/// Slopes the shoulders more or less, by how far their points drop: as a fold is pinned at the
/// shoulder point of a toile.
///
/// How many degrees that is depends on how long the shoulder is; the account says them.
///
/// ```
/// use blockwright::alterations::{Alteration, ShoulderDrop, Underarm, alter};
/// use blockwright::draft::{Block, DraftOptions, Figure, draft_figure};
/// let pattern = draft_figure(&Figure::cylinder(900.0), &DraftOptions::of(Block::Tunic))?;
/// let step: Box<dyn Alteration> = Box::new(ShoulderDrop { drop: 8.0, underarm: Underarm::Follow });
/// let done = alter(&pattern, &[step])?;
/// let tip = |p: &blockwright::piece::Pattern| {
///     let front = p.piece("front").and_then(|f| f.outline().edge(&blockwright::piece::EdgeName::SHOULDER));
///     front.map_or(0.0, |edge| edge.curve().end().y)
/// };
/// assert!((tip(&done.pattern) - tip(&pattern) - 8.0).abs() < 1e-6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShoulderDrop {
    /// By how far the front shoulder point drops, in millimetres; it comes up with a minus.
    pub drop: f64,
    /// What becomes of the underarm.
    #[serde(default)]
    pub underarm: Underarm,
}

impl ShoulderDrop {
    fn slope_on(&self, pattern: &Pattern) -> Result<ShoulderSlope, AlterationError> {
        let fold = EdgeName::CENTRE_FRONT;
        let front = pattern.pieces().iter().find_map(|piece| {
            piece.outline().edge(&fold)?;
            let edge = piece.outline().edge(&EdgeName::SHOULDER)?.curve();
            Some((edge.start().distance(edge.end()), shoulder_slope(piece)?))
        });
        let (length, slope) = front.ok_or_else(|| AlterationError::Missing {
            what: "a shoulder on the front".to_owned(),
            advice: "a skirt has none; leave the step out",
        })?;
        let sine = elementary::sin(slope) + self.drop / length;
        if !(-0.9..=0.9).contains(&sine) {
            return Err(AlterationError::Setting(format!(
                "a shoulder of {length:.0} mm cannot drop by {:.0} mm",
                self.drop
            )));
        }
        Ok(ShoulderSlope {
            degrees: (elementary::asin(sine) - slope).to_degrees(),
            underarm: self.underarm,
        })
    }
}

impl Alteration for ShoulderDrop {
    fn name(&self) -> &'static str {
        "shoulder_slope"
    }

    /// None: it is known once there is a pattern.
    fn amount(&self) -> Option<f64> {
        None
    }

    fn unit(&self) -> MeasureUnit {
        MeasureUnit::Degrees
    }

    fn with_amount(&self, degrees: f64) -> Box<dyn Alteration> {
        Box::new(ShoulderSlope {
            degrees,
            underarm: self.underarm,
        })
    }

    fn settled(&self, pattern: &Pattern) -> Result<Option<Box<dyn Alteration>>, AlterationError> {
        Ok(Some(Box::new(self.slope_on(pattern)?)))
    }

    fn promises(&self, before: &Pattern) -> Vec<Promise> {
        self.slope_on(before)
            .map_or_else(|_| Vec::new(), |slope| slope.promises(before))
    }

    fn alter(&self, pattern: &Pattern) -> Result<Altered, AlterationError> {
        self.slope_on(pattern)?.alter(pattern)
    }
}
