//! Where the edges of pieces are sewn: places along every edge, so that what is joined has its
//! places in the same shares of its length.

use super::error::ToileError;
use crate::geometry::{Curve, Point};
use crate::piece::{Apexes, Dart, EdgeName, EdgeRef, Pattern, Piece, Seam};

/// A place that sewn edges share: a seam's number and the number of the place along it.
pub(super) type Stitch = (usize, usize);

/// A part of an edge between the mouths of darts.
#[derive(Debug, Clone)]
struct Run {
    curve: Curve,
    long: f64,
}

/// An edge as it is sewn: its runs, and the darts between them.
#[derive(Debug, Clone)]
pub(super) struct SewnEdge {
    runs: Vec<Run>,
    darts: Vec<Dart>,
}

/// A point of a piece's outline, with the stitch that holds it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sample {
    pub at: Point,
    pub stitch: Option<Stitch>,
}

/// What an outline runs along.
#[derive(Debug, Clone)]
pub(super) enum Stretch {
    /// Part of an edge.
    Edge(Vec<Sample>),
    /// In along the first leg of a dart and out along the second.
    Dart(Dart),
}

impl SewnEdge {
    pub fn of(piece: &Piece, name: &EdgeName) -> Result<Self, ToileError> {
        let edge = piece
            .outline()
            .edge(name)
            .ok_or_else(|| ToileError::unsewable(piece.name(), name.as_str()))?;
        let curve = edge.curve();
        let mut mouths: Vec<([f64; 2], Dart)> = Vec::new();
        for dart in piece
            .darts()
            .iter()
            .filter(|d| d.edge.as_ref() == Some(name))
        {
            if dart.intake() < SHUT || matches!(dart.apexes, Apexes::Two(..)) {
                continue;
            }
            let ends = [curve.joint_at(dart.legs[0]), curve.joint_at(dart.legs[1])];
            if let [Some(from), Some(to)] = ends {
                mouths.push(([from, to], dart.clone()));
            }
        }
        mouths.sort_by(|a, b| a.0[0].total_cmp(&b.0[0]));
        let (mut runs, mut darts, mut from) = (Vec::new(), Vec::new(), 0.0);
        for ([open, shut], dart) in mouths {
            runs.push(run(curve, from, open));
            darts.push(dart);
            from = shut;
        }
        runs.push(run(curve, from, curve.length()));
        Ok(Self { runs, darts })
    }

    /// Length as it is sewn.
    pub fn long(&self) -> f64 {
        self.runs.iter().map(|r| r.long).sum()
    }

    /// Where the runs end, along the sewn length: both ends and every dart.
    fn joints(&self) -> Vec<f64> {
        let mut joints = vec![0.0];
        let mut sum = 0.0;
        for run in &self.runs {
            sum += run.long;
            joints.push(sum);
        }
        joints
    }

    /// The outline along this edge with places at those sewn lengths, which hold all its joints.
    pub fn sampled(&self, places: &[(f64, Option<Stitch>)]) -> Vec<Stretch> {
        let mut stretches = Vec::new();
        let mut from = 0.0;
        for (index, run) in self.runs.iter().enumerate() {
            let to = from + run.long;
            let mine = places
                .iter()
                .filter(|(s, _)| *s > from - NEAR && *s < to + NEAR);
            let samples: Vec<Sample> = mine
                .filter_map(|(s, stitch)| {
                    let along = (s - from).max(0.0).min(run.long);
                    let at = if along <= NEAR {
                        run.curve.start()
                    } else if along >= run.long - NEAR {
                        run.curve.end()
                    } else {
                        run.curve.point_at(along).ok()?.0
                    };
                    Some(Sample {
                        at,
                        stitch: *stitch,
                    })
                })
                .collect();
            if run.long > NEAR {
                stretches.push(Stretch::Edge(samples));
            }
            if let Some(dart) = self.darts.get(index) {
                stretches.push(Stretch::Dart(dart.clone()));
            }
            from = to;
        }
        stretches
    }

    /// Places about `step` apart along an edge that is sewn to nothing.
    pub fn loose(&self, step: f64) -> Vec<(f64, Option<Stitch>)> {
        let joints = self.joints();
        between(&joints, step)
            .into_iter()
            .map(|s| (s, None))
            .collect()
    }
}

/// Darts narrower than this are not there, in mm.
pub(super) const SHUT: f64 = 0.05;
/// Places nearer than this are one, in mm.
const NEAR: f64 = 1e-6;

/// The part of a curve; where it cannot be had, a chord.
fn run(curve: &Curve, from: f64, to: f64) -> Run {
    let part = if from <= NEAR && to >= curve.length() - NEAR {
        Ok(curve.clone())
    } else {
        curve.part(from, to)
    };
    match part {
        Ok(curve) => Run {
            long: curve.length(),
            curve,
        },
        Err(_) => Run {
            curve: curve.clone(),
            long: 0.0,
        },
    }
}

/// Every joint, and even steps between them.
fn between(joints: &[f64], step: f64) -> Vec<f64> {
    let mut places = vec![];
    for (from, to) in joints.iter().zip(joints.iter().skip(1)) {
        let count = ((to - from) / step).round().max(1.0);
        let mut k = 0.0;
        while k < count {
            places.push(from + (to - from) * k / count);
            k += 1.0;
        }
    }
    places.extend(joints.last());
    places
}

