//! A triangle mesh of a back above its waist, each point with what holds it.

use crate::geometry::ring::{distance, is_inside, sides};
use crate::geometry::{Curve, Point, Span, counted};
use crate::piece::{EdgeName, Piece};
use kurbo::{ParamCurve, PathSeg};

/// What holds a point of the mesh while the back gets shorter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::alterations) enum Hold {
    /// Nothing: inside, or on the armscye.
    Free,
    /// It slides along the fold.
    Fold,
    /// It stays: waist line and side seam.
    Still,
    /// It drops with the nape: the neckline.
    Neck,
    /// It lies on the shoulder, so far from the neck side point.
    Shoulder(f64),
}

/// A triangle mesh of a back from waist to neck, in the plane.
///
/// # Guarantees
/// Every triangle has an area; its corners are points of the mesh.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::alterations) struct BackMesh {
    pub points: Vec<Point>,
    pub holds: Vec<Hold>,
    pub triangles: Vec<[usize; 3]>,
    pub neck_side: Point,
    pub shoulder_point: Point,
    /// The points along the armscye, in order.
    pub armscye: Vec<usize>,
}

impl BackMesh {
    /// The mesh of a back in one piece, with about so many triangles along the fold; none when it
    /// has not the edges for it.
    pub fn of(piece: &Piece, rows: f64) -> Option<Self> {
        let edge = |name: &EdgeName| piece.outline().edge(name).map(|e| e.curve());
        let neckline = edge(&EdgeName::NECKLINE)?;
        let shoulder = edge(&EdgeName::SHOULDER)?;
        let armscye = edge(&EdgeName::ARMSCYE)?;
        let side = edge(&EdgeName::SIDE_SEAM)?;
        let waist = &piece.line("waist")?.curve;
        let (nape, level) = (neckline.start(), waist.start());
        let step = (level.y - nape.y) / rows;
        if !(step.is_finite() && step > 0.0) {
            return None;
        }
        let reach = shoulder.start().distance(shoulder.end());
        let side = side.part(0.0, side.nearest(waist.end()).1).ok()?;

        // The ring, each side without its last point: the next one starts there.
        let mut mesh = Self {
            points: Vec::new(),
            holds: Vec::new(),
            triangles: Vec::new(),
            neck_side: shoulder.start(),
            shoulder_point: shoulder.end(),
            armscye: Vec::new(),
        };
        mesh.run(&sampled(neckline, step), |_| Hold::Neck);
        let chord = Curve::line(shoulder.start(), shoulder.end()).ok()?;
        mesh.run(&sampled(&chord, step), |share| {
            Hold::Shoulder(share * reach)
        });
        let tip = mesh.points.len();
        mesh.run(&sampled(armscye, step), |share| {
            if share == 0.0 {
                Hold::Shoulder(reach)
            } else {
                Hold::Free
            }
        });
        mesh.armscye = (tip..=mesh.points.len()).collect();
        mesh.run(&sampled(&side, step), |_| Hold::Still);
        let waistline = Curve::line(side.end(), Point::new(0.0, level.y)).ok()?;
        mesh.run(&sampled(&waistline, step), |_| Hold::Still);
        let fold = Curve::line(Point::new(0.0, level.y), nape).ok()?;
        mesh.run(&sampled(&fold, step), |share| {
            if share == 0.0 {
                Hold::Still
            } else {
                Hold::Fold
            }
        });
        mesh.fill(step);
        (!mesh.triangles.is_empty()).then_some(mesh)
    }

    /// Adds the points of one side of the ring, but its last.
    fn run(&mut self, points: &[Point], hold: impl Fn(f64) -> Hold) {
        let count = points.len().saturating_sub(1);
        for (index, point) in points.iter().take(count).enumerate() {
            self.points.push(*point);
            self.holds.push(hold(index as f64 / count as f64));
        }
    }

    /// Fills the ring with points on a lattice of even triangles, and joins all of them.
    fn fill(&mut self, step: f64) {
        let ring = self.points.clone();
        let Some(start) = ring.first() else { return };
        let (mut low, mut high) = (*start, *start);
        for p in &ring {
            low = Point::new(low.x.min(p.x), low.y.min(p.y));
            high = Point::new(high.x.max(p.x), high.y.max(p.y));
        }
        let rise = step * 0.75_f64.sqrt();
        let (mut row, mut y) = (0u32, low.y + 0.5 * rise);
        while y < high.y {
            let mut x = low.x + if row % 2 == 0 { 0.5 } else { 1.0 } * step;
            while x < high.x {
                let p = Point::new(x, y);
                if is_inside(&ring, p) && distance(sides(&ring), p) > 0.55 * step {
                    self.points.push(p);
                    self.holds.push(Hold::Free);
                }
                x += step;
            }
            row += 1;
            y += rise;
        }
        let plain: Vec<delaunator::Point> = self
            .points
            .iter()
            .map(|p| delaunator::Point { x: p.x, y: p.y })
            .collect();
        let joined = delaunator::triangulate(&plain).triangles;
        let (triangles, _) = joined.as_chunks();
        for &corners in triangles {
            #[expect(
                clippy::indexing_slicing,
                reason = "a triangulation names points that it was given"
            )]
            let [p, q, r] = corners.map(|i: usize| self.points[i]);
            let middle = Point::new((p.x + q.x + r.x) / 3.0, (p.y + q.y + r.y) / 3.0);
            let twice = (q - p).cross(r - p).abs();
            if twice > 1e-6 * step * step && is_inside(&ring, middle) {
                self.triangles.push(corners);
            }
        }
    }
}

/// Points along a curve about `step` apart, both ends among them.
fn sampled(curve: &Curve, step: f64) -> Vec<Point> {
    let mut points = vec![curve.start()];
    for segment in curve.segments() {
        let around = match segment {
            PathSeg::Cubic(c) => c.p0.distance(c.p1) + c.p1.distance(c.p2) + c.p2.distance(c.p3),
            other => other.start().distance(other.end()),
        };
        let count = Span::from_low(1.0, 64.0).nearest((around / step).ceil());
        points.extend((1..=counted(count)).map(|i| segment.eval(i as f64 / count)));
    }
    points
}
