//! Taut threads on a form, also on one that leans.

use super::form_of_body::Form;
use super::point::Point3;
use super::section::Turns;
use super::shape::Shape;
use super::surface::walk;
use super::tape::taut;
use super::taped::{length, taped};
use crate::measurements::Measurement as M;
use serde::Serialize;

/// Steps round a quarter of a section, and along a thread.
const ROUND: u32 = 24;
const ALONG: u32 = 40;

/// The back or the front of a body.
///
/// ```
/// use blockwright::form::Half;
/// assert_ne!(Half::Back, Half::Front);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Half {
    /// From the middle of the back to the side.
    Back,
    /// From the middle of the front to the side.
    Front,
}

impl Half {
    /// `back` or `front`.
    ///
    /// ```
    /// use blockwright::form::Half;
    /// assert_eq!(Half::Back.name(), "back");
    /// ```
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Back => "back",
            Self::Front => "front",
        }
    }
}

impl Form {
    /// Length in mm of a thread drawn taut down the body between two heights above the waist, at a
    /// share of the way from the middle (0) to the side (1).
    ///
    /// ```
    /// use blockwright::form::{Form, Half};
    /// use blockwright::measurements::{Body, Measurement};
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
    ///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
    ///     (Measurement::BackWaistLength, 402.0),
    /// ])?;
    /// let form = Form::of(&body)?;
    /// let back = form.thread(Half::Back, 0.0, form.levels().waist, form.levels().nape);
    /// assert!((back - 402.0).abs() < 1.0);
    /// // Who leans back has a shorter back; her side stays.
    /// let hollow = form.leaned(10_f64.to_radians());
    /// let levels = form.levels();
    /// assert!(hollow.thread(Half::Back, 0.0, 0.0, levels.nape) < back - 10.0);
    /// let side = |form: &Form| form.thread(Half::Back, 1.0, 0.0, levels.armpit);
    /// assert!((side(&hollow) - side(&form)).abs() < 3.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn thread(&self, half: Half, share: f64, from: f64, to: f64) -> f64 {
        let turns = Turns::quarter(ROUND);
        let places: Vec<(Point3, Point3)> = heights(from, to)
            .map(|y| {
                let shape = self.shape();
                let (x, z) = place(shape, half, share, y, &turns);
                let middle = Point3::new(0.0, y, shape.side_at(y));
                (self.bent(Point3::new(x, y, z)), self.bent(middle))
            })
            .collect();
        taut_over(&places)
    }

    /// Length in mm of a thread drawn taut straight down between two heights above or below the waist, at
    /// a share of the way from the middle to the side: it stays in its upright plane, as the thread of a
    /// cloth whose darts take what it narrows. For heights below the waist, where a body does not lean.
    ///
    /// ```
    /// use blockwright::form::{Form, Half};
    /// use blockwright::measurements::{Body, Measurement};
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
    ///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
    ///     (Measurement::WaistToHip, 210.0),
    /// ])?;
    /// let form = Form::of(&body)?;
    /// let side = form.plumb_thread(Half::Back, 1.0, form.levels().hip, form.levels().waist);
    /// assert!(side > 210.0 && side < 225.0); // out over the hip
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn plumb_thread(&self, half: Half, share: f64, from: f64, to: f64) -> f64 {
        let turns = Turns::quarter(ROUND);
        let at = |share: f64, y: f64| place(self.shape(), half, share, y, &turns);
        // Out from the body at its lower end: square to the way round.
        let (before, after) = (
            at((share - 0.02).max(0.0), from),
            at((share + 0.02).min(1.0), from),
        );
        let (dx, dz) = (after.0 - before.0, after.1 - before.1);
        let size = (dx * dx + dz * dz).sqrt().max(f64::MIN_POSITIVE);
        let toward = match half {
            Half::Back => 1.0,
            Half::Front => -1.0,
        };
        let out = match share {
            share if share <= 0.0 => (0.0, -toward),
            share if share >= 1.0 => (1.0, 0.0),
            _ => (toward * dz / size, -toward * dx / size),
        };
        let points: Vec<(f64, f64)> = heights(from, to)
            .map(|y| {
                let (x, z) = at(share, y);
                (y, x * out.0 + z * out.1)
            })
            .collect();
        taut(&points)
    }

    /// What a tape finds for a measurement, in mm, also on a body that leans; `None` for one that
    /// nothing is solved for. Girths are those of the sections, however they are tilted.
    ///
    /// ```
    /// use blockwright::form::Form;
    /// use blockwright::measurements::{Body, Measurement};
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
    ///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
    ///     (Measurement::CentreFrontWaistLength, 330.0),
    /// ])?;
    /// let form = Form::of(&body)?;
    /// let front = |form: &Form| form.tape(Measurement::CentreFrontWaistLength).unwrap_or(0.0);
    /// assert!((front(&form) - 330.0).abs() < 1.0);
    /// assert!(front(&form.leaned(0.1)) > 340.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn tape(&self, of: M) -> Option<f64> {
        let (shape, levels) = (self.shape(), self.levels());
        if !self.leans() {
            return taped(shape, of, &Turns::quarter(ROUND));
        }
        Some(match of {
            M::BackWaistLength => self.thread(Half::Back, 0.0, levels.waist, levels.nape),
            M::ScyeDepth => self.thread(Half::Back, 0.0, levels.armpit, levels.nape),
            M::CentreFrontWaistLength => {
                self.thread(Half::Front, 0.0, levels.waist, levels.front_neck)
            }
            M::NeckToBustPoint => self.neck_to_bust(),
            M::FrontWaistLength => self.neck_to_bust() + self.bust_to_waist(),
            M::NeckBaseGirth => length(&self.neck_base(96).points),
            _ => return taped(shape, of, &Turns::quarter(ROUND)),
        })
    }

    fn neck_to_bust(&self) -> f64 {
        let (shape, levels) = (self.shape(), self.levels());
        self.over_front(
            (shape.neck_half, levels.neck_side),
            (shape.bust_point, levels.bust),
        )
    }

    fn bust_to_waist(&self) -> f64 {
        let (shape, levels) = (self.shape(), self.levels());
        self.over_front(
            (shape.bust_point, levels.waist),
            (shape.bust_point, levels.bust),
        )
    }

    /// A tape that runs straight over the front as seen from before it.
    fn over_front(&self, from: (f64, f64), to: (f64, f64)) -> f64 {
        let shape = self.shape();
        let places: Vec<(Point3, Point3)> = heights(0.0, 1.0)
            .map(|t| {
                let (x, y) = (from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1));
                let on = Point3::new(x, y, shape.front_at(x, y));
                let behind = Point3 {
                    z: on.z - 100.0,
                    ..on
                };
                (self.bent(on), self.bent(behind))
            })
            .collect();
        taut_over(&places)
    }
}

