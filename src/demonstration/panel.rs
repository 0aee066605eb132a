//! Panels of paper: a ring cut in two along a run, again and again.

use super::rings::{is_inside, nearest_on, signed_area, steps};
use crate::geometry::{Point, Rigid, with_next};

/// Where a side of a panel comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Origin {
    /// The edge of the old outline of that number.
    Edge(usize),
    /// The mouth of a dart.
    Mouth,
    /// The cut.
    Cut,
}

/// A side of a panel: it runs to where the next one starts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PanelSide {
    pub start: Point,
    pub origin: Origin,
}

/// A panel of paper, cut from a piece, and how it was moved as a whole.
///
/// ```
/// use blockwright::demonstration::Panel;
/// fn moves(panels: &[Panel]) -> usize { panels.iter().filter(|panel| panel.moves()).count() }
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    pub(super) sides: Vec<PanelSide>,
    pub(super) motion: Rigid,
}

/// A cut has to begin and end so near to the edge of the paper, in millimetres.
const REACH: f64 = 2.0;

/// Points nearer than this are one, in millimetres.
const SAME: f64 = 1e-6;

impl Panel {
    /// Where it lay on the old piece: straight sides in order, clockwise on the page, in
    /// millimetres.
    #[must_use]
    pub fn ring(&self) -> Vec<Point> {
        self.sides.iter().map(|side| side.start).collect()
    }

    /// Where it lies after it was moved.
    #[must_use]
    pub fn moved_ring(&self) -> Vec<Point> {
        let moved = |side: &PanelSide| self.motion.apply(side.start);
        self.sides.iter().map(moved).collect()
    }

    /// How it was moved.
    #[must_use]
    pub fn motion(&self) -> Rigid {
        self.motion
    }

    /// Whether it was moved at all.
    #[must_use]
    pub fn moves(&self) -> bool {
        self.motion != Rigid::IDENTITY
    }

    /// Its sides with where they come from, where they lay on the old piece.
    pub(super) fn tagged(&self) -> impl Iterator<Item = (Point, Point, Origin)> + '_ {
        with_next(&self.sides).map(|(side, next)| (side.start, next.start, side.origin))
    }

    pub(super) fn surrounds(&self, p: Point) -> bool {
        is_inside(&self.ring(), p)
    }

    /// How far a point lies from its edge, and where on which side that is.
    fn locate(&self, p: Point) -> Option<(usize, Point, f64)> {
        let near = self.tagged().enumerate().map(|(index, (a, b, _))| {
            let on = nearest_on((a, b), p).0;
            (index, on, on.distance(p))
        });
        near.min_by(|a, b| a.2.total_cmp(&b.2))
    }

    /// The number of the side that starts at a point of its edge, after that is made a corner.
    fn corner(&mut self, p: Point) -> Option<usize> {
        let (index, on, far) = self.locate(p)?;
        if far > REACH {
            return None;
        }
        let count = self.sides.len();
        let next = (index + 1) % count;
        let starts = |at: usize| self.sides.get(at).map(|side| side.start);
        if starts(index)?.distance(on) < SAME {
            return Some(index);
        }
        if starts(next)?.distance(on) < SAME {
            return Some(next);
        }
        let origin = self.sides.get(index)?.origin;
        self.sides
            .insert(index + 1, PanelSide { start: on, origin });
        Some(index + 1)
    }

    /// Cut in two along a run from edge to edge: the part on its left as one walks along it with the
    /// page upright, then that on its right. None when the run does not reach from edge to edge.
    pub(super) fn split(&self, run: &[Point]) -> Option<([Self; 2], Vec<Point>)> {
        let (&first, &last) = (run.first()?, run.last()?);
        let mut whole = self.clone();
        whole.corner(first)?;
        let to = whole.corner(last)?;
        let to_point = whole.sides.get(to)?.start;
        let from = whole.corner(first)?;
        let from_point = whole.sides.get(from)?.start;
        let to = whole
            .sides
            .iter()
            .position(|s| s.start.distance(to_point) < SAME)?;
        if from == to {
            return None;
        }
        let mut path = run.to_vec();
        *path.first_mut()? = from_point;
        *path.last_mut()? = to_point;
        let walk = |start: usize, end: usize| {
            let count = whole.sides.len();
            let long = (end + count - start) % count;
            whole.sides.iter().cycle().skip(start).take(long).copied()
        };
        let cut = |start: &Point| PanelSide {
            start: *start,
            origin: Origin::Cut,
        };
        // Clockwise from the start of the cut to its end, and back along it; and the rest.
        let short = path.len().saturating_sub(1);
        let left: Vec<_> = walk(from, to)
            .chain(path.iter().rev().take(short).map(cut))
            .collect();
        let right: Vec<_> = walk(to, from)
            .chain(path.iter().take(short).map(cut))
            .collect();
        let part = |sides| Self {
            sides,
            motion: self.motion,
        };
        let parts = [part(left), part(right)];
        let sound = parts.iter().all(|p| signed_area(&p.ring()) > 0.0);
        sound.then_some((parts, path))
    }
}

/// A point well within a run: the middle of its longest step.
pub(super) fn middle(run: &[Point]) -> Option<Point> {
    steps(run)
        .max_by(|a, b| {
            a.0.distance_squared(a.1)
                .total_cmp(&b.0.distance_squared(b.1))
        })
        .map(|(a, b)| a.midpoint(b))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Panel {
        let corners = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)];
        let sides = corners.iter().enumerate().map(|(k, &at)| PanelSide {
            start: Point::from(at),
            origin: Origin::Edge(k),
        });
        Panel {
            sides: sides.collect(),
            motion: Rigid::IDENTITY,
        }
    }

    #[test]
    fn a_cut_makes_two_of_one() {
        let path = [(4.0, 0.0), (6.0, 5.0), (10.0, 5.0)].map(Point::from);
        let ([left, right], run) = square().split(&path).unwrap();
        assert_eq!(run, path);
        let areas = [&left, &right].map(|p| signed_area(&p.ring()));
        assert!(
            (areas[0] + areas[1] - 100.0).abs() < 1e-9 && areas[0] == 25.0,
            "{areas:?}"
        );
        assert!(left.surrounds(Point::new(9.0, 1.0)) && right.surrounds(Point::new(1.0, 9.0)));
        let edges = |p: &Panel| p.tagged().filter(|s| s.2 != Origin::Cut).count();
        assert_eq!((edges(&left), edges(&right)), (2, 4));
    }

    #[test]
    fn a_cut_has_to_reach_the_edge() {
        let short = [(4.0, 0.0), (6.0, 5.0)].map(Point::from);
        assert!(square().split(&short).is_none());
    }
}
