//! Where one outline may lie beside another: exactly, by level stripes.
//!
//! An outline is cut into stripes along the cloth between the levels of its corners, so that each
//! stripe is a trapezium. Two trapezia that share levels overlap for one interval of shifts along
//! the cloth; all intervals of all pairs are the shifts at which the outlines overlap. What lies
//! between them is room, also inside a hollow.

use crate::geometry::{Point, Span, ring};

/// Stripes lower than this are none: what shares no more than that only touches, in millimetres.
const TOUCHES: f64 = 1e-6;

/// One trapezium: its lower and upper level across the cloth, and where its sides lie along the
/// cloth at both.
#[derive(Debug, Clone, Copy)]
struct Stripe {
    levels: [f64; 2],
    left: [f64; 2],
    right: [f64; 2],
}

impl Stripe {
    fn at(&self, side: &[f64; 2], level: f64) -> f64 {
        let [low, high] = self.levels;
        let t = Span::SHARES.nearest((level - low) / (high - low));
        side[0] + t * (side[1] - side[0])
    }
}

/// An outline in stripes, ordered by level.
#[derive(Debug, Clone)]
pub(super) struct Striped {
    stripes: Vec<Stripe>,
}

/// Shifts along the cloth at which two outlines overlap: open intervals in order, apart from one
/// another.
pub(super) type Overlaps = Box<[(f64, f64)]>;

impl Striped {
    /// A simple outline in stripes.
    pub(super) fn new(points: &[Point]) -> Self {
        let mut levels: Vec<f64> = points.iter().map(|p| p.y).collect();
        levels.sort_by(f64::total_cmp);
        levels.dedup_by(|a, b| *a - *b < TOUCHES);
        let mut stripes = Vec::new();
        for &[low, high] in levels.array_windows() {
            let middle = 0.5 * (low + high);
            let mut sides: Vec<(f64, [f64; 2])> = ring::sides(points)
                .filter(|(a, b)| (a.y <= middle) != (b.y <= middle))
                .map(|(a, b)| {
                    let at = |level: f64| {
                        let t = Span::SHARES.nearest((level - a.y) / (b.y - a.y));
                        a.x + t * (b.x - a.x)
                    };
                    (at(middle), [at(low), at(high)])
                })
                .collect();
            sides.sort_by(|a, b| a.0.total_cmp(&b.0));
            let (twos, _) = sides.as_chunks();
            stripes.extend(twos.iter().map(|&[(_, left), (_, right)]| Stripe {
                levels: [low, high],
                left,
                right,
            }));
        }
        Self { stripes }
    }

    /// The shifts along the cloth at which this outline, moved by `across`, overlaps another.
    pub(super) fn overlaps(&self, across: f64, other: &Self) -> Overlaps {
        let mut found: Vec<(f64, f64)> = Vec::new();
        let mut mine = self.stripes.as_slice();
        for fixed in &other.stripes {
            let [low, high] = fixed.levels.map(|level| level - across);
            while let [first, onward @ ..] = mine
                && first.levels[1] <= low + TOUCHES
            {
                mine = onward;
            }
            for mine in mine {
                if mine.levels[0] >= high - TOUCHES {
                    break;
                }
                let ends = [mine.levels[0].max(low), mine.levels[1].min(high)];
                if ends[1] - ends[0] <= TOUCHES {
                    continue;
                }
                let shifts = ends.map(|level| {
                    (
                        fixed.at(&fixed.left, level + across) - mine.at(&mine.right, level),
                        fixed.at(&fixed.right, level + across) - mine.at(&mine.left, level),
                    )
                });
                found.push((shifts[0].0.min(shifts[1].0), shifts[0].1.max(shifts[1].1)));
            }
        }
        found.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut merged: Vec<(f64, f64)> = Vec::new();
        for (low, high) in found {
            match merged.last_mut() {
                Some(last) if low < last.1 => last.1 = last.1.max(high),
                _ => merged.push((low, high)),
            }
        }
        merged.into_boxed_slice()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn striped(points: &[(f64, f64)]) -> Striped {
        Striped::new(&points.iter().map(|p| Point::from(*p)).collect::<Vec<_>>())
    }

    #[test]
    fn a_square_finds_room_on_both_sides_and_in_a_hollow() {
        let square = striped(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]);
        assert_eq!(&*square.overlaps(0.0, &square), &[(-10.0, 10.0)]);
        assert_eq!(&*square.overlaps(10.0, &square), &[]);
        // A trough 12 wide between two walls 5 thick, on a floor 5 high.
        let trough = striped(&[
            (0.0, 0.0),
            (22.0, 0.0),
            (22.0, 30.0),
            (17.0, 30.0),
            (17.0, 5.0),
            (5.0, 5.0),
            (5.0, 30.0),
            (0.0, 30.0),
        ]);
        let inside = square.overlaps(5.0, &trough);
        assert_eq!(&*inside, &[(-10.0, 5.0), (7.0, 22.0)]);
        assert_eq!(&*square.overlaps(4.0, &trough), &[(-10.0, 22.0)]);
    }

    #[test]
    fn slanting_sides_meet_where_they_touch() {
        let triangle = striped(&[(0.0, 0.0), (10.0, 0.0), (0.0, 10.0)]);
        let turned = striped(&[(10.0, 10.0), (0.0, 10.0), (10.0, 0.0)]);
        let shifts = turned.overlaps(0.0, &triangle);
        assert_eq!(shifts.len(), 1);
        assert!((shifts[0].1 - 0.0).abs() < 1e-9, "they make a square");
    }
}