fn heights(from: f64, to: f64) -> impl Iterator<Item = f64> {
    (0..=ALONG).map(move |step| from + (to - from) * f64::from(step) / f64::from(ALONG))
}

/// The place of a share of a quarter of a section, `(x, z)`.
fn place(shape: &Shape, half: Half, share: f64, y: f64, turns: &Turns) -> (f64, f64) {
    if share <= 0.0 {
        return match half {
            Half::Back => (0.0, shape.back_at(y)),
            Half::Front => (0.0, shape.front_at(0.0, y)),
        };
    }
    let mut ring = shape.half_ring(y, turns);
    if half == Half::Front {
        ring.reverse();
    }
    ring.truncate(turns.behind());
    let steps = ring.iter().zip(ring.iter().skip(1));
    let all: f64 = steps
        .map(|(a, b)| ((a.0 - b.0) * (a.0 - b.0) + (a.1 - b.1) * (a.1 - b.1)).sqrt())
        .sum();
    walk(&ring, share.min(1.0) * all)
}

/// Length of a thread over places, each with one inside the body under it: taut on the outside, in the
/// plane of its ends and the way out.
fn taut_over(places: &[(Point3, Point3)]) -> f64 {
    let (Some((first, _)), Some((last, _))) = (places.first(), places.last()) else {
        return 0.0;
    };
    let along = last.less(*first).unit();
    let zero = Point3::new(0.0, 0.0, 0.0);
    let out = places
        .iter()
        .fold(zero, |sum, (on, inside)| sum.plus(on.less(*inside)));
    let out = out.plus(along.times(-out.dot(along))).unit();
    let points: Vec<(f64, f64)> = places
        .iter()
        .map(|(on, _)| {
            let from = on.less(*first);
            (from.dot(along), from.dot(out))
        })
        .collect();
    taut(&points)
}
