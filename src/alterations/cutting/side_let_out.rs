//! A side seam let out or taken in at the underarm, through its darts.

use super::quarter::waist_on_side;
use super::true_up::with_mouth;
use super::upper_half::{UpperHalf, put_level};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, carried_smoothly, root, tolerance,
};
use crate::piece::{Dart, EdgeName};

/// A side seam drawn to a moved underarm.
pub(in crate::alterations) struct LetOut {
    seam: Curve,
    /// Its darts, whose legs run on to it, with the ends of their mouths along it.
    darts: Vec<(Dart, f64, f64)>,
}

impl LetOut {
    /// The side seam whose underarm moves out by so much, running to nothing at the waist. It keeps
    /// its sewn length: the underarm slides up or down for that, as the seam slants.
    pub fn of(half: &UpperHalf<'_>, out: f64) -> Result<Self, AlterationError> {
        let sewn = |drawn: &Self| drawn.seam.length() - drawn.opened();
        let old = Self::drawn(half, Vec2::ZERO)?;
        let wanted = sewn(&old);
        let reach = 1.0 + out.abs();
        let miss = |drop: f64| {
            Self::drawn(half, Vec2::new(out, drop)).map_or(f64::NAN, |drawn| sewn(&drawn) - wanted)
        };
        let drop = root("drop of a side seam let out", -reach, reach, miss).map_err(|source| {
            AlterationError::Construction {
                step: "side seam let out at its old length",
                source,
            }
        })?;
        Ok(Self::drawn(half, Vec2::new(out, drop))?)
    }

    /// What its open darts take of it.
    fn opened(&self) -> f64 {
        self.darts.iter().map(|(_, from, to)| to - from).sum()
    }

    fn drawn(half: &UpperHalf<'_>, by: Vec2) -> Result<Self, GeometryError> {
        let (piece, side) = (half.piece, half.side);
        let name = EdgeName::SIDE_SEAM;
        let waist = waist_on_side(piece).unwrap_or(side.length());
        let down = piece.sewn_position(&name, waist);
        let end = side.part(0.0, waist)?.end();
        let mut mouths = piece.mouths(&name);
        mouths.retain(|(_, _, to)| *to < waist);
        mouths.sort_by(|a, b| a.1.total_cmp(&b.1));

        // Every part between two darts keeps its directions at both ends, and the legs run on in
        // their own: with the darts closed the seam is as smooth as it was.
        let mut parts = Vec::new();
        let (mut from, mut shift) = (0.0, by);
        for (dart, opens, closes) in mouths {
            let apex = dart.apex();
            let height = height_over(end, apex, dart.legs[1]);
            let height = height.unwrap_or(down - piece.sewn_position(&name, opens));
            let longer = by.x * height / down;
            let [first, second] = dart.legs.map(|leg| (leg - apex).normalize() * longer);
            let before = led(&side.part(from, opens)?, shift, first)?;
            let dart = Dart {
                legs: [dart.legs[0] + first, dart.legs[1] + second],
                ..dart.clone()
            };
            parts.push((before, dart));
            (from, shift) = (closes, second);
        }
        let mut seam = led(&side.part(from, waist)?, shift, Vec2::ZERO)?;
        if waist < side.length() - tolerance::POINT {
            seam = seam.then(&side.part(waist, side.length())?)?;
        }
        for (before, dart) in parts.iter().rev() {
            seam = with_mouth(before, dart, &seam)?;
        }
        let darts = parts.into_iter().filter_map(|(_, dart)| {
            let [from, to] = dart.legs.map(|leg| seam.joint_at(leg));
            Some((dart, from?, to?))
        });
        Ok(Self {
            darts: darts.collect(),
            seam,
        })
    }

    /// Its underarm point.
    pub fn underarm(&self) -> Point {
        self.seam.start()
    }

    /// Puts it into the sketch of its piece: darts, notches and levels go along.
    pub fn put(&self, half: &UpperHalf<'_>, sketch: &mut Sketch) -> Result<(), AlterationError> {
        let name = EdgeName::SIDE_SEAM;
        let old = half.side;
        let moved = |at: f64| self.open(half.piece.sewn_position(&name, at));
        for notch in &mut sketch.parts_mut().notches {
            if notch.edge == name {
                notch.at = moved(notch.at);
            }
        }
        for line in sketch.lines_mut() {
            let end = line.curve.end();
            let (off, at) = old.nearest(end);
            if off <= tolerance::SEAM_ALTERED && at > 0.0 {
                // By as much as its place on the seam: a line may end a hair beside it.
                let (was, is) = (old.part(0.0, at)?, self.seam.part(0.0, moved(at))?);
                let out = is.end().x - was.end().x;
                line.curve = Curve::line(line.curve.start(), Point::new(end.x + out, end.y))?;
            }
        }
        for (dart, ..) in &self.darts {
            if let Some(slot) = sketch.dart_mut(&dart.name) {
                *slot = dart.clone();
            }
        }
        sketch.replace(&name, self.seam.clone())?;
        put_level(sketch, "underarm", self.underarm())
    }

    /// Where along the seam, darts open, a place of the sewn seam lies.
    fn open(&self, sewn: f64) -> f64 {
        self.darts.iter().fold(sewn, |at, (_, from, to)| {
            if at > from + tolerance::POINT {
                at + to - from
            } else {
                at
            }
        })
    }
}

/// A part of the seam whose ends move by these, its directions there kept.
fn led(part: &Curve, start: Vec2, end: Vec2) -> Result<Curve, GeometryError> {
    let at_end = part.moved(&Rigid::shift(end));
    carried_smoothly(&at_end, &Rigid::shift(start - end))
}

/// How high over the seam's end at the waist a leg crosses the plumb line through it: where the
/// seam lies along the leg does not change that, so that what is let out can be taken in again.
/// None for a leg that runs along the seam.
fn height_over(end: Point, apex: Point, leg: Point) -> Option<f64> {
    let along = (leg - apex).normalize();
    let level = apex.y + along.y / along.x * (end.x - apex.x);
    let height = end.y - level;
    (along.x.abs() > LEAST_ACROSS && height > 0.0).then_some(height)
}

/// The least share of its length that a leg runs across the seam, to be followed to it.
const LEAST_ACROSS: f64 = 0.5;
