//! The two underarm seams of a sleeve, found, moved and put back at one length.

use crate::alterations::cutting::stations::{Station, moved_at};
use crate::alterations::cutting::true_up::with_mouth;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Vec2, crossings, root, tolerance};
use crate::piece::{Dart, EdgeName, Piece};

/// Rounds in which seam and wrist are brought to their lengths: each leaves a fiftieth of the miss.
const ROUNDS: usize = 6;

/// How far the end of a seam slides along itself at most, in millimetres.
const SLIDE: f64 = 12.0;

/// How far beyond the ends of a seam its level is looked for, in millimetres.
const FAR: f64 = 200.0;

/// Name of the front underarm seam, walked from the biceps line down.
pub(in crate::alterations) fn front_name() -> EdgeName {
    EdgeName::new("underarm_front")
}

/// Name of the back underarm seam, walked from the wrist up.
pub(in crate::alterations) fn back_name() -> EdgeName {
    EdgeName::new("underarm_back")
}

/// The underarm seams of a sleeve with its wrist.
#[derive(Clone)]
pub(in crate::alterations) struct SleeveSeams {
    /// The front seam, from the biceps line down.
    pub front: Curve,
    /// The wrist, from the front seam to the back seam.
    pub wrist: Curve,
    /// The back seam from the wrist up to its dart, or all of it.
    pub lower: Curve,
    /// The dart of the back seam, and the seam above it.
    pub above: Option<(Dart, Curve)>,
}

impl SleeveSeams {
    /// Of a sleeve.
    ///
    /// # Errors
    /// When the piece has no such seams, or several darts on the back seam.
    pub fn of(piece: &Piece) -> Result<Self, AlterationError> {
        let edge = |name: &EdgeName| {
            let edge = piece.outline().edge(name);
            edge.map(|e| e.curve().clone())
                .ok_or_else(|| AlterationError::Missing {
                    what: format!("an edge {name} on the {}", piece.name()),
                    advice: "this alteration works on a sleeve with underarm seams and a wrist",
                })
        };
        let back = edge(&back_name())?;
        let mouths = piece.mouths(&back_name());
        let (lower, above) = match mouths.as_slice() {
            [] => (back, None),
            [(dart, from, to)] => (
                back.part(0.0, *from)?,
                Some(((*dart).clone(), back.part(*to, back.length())?)),
            ),
            _ => {
                return Err(AlterationError::First {
                    why: format!("the back seam of the {} has several darts", piece.name()),
                    advice: "make this alteration before its dart is divided".to_owned(),
                });
            }
        };
        Ok(Self {
            front: edge(&front_name())?,
            wrist: edge(&EdgeName::WRIST)?,
            lower,
            above,
        })
    }

    /// Sewn length of the back seam.
    pub fn back_length(&self) -> f64 {
        self.lower.length() + self.above.as_ref().map_or(0.0, |(_, curve)| curve.length())
    }

    /// With the dart's legs drawn out from its apex by a length, each along itself; the seam beside
    /// them goes along, its directions stay.
    pub fn with_legs_out(mut self, by: f64) -> Result<Self, GeometryError> {
        if let Some((dart, above)) = &mut self.above {
            let apex = dart.apex();
            let out = dart.legs.map(|leg| (leg - apex).normalize() * by);
            let [lower_out, upper_out] = out;
            let [lower_leg, upper_leg] = dart.legs;
            dart.legs = [lower_leg + lower_out, upper_leg + upper_out];
            let length = self.lower.length();
            let ends = [
                Station::new(0.0, Vec2::ZERO),
                Station::new(length, lower_out),
            ];
            self.lower = moved_at(&self.lower, &ends)?;
            let ends = [
                Station::new(0.0, upper_out),
                Station::new(above.length(), Vec2::ZERO),
            ];
            *above = moved_at(above, &ends)?;
        }
        Ok(self)
    }

