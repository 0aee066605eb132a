//! A panel seam over the point of fullness: bent once on each piece, equally long on both.

use super::panel_leg::{swept, turned};
use crate::alterations::AlterationError;
use crate::geometry::{Curve, GeometryError, Point, Vec2, Which, along, angle_between, crossings};

/// The seam is bent over at most so many millimetres on either side of the point of fullness, and
/// over at most this share of the way to its next end (values from memory).
const BENT: f64 = 60.0;
const OF_WAY: f64 = 0.45;

/// The seam passes the point of fullness at most so far away, in millimetres: a style line takes
/// up the fullness of a point that it runs through or nearly through (about 25 mm are a value
/// from memory; a bust shows less).
const BESIDE: f64 = 8.0;

/// The edges leave the legs of their darts so unequally at most, in radians (two degrees).
const ASKEW: f64 = 0.035;

/// How often the bends are corrected at most, and how closely lengths and widths then agree, in
/// millimetres.
const ROUNDS: usize = 12;
const AGREE: f64 = 2e-6;

/// Lines that meet the seam nearer to one of its ends than this are met there, in millimetres.
const AT_END: f64 = 1.0;

/// A bowed seam comes to the point of fullness off the straight way by at most this share of its
/// turn there, so that it is bent one way, and by at least so many radians (one degree).
const OF_TURN: f64 = 0.7;
const LEAST_TURN: f64 = 0.0175;

/// Before an end with a direction of its own the seam is turned into that over twice this share of
/// the way from the point of fullness.
const TURNED_OVER: f64 = 0.3;

/// Step at which slopes are taken, in millimetres.
const STEP: f64 = 1e-3;

/// A seam from one place to another on both pieces, bent at a point of fullness.
pub(in crate::alterations) struct Corner<'a> {
    /// Where it comes from, on each piece.
    pub from: [Point; 2],
    /// The point of fullness.
    pub over: Point,
    /// Where it goes to, on each piece.
    pub to: [Point; 2],
    /// The direction in which it arrives there, and over how much at most it turns into that.
    pub arrives: (Option<Vec2>, f64),
    /// How the seam is bowed from its start to the point of fullness, on both pieces alike.
    pub bow: Bow,
    /// Lines across both pieces whose sewn length must stay.
    pub kept: &'a [&'a Curve],
}

/// How a seam is bowed off the straight way to a point of fullness, in radians: the way in which
/// it is bent there.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(in crate::alterations) struct Bow {
    /// How it leaves its start.
    pub off: f64,
    /// How it comes to the point of fullness.
    pub onto: f64,
    /// Whether it is bent clockwise, 1, or the other way, -1.
    pub sense: f64,
    /// Whether the seam has to be bent at the point evenly: otherwise one that is rounded into the
    /// axis of its dart will do.
    pub even: bool,
}

impl Bow {
    /// The bow that leaves its start by `off`, so shared that the seam stays bent one way: from
    /// these places over the point to these.
    pub fn sharing(off: f64, from: &[Point], over: Point, to: &[Point]) -> Self {
        let turns: Vec<f64> = from
            .iter()
            .flat_map(|from| to.iter().map(|to| angle_between(over - *from, *to - over)))
            .collect();
        let sense = turns.iter().sum::<f64>().signum();
        let least = turns
            .iter()
            .fold(f64::INFINITY, |least, t| least.min(t * sense));
        Self {
            off,
            onto: off.min(OF_TURN * least).max(LEAST_TURN),
            sense,
            even: false,
        }
    }

    /// The way from a place to another, with its direction there.
    pub fn way(&self, from: Point, (to, arrive): (Point, Vec2)) -> Result<Curve, GeometryError> {
        if self.off <= 0.0 {
            return Curve::line(from, to);
        }
        let leave = turned((to - from).normalize(), -self.sense * self.off);
        swept((from, leave), (to, arrive))
    }

    /// The direction in which the seam comes from a place to another.
    pub fn arrival(&self, from: Point, to: Point) -> Vec2 {
        let straight = (to - from).normalize();
        if self.off <= 0.0 {
            return straight;
        }
        turned(straight, self.sense * self.onto)
    }
}

/// The ways in which the corners may be moved, by side.
const FREE: [(Which, Vec2); 4] = [
    (Which::First, Vec2::new(1.0, 0.0)),
    (Which::First, Vec2::new(0.0, 1.0)),
    (Which::Second, Vec2::new(1.0, 0.0)),
    (Which::Second, Vec2::new(0.0, 1.0)),
];

/// How far the corners of the two edges are moved off the point of fullness.
type Moved = [Vec2; 2];

