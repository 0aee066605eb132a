//! Where one outline may lie beside another: exactly, by the sides of their no-fit polygon.
//!
//! The shifts at which one outline overlaps another are the sum of the other and of the one reflected in
//! the origin (Minkowski's). Its boundary lies among the sides of the convolution of both outlines: each
//! corner of one moved along the sides of the other that its turn sweeps over, backward where it turns
//! inward. Where this winds round a shift, they overlap (Guibas, Ramshaw and Stolfi 1983, from memory);
//! along a line across it that is counted from crossing to crossing. What lies between is room, also in
//! a hollow.

use crate::geometry::{Point, Vec2, with_next};

/// What shares no more than that only touches, in millimetres.
const TOUCHES: f64 = 1e-6;

/// Within what a corner lies on a line, in millimetres.
const ON_LINE: f64 = 1e-8;

/// One side of the convolution: its levels, where it begins at the lower one, how far it goes along the
/// cloth for each millimetre across it, and how often it winds round what lies to its right.
#[derive(Debug, Clone, Copy)]
struct Side {
    low: f64,
    high: f64,
    along: f64,
    slope: f64,
    winds: i32,
}

/// The room that an outline leaves another.
#[derive(Debug, Clone, Default)]
pub(super) struct RoomBeside {
    /// The lowest first.
    sides: Vec<Side>,
}

/// Shifts along the cloth at which two outlines overlap: open intervals in order, apart from one
/// another.
pub(super) type Overlaps = Vec<(f64, f64)>;

impl RoomBeside {
    /// What one outline, which stays, leaves another; both simple and of positive area.
    pub(super) fn new(fixed: &[Point], mine: &[Point]) -> Self {
        let mine: Vec<Point> = mine.iter().map(|p| Point::new(-p.x, -p.y)).collect();
        let mut sides = Vec::new();
        // Of two sides that run the same way, the one of the fixed outline comes first.
        sweep(
            fixed,
            &mine,
            |from, side, to| from <= side && side < to,
            &mut sides,
        );
        sweep(
            &mine,
            fixed,
            |from, side, to| from < side && side <= to,
            &mut sides,
        );
        sides.sort_unstable_by(|a, b| a.low.total_cmp(&b.low));
        Self { sides }
    }

    /// How many sides there are.
    pub(super) fn count(&self) -> usize {
        self.sides.len()
    }

    /// The least and the greatest shift across at which they overlap.
    pub(super) fn levels(&self) -> [f64; 2] {
        let low = self.sides.first().map_or(0.0, |side| side.low);
        [
            low,
            self.sides.iter().map(|side| side.high).fold(low, f64::max),
        ]
    }

    /// The shifts along the cloth at which the moved outline, at a shift across, overlaps the other.
    pub(super) fn overlaps(&self, across: f64) -> Overlaps {
        let mut crossings = Vec::new();
        if self.cross(across, &mut crossings) {
            // Where a corner lies on the line, the outlines overlap if they do on both sides of it.
            let mut beside = |off: f64| {
                crossings.clear();
                self.cross(across + off, &mut crossings);
                wound(&mut crossings)
            };
            let (below, above) = (beside(-2.0 * ON_LINE), beside(2.0 * ON_LINE));
            return common(&below, &above);
        }
        wound(&mut crossings)
    }

    /// Where sides cross a line; says whether a corner lies on it.
    fn cross(&self, across: f64, found: &mut Vec<(f64, i32)>) -> bool {
        let mut on_corner = false;
        for side in &self.sides {
            if side.low > across + ON_LINE {
                break;
            }
            if side.high < across - ON_LINE {
                continue;
            }
            on_corner |= side.low > across - ON_LINE || side.high < across + ON_LINE;
            if side.low <= across && across < side.high {
                found.push((side.along + (across - side.low) * side.slope, side.winds));
            }
        }
        on_corner
    }
}

