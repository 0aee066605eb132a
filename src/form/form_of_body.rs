//! A body in the round.

use super::armhole::Armhole;
use super::folds::{Folds, fold, fold_reach};
use super::found::{Dimension, Reproduced};
use super::landmarks::Landmarks;
use super::lean::Lean;
use super::levels::Levels;
use super::parameter::ShapeParameter as P;
use super::point::Point3;
use super::section::{STEPS, Turns};
use super::shape::{NECK_STUMP, Shape};
use super::solve::{Solved, says_more_than_tapes};
use super::surface::{Ring, Surface, spread_along};
use super::taped::neck_ring;
use crate::geometry::Span;
use crate::measurements::{Body, Measurement as M};

/// The trunk bends from the waist up to this share of the nape's height.
const BENDS: f64 = 0.35;

/// A body in the round, from measurements taken and estimated. The frame is described in the module `form`.
///
/// # Guarantees
/// * Every taped length that it was solved for is found on it within 2 mm, every girth within 0.3 %;
///   usually within 0.1 mm. [`reproduced`](Self::reproduced) lists them.
/// * No dimension is farther than four spreads from what the survey expects;
///   [`dimensions`](Self::dimensions) lists them.
/// * The same body gives the same form on every machine.
///
/// ```
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1660.0), (Measurement::BustGirth, 960.0),
///     (Measurement::WaistGirth, 800.0), (Measurement::HipGirth, 1040.0),
///     (Measurement::BackWaistLength, 380.0), (Measurement::CentreFrontWaistLength, 328.0),
/// ])?;
/// let form = Form::of(&body)?;
/// let back = form.reproduced().iter().find(|r| r.of == Measurement::BackWaistLength);
/// assert!(back.is_some_and(|r| (r.found - 380.0).abs() < 1.0));
/// // The back is longer than the nape is high: it goes over the shoulder blades.
/// assert!(form.levels().nape < 380.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Form {
    shape: Shape,
    lean: Lean,
    folds: Folds,
    landmarks: Landmarks,
    reproduced: Vec<Reproduced>,
    dimensions: Vec<Dimension>,
    more_than_tapes: bool,
}