impl Corner<'_> {
    /// Draws it. The legs of the darts are equally long, but a corner rounded takes more from
    /// the sharper bend: both bends are moved, as little as will do, until the edges are equally
    /// long and every width across them is what it was. Where that leads too far from the point
    /// of fullness the bends are made shorter.
    pub fn bent(&self) -> Result<[Curve; 2], AlterationError> {
        for share in [1.0, 0.8, 0.65, 0.5, 0.35, 0.2, 0.1] {
            if let Some(bent) = self.solved(share)? {
                return Ok(bent);
            }
        }
        Err(AlterationError::First {
            why: "the two darts meet at so sharp an angle that no smooth seam runs through both"
                .to_owned(),
            advice: "move one of them opposite the other first (dart_relocation)".to_owned(),
        })
    }

    /// With bends of a share of the usual length; nothing when that does not come out.
    fn solved(&self, share: f64) -> Result<Option<[Curve; 2]>, GeometryError> {
        let sharp = Which::BOTH.map(|side| -> Result<Curve, GeometryError> {
            let arrives = self.over_the_point(side, self.over);
            self.way_in(side, (self.over, arrives))?
                .then(&Curve::line(self.over, *side.of(&self.to))?)
        });
        let [Ok(one), Ok(other)] = sharp else {
            return Ok(None);
        };
        let lines: Vec<(&Curve, f64)> = self
            .kept
            .iter()
            .filter(|line| self.crossed(line, [&one, &other]))
            .filter_map(|line| Some((*line, gap(line, [&one, &other])?)))
            .collect();
        let misses = |moved: Moved| -> Option<Vec<f64>> {
            let [one, other] = self.drawn(share, moved).ok()?;
            let mut misses = vec![one.length() - other.length()];
            for (line, wanted) in &lines {
                misses.push(gap(line, [&one, &other])? - wanted);
            }
            Some(misses)
        };
        let mut moved = self.through(share);
        for _ in 0..ROUNDS {
            let Some(now) = misses(moved) else {
                return Ok(None);
            };
            if now.iter().all(|miss| miss.abs() <= AGREE) {
                let curves = self.drawn(share, moved)?;
                let near = curves.iter().all(|c| c.nearest(self.over).0 <= BESIDE);
                let even = self.askew(moved).abs() <= ASKEW;
                return Ok((near && even).then_some(curves));
            }
            let mut slopes: Vec<Vec<f64>> = vec![Vec::new(); now.len()];
            for (side, way) in FREE {
                let Some(then) = misses(shifted(moved, side, way * STEP)) else {
                    return Ok(None);
                };
                for ((row, then), now) in slopes.iter_mut().zip(&then).zip(&now) {
                    row.push((then - now) / STEP);
                }
            }
            let Some(by) = least_change(&slopes, &now) else {
                return Ok(None);
            };
            for ((side, way), by) in FREE.into_iter().zip(by) {
                moved = shifted(moved, side, way * by);
            }
        }
        Ok(None)
    }

    /// Whether both edges cross a line, clear of their ends: at those they stay where they are.
    fn crossed(&self, line: &Curve, edges: [&Curve; 2]) -> bool {
        let clear = |place: Point| {
            let ends = self.from.iter().chain(&self.to);
            ends.into_iter().all(|end| end.distance(place) > AT_END)
        };
        edges.iter().all(|edge| {
            let met = crossings(line.segments(), edge.segments());
            met.first().is_some_and(|crossing| clear(crossing.point))
        })
    }

    /// The corners from which both bends run through the point of fullness.
    fn through(&self, share: f64) -> Moved {
        let [before, after] = self.reach(share);
        Which::BOTH.map(|side| {
            let (u, v) = self.ways(side);
            -(u * before + v * after) / 4.0
        })
    }

    /// By how much more one edge leaves its dart's leg than the other, at the end where that is
    /// most, in radians: the line that the seam crosses there would close with that corner.
    fn askew(&self, moved: Moved) -> f64 {
        let off = |ends: [Point; 2]| {
            let [one, other] = Which::BOTH.map(|side| {
                let (end, by) = (*side.of(&ends), *side.of(&moved));
                angle_between(self.over - end, self.over + by - end)
            });
            one - other
        };
        let (from, to) = (off(self.from), off(self.aims()));
        if from.abs() >= to.abs() { from } else { to }
    }

    /// Where the legs point beyond the bend: at the seam's ends, or where a direction is given there,
    /// so far before them that the seam turns into it in one bend.
    fn aims(&self) -> [Point; 2] {
        let (arrive, most) = self.arrives;
        self.to.map(|to| {
            let short = most.min(TURNED_OVER * to.distance(self.over));
            arrive.map_or(to, |arrive| to - arrive * short)
        })
    }

    /// Directions from the point of fullness to both ends.
    fn ways(&self, side: Which) -> (Vec2, Vec2) {
        (
            -self.over_the_point(side, self.over),
            (*side.of(&self.aims()) - self.over).normalize(),
        )
    }

    /// The direction in which the seam comes to its corner.
    fn over_the_point(&self, side: Which, corner: Point) -> Vec2 {
        self.bow.arrival(*side.of(&self.from), corner)
    }

    /// The seam from its start to a place on the way to the corner, with its direction there.
    fn way_in(&self, side: Which, to: (Point, Vec2)) -> Result<Curve, GeometryError> {
        self.bow.way(*side.of(&self.from), to)
    }

    /// Over how much of either leg the seam is bent: the same on both pieces.
    fn reach(&self, share: f64) -> [f64; 2] {
        let room = |ends: [Point; 2]| {
            let least = ends[0].distance(self.over).min(ends[1].distance(self.over));
            share * BENT.min(OF_WAY * least)
        };
        [room(self.from), room(self.aims())]
    }

    fn drawn(&self, share: f64, moved: Moved) -> Result<[Curve; 2], GeometryError> {
        Ok([
            self.edge(Which::First, share, moved[0])?,
            self.edge(Which::Second, share, moved[1])?,
        ])
    }

    /// One edge: straight, one even bend about its corner, straight.
    fn edge(&self, side: Which, share: f64, moved: Vec2) -> Result<Curve, GeometryError> {
        let to = *side.of(&self.to);
        let aim = *side.of(&self.aims());
        let corner = self.over + moved;
        let [before, after] = self.reach(share);
        let arrives = self.over_the_point(side, corner);
        let start = corner - arrives * before;
        let end = corner + (aim - corner).normalize() * after;
        let third = 2.0 / 3.0;
        let bend = Curve::cubic(
            start,
            start.lerp(corner, third),
            end.lerp(corner, third),
            end,
        )?;
        let round = along(aim, corner, aim.distance(to));
        let mut last = Curve::line(end, round)?;
        if self.arrives.0.is_some() {
            let into = Curve::cubic(round, round.lerp(aim, third), to.lerp(aim, third), to)?;
            last = last.then(&into)?;
        }
        let first = self.way_in(side, (start, arrives))?;
        first.then(&bend)?.then(&last)
    }
}

