//! Law: an armscye and a neckline bend one way only, their darts closed.
//!
//! Both are hollows around a part of the body. Where such a line bends back, cloth stands off or
//! pulls, and the eye sees a wave. Judged is how far a line turns against its own way, summed over
//! its whole length, corners included; the exact turn of every cubic between its inflections.

use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::{Curve, Vec2, angle_between, arriving, leaving};
use crate::piece::{EdgeName, Pattern};
use kurbo::{CubicBez, PathSeg};
use std::ops::ControlFlow;
use thiserror::Error;

/// A hollow line that bends back.
///
/// ```
/// use blockwright::invariants::BendsBack;
/// let wave = BendsBack { piece: "back".into(), edge: "armscye".into(), back: 0.087, tolerance: 0.035 };
/// assert!(wave.to_string().starts_with("back armscye bends back by 4.98°"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error(
    "{piece} {edge} bends back by {:.2}° in all; a hollow line bends one way (within {:.2}°)",
    back.to_degrees(), tolerance.to_degrees()
)]
pub struct BendsBack {
    /// Name of the piece.
    pub piece: String,
    /// Name of the edge.
    pub edge: String,
    /// By how much it turns against its own way in all, in radians.
    pub back: f64,
    /// The turn allowed, in radians.
    pub tolerance: f64,
}

pub(super) const LAW: Law = Law {
    name: "one_way",
    says: "an armscye and a neckline bend one way only, their darts closed",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        for edge in [EdgeName::ARMSCYE, EdgeName::NECKLINE] {
            let back = bends_back(&piece.closed_edge(&edge));
            if super::tolerances::beyond(back, tolerances.bend) {
                let fault = BendsBack {
                    piece: piece.name().to_owned(),
                    edge: edge.to_string(),
                    back,
                    tolerance: tolerances.bend,
                };
                report(fault.into())?;
            }
        }
    }
    ControlFlow::Continue(())
}

/// By how much a line in several parts turns against the way in which it turns most, in radians.
pub(crate) fn bends_back(parts: &[Curve]) -> f64 {
    let mut ways = Ways::default();
    let mut before: Option<Vec2> = None;
    for segment in parts.iter().flat_map(Curve::segments) {
        let onward = leaving(segment);
        if onward == Vec2::ZERO {
            continue;
        }
        if let Some(before) = before {
            ways.add(angle_between(before, onward));
        }
        match segment {
            PathSeg::Cubic(cubic) => cubic_turns(cubic, &mut ways),
            PathSeg::Quad(_) | PathSeg::Line(_) => {
                ways.add(angle_between(onward, arriving(segment)));
            }
        }
        before = Some(arriving(segment));
    }
    ways.left.min(ways.right)
}

/// The turn to either side, in radians.
#[derive(Default)]
struct Ways {
    left: f64,
    right: f64,
}

impl Ways {
    fn add(&mut self, turn: f64) {
        if turn > 0.0 {
            self.right += turn;
        } else {
            self.left -= turn;
        }
    }
}

/// The turns of a cubic between its inflections. Between two of them it may turn by more than
/// half a circle, so that it is cut in four besides.
fn cubic_turns(cubic: &CubicBez, ways: &mut Ways) {
    let (a, b, c) = (
        cubic.p1 - cubic.p0,
        cubic.p2 - cubic.p1,
        cubic.p3 - cubic.p2,
    );
    // The first derivative crossed with the second, but for a factor:
    // (a × b) (1 - t)² + (a × c) (1 - t) t + (b × c) t².
    let (first, middle, last) = (a.cross(b), a.cross(c), b.cross(c));
    let (square, linear) = (first - middle + last, middle - 2.0 * first);
    let mut cuts = vec![0.0, 0.25, 0.5, 0.75, 1.0];
    let under = linear * linear - 4.0 * square * first;
    if under >= 0.0 {
        // Without the cancelling of near numbers.
        let sum = -0.5 * (linear + under.sqrt().copysign(linear));
        cuts.extend([sum / square, first / sum]);
    }
    cuts.retain(|cut| (0.0..=1.0).contains(cut));
    cuts.sort_by(f64::total_cmp);
    let direction = |t: f64| a * ((1.0 - t) * (1.0 - t)) + b * (2.0 * t * (1.0 - t)) + c * (t * t);
    let mut before = leaving(&PathSeg::Cubic(*cubic));
    for cut in cuts {
        let onward = direction(cut);
        // A handle of no length has no direction there.
        if onward.hypot() > crate::geometry::tolerance::POINT {
            ways.add(angle_between(before, onward));
            before = onward;
        }
    }
    ways.add(angle_between(before, arriving(&PathSeg::Cubic(*cubic))));
}

impl Explain for BendsBack {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(format!("{} {}", self.piece, self.edge))
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Point;

    fn cubic(points: [(f64, f64); 4]) -> Curve {
        let [a, b, c, d] = points.map(Point::from);
        Curve::cubic(a, b, c, d).unwrap()
    }

    #[test]
    fn a_wave_turns_back_by_half_of_its_turning() {
        // Leaves and arrives level, as high as half its length: it turns as far back as on.
        let wave = cubic([(0.0, 0.0), (50.0, 0.0), (50.0, 100.0), (100.0, 100.0)]);
        let steepest = (1.5f64 * 100.0).atan2(0.75 * 100.0);
        assert!((bends_back(&[wave]) - steepest).abs() < 0.02);
    }

    #[test]
    fn an_arc_a_line_and_a_loop_turn_one_way() {
        let arc = cubic([(0.0, 0.0), (0.0, 55.0), (45.0, 100.0), (100.0, 100.0)]);
        assert!(bends_back(std::slice::from_ref(&arc)) < 1e-12);
        assert!(bends_back(&[arc.reversed()]) < 1e-12);
        let line = Curve::line(Point::ORIGIN, Point::new(10.0, 4.0)).unwrap();
        assert!(bends_back(&[line]) < 1e-12);
        let curl = cubic([(0.0, 0.0), (200.0, 0.0), (-100.0, 80.0), (60.0, -60.0)]);
        assert!(bends_back(&[curl]) < 1e-9);
    }

    #[test]
    fn a_corner_counts() {
        let corner = |x: f64| {
            let points = [(0.0, 0.0), (50.0, 0.0), (100.0, x), (150.0, 0.0)].map(Point::from);
            bends_back(&[Curve::polyline(&points).unwrap()])
        };
        assert!(
            (corner(5.0) - 0.1f64.atan()).abs() < 1e-3,
            "{}",
            corner(5.0)
        );
        assert!(corner(0.0) < 1e-12);
    }
}
