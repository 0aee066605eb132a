//! The armscye of a trunk piece redrawn between its shoulder point and its underarm.

use super::led::led;
use super::one_way::{Armscye, Course};
use super::upper_half::{UpperHalf, put_level};
use crate::alterations::{AlterationError, Sketch, filled};
use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, crossings, perpendicular, tolerance,
};
use crate::piece::EdgeName;

impl UpperHalf<'_> {
    /// The armscye to a new shoulder point, leaving it turned by `turn`; its width point and its
    /// underarm are shifted. It bends one way; the width point may slide down plumb for that.
    pub fn armscye_from(
        &self,
        tip: Point,
        turn: f64,
        shifts: (Vec2, Vec2),
    ) -> Result<(Curve, Point), GeometryError> {
        match self.shape() {
            Some(shape) => shape.on(&self.course(&shape, tip, turn, shifts)),
            None => self.armscye_led(tip, turn, shifts),
        }
    }

    /// The same at its old length: fuller or flatter under the arm.
    pub fn armscye_kept(
        &self,
        tip: Point,
        turn: f64,
        shifts: (Vec2, Vec2),
    ) -> Result<(Curve, Point), AlterationError> {
        self.armscye_of_length(self.armscye.length(), tip, turn, shifts)
    }

    /// The same at any length.
    pub fn armscye_of_length(
        &self,
        length: f64,
        tip: Point,
        turn: f64,
        shifts: (Vec2, Vec2),
    ) -> Result<(Curve, Point), AlterationError> {
        let drawn = match self.shape() {
            Some(shape) => shape.of_length(&self.course(&shape, tip, turn, shifts), length),
            None => self
                .armscye_led(tip, turn, shifts)
                .and_then(|(curve, width_point)| {
                    let (upper, lower) = curve.split_at(curve.nearest(width_point).1)?;
                    let wanted = length - upper.length();
                    Ok((upper.then(&filled(&lower, wanted)?)?, width_point))
                }),
        };
        drawn.map_err(|_| AlterationError::First {
            why: format!(
                "the armscye of the {} can neither be filled nor flattened to the length that it has to have there",
                self.piece.name()
            ),
            advice: "alter by less, or give the width first (back_width or front_width)".to_owned(),
        })
    }

    /// How far the armscye turns between the shoulder point and the chord to the width point, and
    /// how far it could with its width point slid down, in radians; negative where it bends back.
    /// Nothing is said of one in several parts.
    pub fn hollowness(&self) -> Option<(f64, f64)> {
        let course = self.shape()?.course();
        Some((course.hollowness(), course.most_hollow()))
    }

    /// How far the shoulder point lies outside the width point, in millimetres.
    pub fn jut(&self) -> f64 {
        let width = self.piece.line("width").map(|line| line.curve.end().x);
        self.armscye.start().x - width.unwrap_or(self.armscye.start().x)
    }

    /// The room that it has, and that it would have at a new shoulder point, in radians: how far it
    /// would turn between the shoulder point and the chord down to its width half way to the underarm
    /// if it left the shoulder square. Neither where its width point lies nor how it does leave the
    /// shoulder takes part. None of an armscye in several parts.
    pub fn rooms_at(&self, tip: Point, turn: f64, shifts: (Vec2, Vec2)) -> Option<(f64, f64)> {
        let shape = self.shape()?;
        let course = self.course(&shape, tip, turn, shifts);
        let square = perpendicular(self.shoulder.end_direction());
        let turned = Rigid::turn_about(Point::ORIGIN, turn).apply_direction(square);
        Some((shape.course().room(square), course.room(turned)))
    }

    /// The room that it has.
    pub fn room(&self) -> Option<f64> {
        let stay = (Vec2::ZERO, Vec2::ZERO);
        Some(self.rooms_at(self.armscye.start(), 0.0, stay)?.0)
    }

    fn shape(&self) -> Option<Armscye> {
        Armscye::of(self.armscye, self.width_at)
    }

    fn course(
        &self,
        shape: &Armscye,
        tip: Point,
        turn: f64,
        (at_width, at_underarm): (Vec2, Vec2),
    ) -> Course {
        let old = shape.course();
        Course {
            tip,
            leave: Rigid::turn_about(Point::ORIGIN, turn).apply_direction(old.leave),
            width: old.width + at_width,
            underarm: old.underarm + at_underarm,
            arrive: old.arrive,
        }
    }

    /// An armscye of several parts, each point of which goes with a share of both ends.
    fn armscye_led(
        &self,
        tip: Point,
        turn: f64,
        (at_width, at_underarm): (Vec2, Vec2),
    ) -> Result<(Curve, Point), GeometryError> {
        let (upper, lower) = self.armscye_parts()?;
        let start = upper.start();
        let top = Rigid::turn_about(start, turn).then(Rigid::shift(tip - start));
        let middle = Rigid::shift(at_width);
        let upper = led(&upper, &top, &middle)?;
        let width_point = upper.end();
        let lower = led(&lower, &middle, &Rigid::shift(at_underarm))?;
        Ok((upper.then(&lower)?, width_point))
    }

    /// Puts an armscye and its width point into the sketch, the notch with it, and draws the
    /// width line to it.
    pub fn put_armscye(
        &self,
        sketch: &mut Sketch,
        armscye: Curve,
        width_point: Point,
    ) -> Result<(), AlterationError> {
        sketch.replace(&EdgeName::ARMSCYE, armscye)?;
        for (place, notch) in self.piece.notches().iter().enumerate() {
            let here = notch.edge == EdgeName::ARMSCYE
                && (notch.at - self.width_at).abs() <= tolerance::SEAM_DRAFTED;
            if here {
                sketch.put_notch(place, width_point);
            }
        }
        put_level(sketch, "width", width_point)?;
        Ok(())
    }
}

/// Where a level crosses an armscye, as a hinge beside the blade does.
pub(in crate::alterations) fn hinge_at(
    armscye: &Curve,
    level: f64,
) -> Result<Point, AlterationError> {
    let reach = 4.0 * armscye.end().x.abs();
    let across = Curve::line(Point::new(0.0, level), Point::new(reach, level))?;
    crossings(armscye.segments(), across.segments())
        .first()
        .map(|c| c.point)
        .ok_or(AlterationError::Construction {
            step: "hinge on the armscye at blade level",
            source: GeometryError::Parallel,
        })
}
