//! The neckline: half the neck base girth on back and front together.

use super::DraftError;
use crate::geometry::elementary::{atan2, cos, tan};
use crate::geometry::{Curve, GeometryError, Point, Vec2, root, unit};

/// How far the front neck is narrower than the back's, in millimetres.
///
/// Two drafts agree: 72 and 67 on the close-fitting block for bust 88 (Aldrich, as transcribed
/// on a personal page), 71 and 69 (Bunka, formula as transcribed in student notes). The lesser.
const FRONT_NARROWER: f64 = 2.0;

/// How far the front neck is deeper than wide, in millimetres: 5 on both of those drafts.
const FRONT_DEEPER: f64 = 5.0;

/// A front neck is at most so many times as deep as it is wide: half as deep again looks long, twice
/// as deep is no neckline any more (an assumption).
const DEEPEST: f64 = 1.5;

/// Half the neckline: the widths that make it as long as half the neck base girth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Neckline {
    /// Width of the back neck from the fold.
    pub back_width: f64,
    /// Height of the neck side point above the nape: a third of the width (Bunka, as transcribed).
    pub back_rise: f64,
    /// Width of the front neck from the fold.
    pub front_width: f64,
    /// Depth of the front neck below the neck side point.
    pub front_depth: f64,
    /// By how much the front arrives at the shoulder steeper than square, and the back flatter,
    /// in radians.
    lean: f64,
}

/// The corner that the front neckline rounds stays this share of the width away from the fold.
/// A deep, narrow neck on a steep shoulder would have none left; there the line leans out of
/// square, the back by as much the other way, so that it still runs on over the shoulder.
const CORNER: f64 = 0.32;

/// How far the front neckline reaches into that corner, from the fold and from the shoulder.
/// Inside 1 it cannot bend back.
const FRONT_REACH: (f64, f64) = (0.84, 0.57);

impl Neckline {
    fn of_width(width: f64, depth: impl Fn(f64) -> f64, front_slope: f64) -> Self {
        let front_width = width - FRONT_NARROWER;
        let front_depth = depth(front_width);
        let steepest = atan2((1.0 - CORNER) * front_width, front_depth);
        Self {
            back_width: width,
            back_rise: width / 3.0,
            front_width,
            front_depth,
            lean: (front_slope - steepest).max(0.0),
        }
    }

    /// The neckline whose back and front arcs together are half of `girth`, given the slopes
    /// of the back and front shoulder at the neck; the front as deep as given, or as wide and
    /// a little more.
    pub fn of_girth(
        girth: f64,
        front_depth: Option<f64>,
        slopes: (f64, f64),
    ) -> Result<Self, DraftError> {
        let depth = |width: f64| front_depth.unwrap_or(width + FRONT_DEEPER);
        Self::of_depth(girth, depth, slopes)
    }

    /// The same, the front as deep as follows from its width.
    fn of_depth(
        girth: f64,
        depth: impl Fn(f64) -> f64,
        (back_slope, front_slope): (f64, f64),
    ) -> Result<Self, DraftError> {
        let miss = |width: f64| {
            let neck = Self::of_width(width, &depth, front_slope);
            let arcs = neck.back(back_slope).and_then(|back| {
                Ok(back.length()
                    + neck
                        .front(front_slope, Point::new(neck.front_width, 0.0))?
                        .length())
            });
            arcs.map_or(f64::NAN, |arcs| arcs - girth / 2.0)
        };
        let width = root("width of the neck", 20.0, 0.4 * girth, miss).map_err(|source| {
            DraftError::Construction {
                step: "neckline",
                from: "neck_base_girth, shoulder_slope",
                source,
            }
        })?;
        Ok(Self::of_width(width, depth, front_slope))
    }

    /// The back neckline: from the nape, square to the fold, to the neck side point, square to
    /// the shoulder.
    pub fn back(&self, slope: f64) -> Result<Curve, GeometryError> {
        let side = self.back_side();
        Curve::hermite(
            Point::ORIGIN,
            Vec2::new(0.5 * self.back_width, 0.0),
            side,
            square_to_shoulder(slope + self.lean) * (0.62 * self.back_rise),
        )
    }

    /// The neck side point of the back.
    pub fn back_side(&self) -> Point {
        Point::new(self.back_width, -self.back_rise)
    }

    /// The front neckline: from the fold, square to it, up to the neck side point `side`.
    pub fn front(&self, slope: f64, side: Point) -> Result<Curve, GeometryError> {
        let centre = Point::new(0.0, side.y + self.front_depth);
        let slope = slope - self.lean;
        let corner = side.x - self.front_depth * tan(slope);
        Curve::hermite(
            centre,
            Vec2::new(FRONT_REACH.0 * corner, 0.0),
            side,
            square_to_shoulder(slope) * (FRONT_REACH.1 * self.front_depth / cos(slope)),
        )
    }
}

/// The direction in which a neckline arrives square at a shoulder that falls by `slope`.
fn square_to_shoulder(slope: f64) -> Vec2 {
    unit(slope - std::f64::consts::FRAC_PI_2)
}

/// Slope of a shoulder where a neckline is judged without a draft, in radians (20 degrees).
const ABOUT: f64 = std::f64::consts::PI / 9.0;

/// Height of the neck side point above the nape for a neck base girth, near enough for a
/// figure made up without a draft.
pub(super) fn back_rise(neck_base_girth: f64) -> f64 {
    Neckline::of_girth(neck_base_girth, None, (ABOUT, ABOUT)).map_or(0.0, |n| n.back_rise)
}

/// Depth of the front neck that follows from a neck base girth alone, and the deepest that it may
/// have; none where no neckline is that long.
pub(super) fn front_depths(neck_base_girth: f64) -> Option<(f64, f64)> {
    let usual = Neckline::of_girth(neck_base_girth, None, (ABOUT, ABOUT)).ok()?;
    let deepest = Neckline::of_depth(neck_base_girth, |width| DEEPEST * width, (ABOUT, ABOUT));
    Some((usual.front_depth, deepest.ok()?.front_depth))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn arcs_make_half_the_girth() {
        let (b, f) = (18f64.to_radians(), 22f64.to_radians());
        let neck = Neckline::of_girth(370.0, None, (b, f)).unwrap();
        let front = neck.front(f, Point::new(neck.front_width, -10.0)).unwrap();
        assert!((neck.back(b).unwrap().length() + front.length() - 185.0).abs() < 1e-6);
    }

    #[test]
    fn a_neck_stays_one() {
        let (usual, deepest) = front_depths(346.0).unwrap();
        assert!((60.0..80.0).contains(&usual), "{usual}");
        assert!((usual + 8.0..95.0).contains(&deepest), "{deepest}");
    }
}
