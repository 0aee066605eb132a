//! A piece divided into triangles, with what of it is sewn to what.

#![expect(
    clippy::indexing_slicing,
    reason = "rings name points that were gathered"
)]

use super::error::ToileError;
use super::stitches::{SHUT, Sample, Stitch, Stretch};
use super::triangles::{Region, divide};
use crate::geometry::Point;
use crate::piece::{Apexes, BodySide, EdgeName, EdgeRole, Piece};

/// A piece in triangles.
#[derive(Debug, Clone)]
pub(super) struct Panel {
    pub name: String,
    pub side: Option<BodySide>,
    /// The level of the waist in the drawing.
    pub waist: f64,
    /// Level lines by name.
    pub lines: Vec<(String, Vec<Point>)>,
    pub points: Vec<Point>,
    pub triangles: Vec<[usize; 3]>,
    /// Which points lie on which edge, in the outline's direction.
    pub edges: Vec<(EdgeName, EdgeRole, Vec<usize>)>,
    /// Points of seams with their stitches.
    pub stitches: Vec<(Stitch, usize)>,
    /// Points that the legs of darts bring together.
    pub pairs: Vec<[usize; 2]>,
    /// The direction of the warp in the drawing, of length one.
    pub warp: [f64; 2],
}

/// A ring or chain of points being gathered.
struct Gathering {
    points: Vec<Point>,
    lines: Vec<[usize; 2]>,
    step: f64,
}

impl Gathering {
    /// The number of a point: of one that is there already, if it is as near as that.
    fn point(&mut self, at: Point) -> usize {
        let found = self
            .points
            .iter()
            .position(|p| p.distance_squared(at) < 1e-8);
        found.unwrap_or_else(|| {
            self.points.push(at);
            self.points.len() - 1
        })
    }

    /// A straight line from one point to another in even steps.
    fn leg(&mut self, from: Point, to: Point, count: usize) -> Vec<usize> {
        (0..=count)
            .map(|k| {
                let at = from.lerp(to, k as f64 / count as f64);
                self.point(at)
            })
            .collect()
    }

    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few steps along a leg"
    )]
    fn count(&self, long: f64) -> usize {
        (long / self.step).round().max(2.0) as usize
    }
}

impl Panel {
    /// Divides a piece; `outline` has its edges in order.
    pub fn of(
        piece: &Piece,
        outline: Vec<(EdgeName, EdgeRole, Vec<Stretch>)>,
        step: f64,
    ) -> Result<Self, ToileError> {
        let mut g = Gathering {
            points: Vec::new(),
            lines: Vec::new(),
            step,
        };
        let (mut ring, mut edges, mut stitches, mut pairs) =
            (Vec::new(), Vec::new(), Vec::new(), Vec::new());
        for (name, role, stretches) in outline {
            let mut on_edge = Vec::new();
            for stretch in stretches {
                match stretch {
                    Stretch::Edge(samples) => {
                        for Sample { at, stitch } in samples {
                            let point = g.point(at);
                            ring.push(point);
                            on_edge.push(point);
                            stitches.extend(stitch.map(|s| (s, point)));
                        }
                    }
                    Stretch::Dart(dart) => {
                        let apex = dart.apex();
                        let count = g.count(dart.legs[0].distance(apex));
                        let one = g.leg(dart.legs[0], apex, count);
                        let other = g.leg(dart.legs[1], apex, count);
                        pairs.extend(one.iter().zip(&other).map(|(a, b)| [*a, *b]));
                        ring.extend(&one);
                        ring.extend(other.iter().rev());
                    }
                }
            }
            on_edge.dedup();
            edges.push((name, role, on_edge));
        }
        ring.dedup();
        if ring.len() > 1 && ring.first() == ring.last() {
            ring.pop();
        }
        let mut holes: Vec<Vec<usize>> = Vec::new();
        for dart in piece.darts() {
            let Apexes::Two(upper, lower) = dart.apexes else {
                continue;
            };
            if dart.intake() < SHUT {
                continue;
            }
            let side = |g: &mut Gathering, leg: Point, counts: (usize, usize)| -> Vec<usize> {
                let mut chain = g.leg(upper, leg, counts.0);
                chain.extend(g.leg(leg, lower, counts.1).into_iter().skip(1));
                chain
            };
            let counts = (
                g.count(upper.distance(dart.legs[0])),
                g.count(lower.distance(dart.legs[0])),
            );
            let one = side(&mut g, dart.legs[0], counts);
            let other = side(&mut g, dart.legs[1], counts);
            pairs.extend(one.iter().zip(&other).map(|(a, b)| [*a, *b]));
            let mut hole = one.clone();
            hole.extend(other.iter().rev().skip(1));
            hole.pop();
            holes.push(hole);
        }
        for loop_ in std::iter::once(&ring).chain(&holes) {
            for (a, b) in loop_.iter().zip(loop_.iter().cycle().skip(1)) {
                if a != b {
                    g.lines.push([*a, *b]);
                }
            }
        }
        let region = Region {
            ring: ring.iter().map(|&i| g.points[i]).collect(),
            holes: holes
                .iter()
                .map(|h| h.iter().map(|&i| g.points[i]).collect())
                .collect(),
        };
        let Gathering { points, lines, .. } = g;
        let divided = divide(points, &lines, step, &region);
        let (points, triangles) = divided.ok_or_else(|| ToileError::Crossed {
            piece: piece.name().to_owned(),
        })?;
        let grain = piece.grain()[1] - piece.grain()[0];
        let long = grain.hypot();
        let warp = if long > 0.0 {
            [grain.x / long, grain.y / long]
        } else {
            [0.0, -1.0]
        };
        let waist = piece.line("waist").map(|l| l.curve.start().y);
        let waist = waist.or_else(|| {
            piece
                .outline()
                .edge(&EdgeName::WAIST)
                .map(|e| e.ends().iter().map(|p| p.y).fold(f64::INFINITY, f64::min))
        });
        Ok(Self {
            name: piece.name().to_owned(),
            side: piece.side(),
            waist: waist.unwrap_or(0.0),
            lines: lines_of(piece),
            points,
            triangles,
            edges,
            stitches,
            pairs,
            warp,
        })
    }
}

/// Points along level lines, 4 mm apart.
fn lines_of(piece: &Piece) -> Vec<(String, Vec<Point>)> {
    let lines = piece.lines().iter().map(|line| {
        let long = line.curve.length();
        let mut points = Vec::new();
        let mut at = 0.0;
        while at < long {
            points.extend(line.curve.point_at(at).ok().map(|(p, _)| p));
            at += 4.0;
        }
        points.push(line.curve.end());
        (line.name.clone(), points)
    });
    lines.collect()
}