/// One side of a seam: its edges one after another in the seam's direction.
struct Side<'a> {
    edges: Vec<(&'a EdgeRef, SewnEdge)>,
}

impl<'a> Side<'a> {
    fn of(pattern: &Pattern, refs: &'a [EdgeRef]) -> Result<Self, ToileError> {
        let edges = refs.iter().map(|edge| {
            let piece = pattern
                .piece(&edge.piece)
                .ok_or_else(|| ToileError::unsewable(&edge.piece, edge.edge.as_str()))?;
            Ok((edge, SewnEdge::of(piece, &edge.edge)?))
        });
        Ok(Self {
            edges: edges.collect::<Result<_, ToileError>>()?,
        })
    }

    fn long(&self) -> f64 {
        self.edges.iter().map(|(_, e)| e.long()).sum()
    }

    /// Joints along the whole side, in the seam's direction.
    fn joints(&self) -> Vec<f64> {
        let mut joints = vec![0.0];
        let mut from = 0.0;
        for (edge, sewn) in &self.edges {
            let long = sewn.long();
            let mut own = sewn.joints();
            if edge.against {
                own = own.into_iter().rev().map(|s| long - s).collect();
            }
            joints.extend(own.into_iter().skip(1).map(|s| from + s));
            from += long;
        }
        joints
    }
}

/// Where every sewn edge has its places: by piece and edge.
pub(super) type Places = Vec<((String, EdgeName), Vec<(f64, Option<Stitch>)>)>;

/// The places of a seam's edges: joints of both sides, those nearer than `step` / 3 matched, and
/// even steps between.
pub(super) fn places(
    pattern: &Pattern,
    number: usize,
    seam: &Seam,
    step: f64,
) -> Result<Places, ToileError> {
    let (a, b) = (Side::of(pattern, &seam.a)?, Side::of(pattern, &seam.b)?);
    let (long_a, long_b) = (a.long(), b.long());
    if !(long_a > NEAR && long_b > NEAR) {
        return Ok(Vec::new());
    }
    // Joints as shares of their own side.
    let shares = |side: &Side<'_>, long: f64| -> Vec<f64> {
        side.joints().into_iter().map(|s| s / long).collect()
    };
    let (mut knots, theirs) = (
        shares(&a, long_a)
            .into_iter()
            .map(|s| (s, None))
            .collect::<Vec<(f64, Option<f64>)>>(),
        shares(&b, long_b),
    );
    let near = step / 3.0 / long_a;
    let mut alone = Vec::new();
    for share in theirs {
        let best = knots
            .iter_mut()
            .filter(|k| k.1.is_none())
            .min_by(|p, q| (p.0 - share).abs().total_cmp(&(q.0 - share).abs()));
        match best {
            Some(knot) if (knot.0 - share).abs() < near => knot.1 = Some(share),
            _ => alone.push(share),
        }
    }
    let mut knots: Vec<(f64, f64)> = knots
        .into_iter()
        .map(|(s, t)| (s, t.unwrap_or(s)))
        .collect();
    knots.extend(alone.into_iter().map(|s| (s, s)));
    knots.sort_by(|p, q| p.0.total_cmp(&q.0));
    // Both sides go forward from knot to knot.
    knots.dedup_by(|next, last| next.0 - last.0 < 1e-9 || next.1 - last.1 < 1e-9);
    let mut pairs: Vec<(f64, f64)> = Vec::new();
    for (from, to) in knots.iter().zip(knots.iter().skip(1)) {
        let count = ((to.0 - from.0) * long_a / step).round().max(1.0);
        let mut k = 0.0;
        while k < count {
            let t = k / count;
            pairs.push((from.0 + (to.0 - from.0) * t, from.1 + (to.1 - from.1) * t));
            k += 1.0;
        }
    }
    pairs.push((1.0, 1.0));
    let mut all = Places::new();
    spread(
        &a,
        &pairs.iter().map(|p| p.0 * long_a).collect::<Vec<_>>(),
        number,
        &mut all,
    );
    spread(
        &b,
        &pairs.iter().map(|p| p.1 * long_b).collect::<Vec<_>>(),
        number,
        &mut all,
    );
    Ok(all)
}

/// Gives each edge of a side its places, in the outline's direction.
fn spread(side: &Side<'_>, along: &[f64], number: usize, all: &mut Places) {
    let mut from = 0.0;
    for (edge, sewn) in &side.edges {
        let long = sewn.long();
        let mine = along
            .iter()
            .enumerate()
            .filter(|(_, s)| **s > from - 1e-4 && **s < from + long + 1e-4);
        let mut own: Vec<(f64, Option<Stitch>)> = mine
            .map(|(index, s)| {
                let at = (s - from).max(0.0).min(long);
                (
                    if edge.against { long - at } else { at },
                    Some((number, index)),
                )
            })
            .collect();
        if edge.against {
            own.reverse();
        }
        all.push(((edge.piece.clone(), edge.edge.clone()), own));
        from += long;
    }
}