/// Adds the sides of `other` moved along with the corners of `ring`, where these sweep over them.
fn sweep(
    ring: &[Point],
    other: &[Point],
    between: impl Fn(f64, f64, f64) -> bool,
    found: &mut Vec<Side>,
) {
    let others: Vec<(Point, Vec2, f64)> = with_next(other)
        .map(|(a, b)| (*a, *b - *a, heading(*b - *a)))
        .collect();
    let ways: Vec<f64> = with_next(ring).map(|(a, b)| heading(*b - *a)).collect();
    let before = ways.iter().cycle().skip(ways.len().saturating_sub(1));
    for ((corner, from), to) in ring.iter().zip(before).zip(&ways) {
        let turn = if to < from {
            to + TURN - from
        } else {
            to - from
        };
        let (from, to, winds) = if turn < TURN / 2.0 {
            (*from, *to, 1)
        } else {
            (*to, *from, -1)
        };
        for (start, side, way) in &others {
            let swept = if from <= to {
                between(from, *way, to)
            } else {
                between(from, *way, TURN) || between(-1.0, *way, to)
            };
            if swept && side.y != 0.0 {
                // The sum of both corners in the same order from either outline.
                let a = Point::new(corner.x + start.x, corner.y + start.y);
                let end = *start + *side;
                let b = Point::new(corner.x + end.x, corner.y + end.y);
                add(a, b, winds, found);
            }
        }
    }
}

fn add(a: Point, b: Point, winds: i32, found: &mut Vec<Side>) {
    // Whoever comes from the left enters where it goes down.
    let (low, high, winds) = if a.y < b.y {
        (a, b, -winds)
    } else {
        (b, a, winds)
    };
    if low.y < high.y {
        found.push(Side {
            low: low.y,
            high: high.y,
            along: low.x,
            slope: (high.x - low.x) / (high.y - low.y),
            winds,
        });
    }
}

/// A whole turn, as headings are counted.
const TURN: f64 = 4.0;

/// Which way a side runs: from 0 to 4 over a whole turn, growing with the angle.
fn heading(way: Vec2) -> f64 {
    let share = way.y / (way.x.abs() + way.y.abs()).max(f64::MIN_POSITIVE);
    if way.x < 0.0 {
        2.0 - share
    } else if share < 0.0 {
        TURN + share
    } else {
        share
    }
}

/// The intervals that are wound round, from crossings in any order.
fn wound(crossings: &mut [(f64, i32)]) -> Overlaps {
    crossings.sort_unstable_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)));
    let mut found: Overlaps = Vec::new();
    let (mut times, mut from) = (0, 0.0);
    for &(at, winds) in crossings.iter() {
        let before = times;
        times += winds;
        if before <= 0 && times > 0 {
            from = at;
        } else if before > 0 && times <= 0 {
            match found.last_mut() {
                Some(last) if from - last.1 < TOUCHES => last.1 = at,
                _ if at - from > TOUCHES => found.push((from, at)),
                _ => {}
            }
        }
    }
    found
}

/// What two lists of intervals share.
fn common(one: &Overlaps, other: &Overlaps) -> Overlaps {
    let mut found = Vec::new();
    for &(low, high) in one {
        for &(from, to) in other {
            let (low, high) = (low.max(from), high.min(to));
            if high - low > TOUCHES {
                found.push((low, high));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn outline(points: &[(f64, f64)]) -> Vec<Point> {
        points.iter().map(|p| Point::from(*p)).collect()
    }

    fn overlaps(mine: &[Point], across: f64, fixed: &[Point]) -> Overlaps {
        RoomBeside::new(fixed, mine).overlaps(across)
    }

    #[test]
    fn a_square_finds_room_on_both_sides_and_in_a_hollow() {
        let square = outline(&[(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)]);
        assert_eq!(&*overlaps(&square, 0.0, &square), &[(-10.0, 10.0)]);
        assert_eq!(&*overlaps(&square, 10.0, &square), &[]);
        // A trough 12 wide between two walls 5 thick, on a floor 5 high.
        let trough = outline(&[
            (0.0, 0.0),
            (22.0, 0.0),
            (22.0, 30.0),
            (17.0, 30.0),
            (17.0, 5.0),
            (5.0, 5.0),
            (5.0, 30.0),
            (0.0, 30.0),
        ]);
        let inside = overlaps(&square, 5.0, &trough);
        assert_eq!(&*inside, &[(-10.0, 5.0), (7.0, 22.0)]);
        assert_eq!(&*overlaps(&square, 4.0, &trough), &[(-10.0, 22.0)]);
    }

    #[test]
    fn slanting_sides_meet_where_they_touch() {
        let triangle = outline(&[(0.0, 0.0), (10.0, 0.0), (0.0, 10.0)]);
        let turned = outline(&[(10.0, 10.0), (0.0, 10.0), (10.0, 0.0)]);
        let shifts = overlaps(&turned, 0.0, &triangle);
        assert_eq!(shifts.len(), 1);
        assert!((shifts[0].1 - 0.0).abs() < 1e-7, "they make a square");
    }
}