    /// With both seams of one length: the front seam's end slides along itself, and the wrist's
    /// with it, which turns it by less than can be seen. Up to `hold` along it the front seam stays.
    pub fn matched(mut self, hold: f64) -> Result<Self, AlterationError> {
        let wanted = self.back_length();
        let (front, wrist) = (self.front.clone(), self.wrist.clone());
        if (front.length() - wanted).abs() <= 1e-3 * tolerance::SEAM_DRAFTED {
            return Ok(self);
        }
        // It slides along itself, and gives way along the wrist by what that would lengthen it.
        let (along, across) = (front.end_direction(), -wrist.start_direction());
        let ended = |by: f64, give: f64| {
            let ends = [
                Station::new(hold, Vec2::ZERO),
                Station::new(front.length(), along * by + across * give),
            ];
            moved_at(&front, &ends)
        };
        let started = |by: f64, give: f64| {
            let ends = [
                Station::new(0.0, along * by + across * give),
                Station::new(wrist.length(), Vec2::ZERO),
            ];
            moved_at(&wrist, &ends)
        };
        let (mut by, mut give) = (0.0, 0.0);
        let mut solve = || -> Result<(), GeometryError> {
            for _ in 0..ROUNDS {
                by = root("end of the front underarm seam", -SLIDE, SLIDE, |by| {
                    ended(by, give).map_or(f64::NAN, |curve| curve.length() - wanted)
                })?;
                give += wrist.length() - started(by, give)?.length();
            }
            Ok(())
        };
        solve().map_err(|source| AlterationError::Construction {
            step: "underarm seams of one length",
            source,
        })?;
        self.front = ended(by, give)?;
        self.wrist = started(by, give)?;
        Ok(self)
    }

    /// Puts seams, wrist and dart into the sketch.
    pub fn put(&self, sketch: &mut Sketch) -> Result<(), AlterationError> {
        let back = match &self.above {
            None => self.lower.clone(),
            Some((dart, above)) => {
                if let Some(slot) = sketch.dart_mut(&dart.name) {
                    *slot = dart.clone();
                }
                with_mouth(&self.lower, dart, above)?
            }
        };
        sketch.replace(&back_name(), back)?;
        sketch.replace(&front_name(), self.front.clone())?;
        sketch.replace(&EdgeName::WRIST, self.wrist.clone())
    }

    /// Lays the ends of a balance line on both seams, each level with a point, or where the seam does
    /// not reach that level at the place nearest to it.
    pub fn put_line(
        &self,
        sketch: &mut Sketch,
        name: &str,
        near: [Point; 2],
    ) -> Result<(), AlterationError> {
        let [behind, before] = near;
        let on = |curve: &Curve, point: Point| -> Result<Point, GeometryError> {
            let (from, to) = (curve.start(), curve.end());
            let left = Point::new(from.x.min(to.x) - FAR, point.y);
            let right = Point::new(from.x.max(to.x) + FAR, point.y);
            let level = Curve::line(left, right)?;
            let met = crossings(curve.segments(), level.segments());
            let distance = |p: &Point| p.distance(point);
            let met = met.into_iter().map(|crossing| crossing.point);
            match met.min_by(|a, b| distance(a).total_cmp(&distance(b))) {
                Some(met) => Ok(met),
                None => Ok(curve.point_at(curve.nearest(point).1)?.0),
            }
        };
        let upper = self.above.as_ref().map(|(_, curve)| curve);
        let nearest = |curve: &&Curve| curve.nearest(behind).0;
        let hind = [Some(&self.lower), upper].into_iter().flatten();
        let hind = hind.min_by(|a, b| nearest(a).total_cmp(&nearest(b)));
        let from = on(hind.unwrap_or(&self.lower), behind)?;
        let to = on(&self.front, before)?;
        for line in sketch.lines_mut().iter_mut().filter(|l| l.name == name) {
            line.curve = Curve::line(from, to)?;
        }
        Ok(())
    }
}
