//! How far a shoulder swings when the centre back drops.

use crate::alterations::AlterationError;
use crate::alterations::lengths::distortion::distortion;
use crate::alterations::lengths::hinge::Hinge;
use crate::alterations::lengths::stretch::{Distortion, Swing};
use crate::geometry::Span;
use crate::geometry::elementary::{asin, cos, sin};
use crate::piece::{Piece, Warning};

/// Shoulders flatter than this after the alteration are warned of, in degrees.
const FLAT_SHOULDER: f64 = 8.0;

/// A shoulder line of fixed length whose neck side point drops by the amount, and its shoulder
/// point by a share k of it: sin s' = sin s - (1 - k) a / L, and the fold gains
/// e = L (cos s' - cos s).
#[derive(Debug, Clone, Copy)]
pub(in crate::alterations) struct ShoulderSwing {
    /// By how much the centre back drops, a.
    pub amount: f64,
    /// How the shoulder takes part.
    pub hinge: Hinge,
    /// Slope before, in radians, s.
    pub old: f64,
    /// Distance from the neck side point to the shoulder point, darts open, L.
    pub reach: f64,
}

impl ShoulderSwing {
    /// The slope after, in radians, and the length that the armscye then has at the least
    /// distortion over its length before; `waist` is the level of the waist on the piece.
    pub fn slope(
        &self,
        piece: &Piece,
        waist: f64,
        warnings: &mut Vec<Warning>,
    ) -> Result<(f64, Option<f64>), AlterationError> {
        let (sine, armscye) = match self.hinge.drop_share() {
            Some(share) => {
                let fall = (1.0 - share) * self.amount / self.reach;
                (sin(self.old) - fall, None)
            }
            None => {
                let found = self.eased(piece, waist, warnings)?;
                (sin(found.slope), Some(found.armscye))
            }
        };
        if (0.0..=0.9).contains(&sine) {
            return Ok((asin(sine), armscye));
        }
        // Of the least distortion the share is known once it is solved: the rest goes along.
        let flattened = self.hinge.drop_share().map_or_else(
            || self.reach * (sin(self.old) - sine) / self.amount,
            |share| 1.0 - share,
        );
        let why = match (sine < 0.0, self.hinge) {
            (true, Hinge::Plain) => {
                "the shoulder would fall below level; hinge: shared flattens it half as much"
            }
            (true, _) => "the shoulder would fall below level",
            (false, _) => "the shoulder would get steeper than any shoulder is",
        };
        let bound = if sine < 0.0 { 0.0 } else { 0.9 };
        let most = self.reach * (sin(self.old) - bound) / flattened;
        Err(AlterationError::TooMuch {
            amount: self.amount,
            most: if most.is_finite() { most } else { 0.0 },
            unit: "mm",
            why: why.to_owned(),
        })
    }

    /// The slope at which the shoulder pulls the cloth least out of shape, among those that
    /// change by at most half as much as with the plain hinge. Without that bound the shoulder
    /// point drops by 0.49 of 25 mm (median of 1,104 women of a survey, nine of ten between 0.40
    /// and 0.57); the energy is so flat around its least that the bound costs next to none of
    /// it. The stretch is reported.
    fn eased(
        &self,
        piece: &Piece,
        waist: f64,
        warnings: &mut Vec<Warning>,
    ) -> Result<Distortion, AlterationError> {
        let most = 0.5 * waist;
        if self.amount.abs() > most {
            return Err(AlterationError::TooMuch {
                amount: self.amount,
                most: most.copysign(self.amount),
                unit: "mm",
                why: "it is half of the back from nape to waist".to_owned(),
            });
        }
        let sine = sin(self.old) - self.amount / self.reach;
        let plain = asin(Span::about_zero(1.0).nearest(sine)) - self.old;
        let found = distortion(piece, self.amount, Swing::Within(0.5 * plain))?;
        warnings.push(Warning::new(
            "local_stretch",
            format!(
                "{} the {} by {:.1} mm at the least distortion stretches the cloth above the waist locally by {} times",
                if self.amount < 0.0 { "lengthening" } else { "shortening" },
                piece.name(),
                self.amount.abs(),
                found.stretch
            ),
        ));
        Ok(found)
    }

    /// Tells a shoulder that gets nearly level.
    pub fn tell(&self, slope: f64, warnings: &mut Vec<Warning>) {
        let degrees = slope.to_degrees();
        if degrees >= FLAT_SHOULDER || self.amount < 0.0 {
            return;
        }
        let gain = self.reach * (cos(slope) - cos(self.old));
        let instead = match self.hinge {
            Hinge::Plain => "; hinge: shared flattens it half as much",
            Hinge::Shared | Hinge::LeastDistortion => "",
        };
        warnings.push(Warning::new(
            "shoulder_nearly_level",
            format!(
                "after the back-length reduction the back shoulder falls by {degrees:.1} degrees only (the fold gained {gain:.1} mm, taken off at armscye and side){instead}"
            ),
        ));
    }
}
