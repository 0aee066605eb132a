//! The side seam of a trunk piece redrawn from a moved underarm.

use super::side_moves::drop_to;
use super::true_up::carried;
use super::upper_half::{UpperHalf, put_level};
use crate::alterations::widths::redrawn_waist::{WaistMoves, redraw_waist};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Rigid, Vec2, tolerance, without_slivers};
use crate::piece::{Apexes, EdgeName, Pattern};

/// How far above the first dart of the side seam its blend ends, in millimetres: the seam beside
/// it stays as it is.
const CLEAR: f64 = 4.0;

/// Waist darts are drafted to end so little below the underarm line, in millimetres, that they
/// belong to it (up to 20 mm below; value from memory).
const TIP_BELOW: f64 = 20.0;

/// A notch is not left nearer to the underarm than this, in millimetres, if it was not before.
const HIGHEST_NOTCH: f64 = 12.0;

impl UpperHalf<'_> {
    /// Draws the side seam from an underarm moved by `by`, blended into the old seam above its first
    /// dart. Notches stay where they are from the waist, but below the underarm.
    pub fn put_underarm(&self, sketch: &mut Sketch, by: Vec2) -> Result<(), AlterationError> {
        let side = self.side_blended()?.from(by)?;
        let (underarm, longer) = (side.start(), side.length() - self.side.length());
        sketch.replace(&EdgeName::SIDE_SEAM, side)?;
        for notch in &mut sketch.parts_mut().notches {
            if notch.edge == EdgeName::SIDE_SEAM {
                let least = notch.at.min(HIGHEST_NOTCH);
                notch.at = (notch.at + longer).max(least);
            }
        }
        put_level(sketch, "underarm", underarm)?;
        self.lower_tips(sketch, underarm.y)
    }

    /// Waist darts that end just below the underarm line go with it: on it they would take the
    /// finished girth in.
    fn lower_tips(&self, sketch: &mut Sketch, underarm: f64) -> Result<(), AlterationError> {
        let drop = underarm - self.armscye.end().y;
        if drop.abs() <= tolerance::POINT {
            return Ok(());
        }
        let tips = self.piece.darts().iter().filter(|dart| {
            let below = dart.apex().y - self.armscye.end().y;
            dart.edge
                .as_ref()
                .is_none_or(|edge| *edge == EdgeName::WAIST)
                && (-tolerance::SEAM_DRAFTED..TIP_BELOW.max(drop)).contains(&below)
        });
        for dart in tips {
            let middle = dart.legs[0].midpoint(dart.legs[1]);
            let axis = (middle - dart.apex()) / (middle.y - dart.apex().y);
            if dart.edge.is_none() {
                if let (Apexes::Two(upper, lower), Some(slot)) =
                    (dart.apexes, sketch.dart_mut(&dart.name))
                {
                    slot.apexes = Apexes::Two(upper + axis * drop, lower);
                }
                continue;
            }
            let moves = WaistMoves {
                centre: Vec2::ZERO,
                side: Vec2::ZERO,
                longer: 0.0,
                apex: &|_| drop,
            };
            redraw_waist(sketch, self.piece, &moves)?;
        }
        Ok(())
    }

    /// The side seam, parted where a moved underarm is blended in.
    pub fn side_blended(&self) -> Result<BlendedSide, AlterationError> {
        let (above, below) = self.side.split_at(self.blend_length()?)?;
        let above = without_slivers(&above, &[])?;
        Ok(BlendedSide { above, below })
    }

    /// Over how much of the side seam a moved underarm is blended in: down to its first dart, or
    /// to the waist.
    fn blend_length(&self) -> Result<f64, AlterationError> {
        let length = self.side.length();
        let waist = self.piece.line("waist").map(|line| line.curve.end());
        let waist = waist.map(|end| self.side.nearest(end).1);
        let waist = waist.filter(|at| *at > 3.0 * CLEAR).unwrap_or(length);
        let mouths = self.piece.mouths(&EdgeName::SIDE_SEAM);
        let dart = mouths.iter().map(|(_, from, _)| *from - CLEAR);
        let free = dart.fold(waist.min(length - CLEAR), f64::min);
        if free > 2.0 * CLEAR {
            return Ok(free);
        }
        Err(AlterationError::First {
            why: format!(
                "the side seam of the {} has a dart {:.1} mm below the underarm, which leaves no room to blend it",
                self.piece.name(),
                free + CLEAR
            ),
            advice: "move that dart lower on the side seam, or to another edge, first".to_owned(),
        })
    }
}

/// A side seam in two parts: what goes with the underarm, and what stays.
pub(in crate::alterations) struct BlendedSide {
    above: Curve,
    below: Curve,
}

impl BlendedSide {
    /// The side seam from an underarm moved by `by`.
    pub fn from(&self, by: Vec2) -> Result<Curve, GeometryError> {
        self.carried(by)?.then(&self.below)
    }

    /// How far its underarm drops plumb when it gets shorter by so much.
    pub fn drop_for(&self, shorter: f64) -> Result<f64, AlterationError> {
        let length = |drop: f64| self.length_from(Vec2::new(0.0, drop));
        let far = 1.0 + 0.6 * shorter.abs();
        drop_to(-shorter, (shorter - far, shorter + far), length).map_err(|source| {
            AlterationError::Construction {
                step: "drop of an underarm",
                source,
            }
        })
    }

    fn length_from(&self, by: Vec2) -> Result<f64, GeometryError> {
        Ok(self.carried(by)?.length() + self.below.length())
    }

    fn carried(&self, by: Vec2) -> Result<Curve, GeometryError> {
        carried(&self.above, &Rigid::shift(by))
    }
}

/// Refuses an underarm that takes the underarm line down over a dart, where it would no longer
/// have its width.
pub(in crate::alterations) fn check_lines(
    before: &Pattern,
    after: &Pattern,
    or_else: &str,
) -> Result<(), AlterationError> {
    for girth in before.girths() {
        let (old, new) = (before.finished(girth), after.finished(girth));
        if (new - old).abs() > tolerance::SEAM_DRAFTED {
            return Err(AlterationError::First {
                why: format!(
                    "the line on which the {} girth is measured would cross the tip of a dart, which would change that girth",
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