/// How far apart a line meets two edges, along the line; nothing where it misses one.
fn gap(line: &Curve, edges: [&Curve; 2]) -> Option<f64> {
    let met = edges.map(|edge| {
        let met = crossings(line.segments(), edge.segments());
        met.first().map(|crossing| line.length_to(crossing.first))
    });
    let [Some(one), Some(other)] = met else {
        return None;
    };
    Some(other - one)
}

fn shifted(mut moved: Moved, side: Which, by: Vec2) -> Moved {
    *side.of_mut(&mut moved) += by;
    moved
}

/// The least change of some numbers that takes every miss away, to first order: by Gauss on
/// the normal equations of the misses.
fn least_change(slopes: &[Vec<f64>], misses: &[f64]) -> Option<Vec<f64>> {
    let wide = slopes.first()?.len();
    let count = misses.len();
    let mut rows: Vec<Vec<f64>> = slopes
        .iter()
        .zip(misses)
        .map(|(one, miss)| {
            let dot = |other: &Vec<f64>| one.iter().zip(other).map(|(a, b)| a * b).sum();
            let mut row: Vec<f64> = slopes.iter().map(dot).collect();
            row.push(-miss);
            row
        })
        .collect();
    for pivot in 0..count {
        let open = rows.iter().enumerate().skip(pivot);
        let sizes: Option<Vec<(usize, f64)>> = open
            .map(|(index, row)| Some((index, row.get(pivot)?.abs())))
            .collect();
        let (best, size) = sizes?.into_iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
        if size < 1e-9 {
            return None;
        }
        rows.swap(pivot, best);
        let lead = rows.get(pivot)?.clone();
        for (index, row) in rows.iter_mut().enumerate() {
            if index != pivot {
                let factor = row.get(pivot)? / lead.get(pivot)?;
                for (value, lead) in row.iter_mut().zip(&lead) {
                    *value -= factor * lead;
                }
            }
        }
    }
    let mut change = vec![0.0; wide];
    for (index, (row, slopes)) in rows.iter().zip(slopes).enumerate() {
        let weight = row.last()? / row.get(index)?;
        for (change, slope) in change.iter_mut().zip(slopes) {
            *change += weight * slope;
        }
    }
    change.iter().all(|c| c.is_finite()).then_some(change)
}