impl Form {
    /// The same body leaning back by an angle in radians, about a line through its sides: the back is
    /// shortened, the front lengthened, sides keep their length. Negative bends it forward.
    ///
    /// ```
    /// use blockwright::form::Form;
    /// use blockwright::measurements::{Body, Measurement};
    /// let body = Body::from_taken([
    ///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
    ///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
    /// ])?;
    /// let upright = Form::of(&body)?;
    /// let hollow = upright.leaned(10_f64.to_radians());
    /// assert!(hollow.landmarks().nape.z < upright.landmarks().nape.z - 30.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn leaned(&self, angle: f64) -> Self {
        let lean = Lean {
            angle: self.lean.angle + angle,
            ..self.lean
        };
        Self {
            lean,
            landmarks: Landmarks::of(&self.shape, &lean, &self.folds),
            ..self.clone()
        }
    }

    /// Heights above the waist, of the body as it was solved for, before any lean.
    #[must_use]
    pub const fn levels(&self) -> Levels {
        self.shape.levels
    }

    /// Named places.
    #[must_use]
    pub const fn landmarks(&self) -> Landmarks {
        self.landmarks
    }

    /// The plane in which the left arm is cut off.
    #[must_use]
    pub fn armhole(&self) -> Armhole {
        let l = &self.landmarks;
        Armhole::through(l.shoulder, l.back_fold, l.front_fold)
    }

    /// Every measurement that was solved for, as a tape finds it, in the order of reports.
    #[must_use]
    pub fn reproduced(&self) -> &[Reproduced] {
        &self.reproduced
    }

    /// Every dimension that was solved for, beside what the survey expects.
    #[must_use]
    pub fn dimensions(&self) -> &[Dimension] {
        &self.dimensions
    }

    /// By how many radians the trunk leans back from the waist up, beside the upright body that it was
    /// solved for: nothing unless its lengths need it, or it was [`leaned`](Self::leaned).
    #[must_use]
    pub const fn lean(&self) -> f64 {
        self.lean.angle
    }

    /// Whether heights, depths or a plumb line were taken, which say more of a body than the girths and
    /// lengths that a block is drafted from.
    #[must_use]
    pub const fn says_more_than_tapes(&self) -> bool {
        self.more_than_tapes
    }

    /// How far the surface reaches: the lowest and the highest ring, in mm above the waist.
    #[must_use]
    pub fn reach(&self) -> (f64, f64) {
        let levels = &self.shape.levels;
        (levels.knee, levels.nape + NECK_STUMP)
    }

    /// The ring at a height in mm above the waist, of about so many points (at least 8).
    #[must_use]
    pub fn ring(&self, height: f64, around: u32) -> Ring {
        let quarter = quarter(around);
        let line = self.shape.half_ring(height, &Turns::quarter(4 * STEPS));
        let half = spread_along(&line, 2 * quarter);
        let left = half.iter().map(|(x, z)| Point3::new(*x, height, *z));
        let right = half
            .iter()
            .rev()
            .skip(1)
            .map(|(x, z)| Point3::new(-x, height, *z));
        let mut points: Vec<Point3> = left.chain(right).map(|p| self.lean.bend(p)).collect();
        points.pop();
        Ring { height, points }
    }

    /// The whole surface with points about `spacing` mm apart (2 to 100), closer round small rings.
    #[must_use]
    pub fn surface(&self, spacing: f64) -> Surface {
        let spacing = if spacing.is_finite() {
            Span::from_low(2.0, 100.0).nearest(spacing)
        } else {
            20.0
        };
        let (low, high) = self.reach();
        let around = count(self.ring(self.shape.levels.hip, 64).length() / spacing);
        let up = count((high - low) / spacing);
        let rings = (0..=up).map(|place| {
            self.ring(
                low + (high - low) * f64::from(place) / f64::from(up),
                around,
            )
        });
        Surface {
            rings: rings.collect(),
        }
    }

    /// The base of the neck: a closed ring from the nape over the left neck side point, the hollow of
    /// the front neck and the right neck side point, about so many points (at least 8).
    #[must_use]
    pub fn neck_base(&self, around: u32) -> Ring {
        let half = neck_ring(&self.shape, &Turns::quarter(quarter(around)));
        let right = half.iter().rev().skip(1).map(|p| p.mirrored());
        let ring = half.iter().copied().chain(right);
        let mut points: Vec<Point3> = ring.map(|p| self.lean.bend(p)).collect();
        points.pop();
        Ring {
            height: self.shape.levels.neck_side,
            points,
        }
    }

    pub(super) const fn shape(&self) -> &Shape {
        &self.shape
    }

    pub(super) fn leans(&self) -> bool {
        self.lean.angle != 0.0
    }

    pub(super) fn bent(&self, place: Point3) -> Point3 {
        self.lean.bend(place)
    }

    /// From what was solved for upright, leaning back by an angle in radians.
    pub(super) fn from_solved(body: &Body, solved: &Solved, angle: f64) -> Self {
        let shape = solved.shape.clone();
        let folds = Folds {
            back: fold(&shape, true, 0.5 * body.value(M::BackWidth)),
            front: fold(&shape, false, 0.5 * body.value(M::FrontWidth)),
        };
        let lean = Lean {
            angle,
            pivot: shape.side_at(0.0),
            over: BENDS * shape.levels.nape.max(100.0),
        };
        let mut reproduced: Vec<Reproduced> = solved
            .targets
            .iter()
            .zip(&solved.found)
            .map(|(target, found)| Reproduced {
                of: target.of,
                given: target.value,
                found: *found,
                is_taken: target.is_taken,
            })
            .collect();
        for (of, back) in [(M::BackWidth, true), (M::FrontWidth, false)] {
            if body.is_taken(of) {
                continue;
            }
            let (given, turns) = (body.value(of), Turns::quarter(STEPS));
            reproduced.push(Reproduced {
                of,
                given,
                found: 2.0 * fold_reach(&shape, back, 0.5 * given, &turns),
                is_taken: false,
            });
        }
        let mut form = Self::unmeasured(body, solved, (shape, lean, folds));
        reproduced.iter_mut().for_each(|one| {
            // Lengths down a body that leans are others than those solved for upright.
            if let (true, Some(found), Some(given)) =
                (form.leans(), form.tape(one.of), body.get(one.of))
            {
                (one.found, one.given) = (found, given.value);
            }
        });
        form.reproduced = reproduced;
        form
    }

    fn unmeasured(
        body: &Body,
        solved: &Solved,
        (shape, lean, folds): (Shape, Lean, Folds),
    ) -> Self {
        let distances = P::ALL
            .into_iter()
            .zip(solved.priors.mean)
            .zip(solved.priors.spread);
        Self {
            landmarks: Landmarks::of(&shape, &lean, &folds),
            reproduced: Vec::new(),
            dimensions: distances
                .map(|((of, expected), spread)| Dimension {
                    of,
                    value: solved.values.of(of),
                    expected,
                    spread,
                })
                .collect(),
            more_than_tapes: says_more_than_tapes(body),
            folds,
            lean,
            shape,
        }
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a small positive number"
)]
fn count(ratio: f64) -> u32 {
    Span::from_low(8.0, 2048.0).nearest(ratio).round() as u32
}

/// A quarter of about so many points, 2 to 1024.
const fn quarter(around: u32) -> u32 {
    match around.div_ceil(4) {
        0 | 1 => 2,
        quarter @ 2..=1024 => quarter,
        _ => 1024,
    }
}
