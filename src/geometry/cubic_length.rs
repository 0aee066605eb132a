//! The length of a cubic, which everything that is solved for asks for.

use kurbo::common::{
    GAUSS_LEGENDRE_COEFFS_8, GAUSS_LEGENDRE_COEFFS_8_HALF, GAUSS_LEGENDRE_COEFFS_16_HALF,
    GAUSS_LEGENDRE_COEFFS_24_HALF,
};
use kurbo::{CubicBez, ParamCurve, ParamCurveArclen, Point, Vec2};
use std::ops::Range;

/// So often a cubic is halved at most.
const DEEPEST: usize = 20;

/// A cubic measured as kurbo measures it, by Gauss and Legendre's quadrature with as many points as
/// its estimate of the error asks for. That estimate takes powers, which without the standard
/// library are a third of all the time of a fitting; here they are products.
pub(super) struct Measured(pub CubicBez);

impl ParamCurve for Measured {
    fn eval(&self, t: f64) -> Point {
        self.0.eval(t)
    }

    fn subsegment(&self, range: Range<f64>) -> Self {
        Self(self.0.subsegment(range))
    }
}

impl ParamCurveArclen for Measured {
    fn arclen(&self, accuracy: f64) -> f64 {
        length(&self.0, accuracy, 0)
    }
}

/// The derivative at the middle of a cubic, the second, and half of the third, each without its
/// factor of three.
struct AtMiddle {
    first: Vec2,
    second: Vec2,
    third: Vec2,
}

impl AtMiddle {
    /// How much the direction turns on the way, squared and summed.
    fn turning(&self) -> f64 {
        let at = |&(weight, x): &(f64, f64)| {
            let way = (self.first + self.second * x + self.third * (x * x)).hypot2();
            let turn = (self.second + self.third * (2.0 * x)).hypot2();
            weight * (turn / way)
        };
        GAUSS_LEGENDRE_COEFFS_8.iter().map(at).sum()
    }

    /// The length, by so many points on either half.
    fn length(&self, points: &[(f64, f64)]) -> f64 {
        let at = |&(weight, x): &(f64, f64)| {
            let even = self.first + self.third * (x * x);
            let ahead = (even + self.second * x).hypot();
            let behind = (even - self.second * x).hypot();
            1.5 * weight * (ahead + behind)
        };
        points.iter().map(at).sum()
    }
}

fn length(c: &CubicBez, accuracy: f64, halved: usize) -> f64 {
    let [d01, d12, d23] = [c.p1 - c.p0, c.p2 - c.p1, c.p3 - c.p2];
    // What the handles are longer than the chord: nothing where it is straight.
    let longer = d01.hypot() + d12.hypot() + d23.hypot() - (c.p3 - c.p0).hypot();
    let (bend, on) = (d12 - d01, d23 - d12);
    let middle = AtMiddle {
        first: 0.25 * (d01 + d23) + 0.5 * d12,
        second: 0.5 * (on + bend),
        third: 0.25 * (on - bend),
    };
    let turning = middle.turning();
    let third = turning * turning * turning;
    if (third * 2.5e-6).min(3e-2) * longer < accuracy {
        return middle.length(GAUSS_LEGENDRE_COEFFS_8_HALF);
    }
    let sixth = third * third;
    if (sixth * 1.5e-11).min(9e-3) * longer < accuracy {
        return middle.length(GAUSS_LEGENDRE_COEFFS_16_HALF);
    }
    if (sixth * third * 3.5e-16).min(3.5e-3) * longer < accuracy || halved >= DEEPEST {
        return middle.length(GAUSS_LEGENDRE_COEFFS_24_HALF);
    }
    let (one, other) = c.subdivide();
    length(&one, 0.5 * accuracy, halved + 1) + length(&other, 0.5 * accuracy, halved + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the library's own, to the last bits, for curves from straight to looped.
    #[test]
    fn lengths_and_places_are_those_of_the_library() {
        for turn in 0..40 {
            let by = f64::from(turn) * 9.0;
            let c = CubicBez::new(
                (0.0, 0.0),
                (40.0 + by, by),
                (60.0 - by, 2.0 * by),
                (100.0, by),
            );
            let (own, theirs) = (Measured(c).arclen(1e-8), c.arclen(1e-8));
            assert!((own - theirs).abs() <= 1e-12 * theirs, "{own} {theirs}");
            let half = [
                Measured(c).inv_arclen(0.5 * own, 1e-8),
                c.inv_arclen(0.5 * own, 1e-8),
            ];
            assert!((half[0] - half[1]).abs() < 1e-10, "{half:?}");
        }
    }
}
