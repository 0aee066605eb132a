//! A flat region divided into triangles.

#![expect(
    clippy::indexing_slicing,
    reason = "triangles name points that were given"
)]

use super::space::within;
use crate::geometry::Point;
use kurbo::Vec2;
use spade::{ConstrainedDelaunayTriangulation, Point2, Triangulation as _};

/// Rounds in which the points inside move to the middle of their neighbours.
const SMOOTHING: usize = 3;

/// A ring and the holes in it.
#[derive(Debug, Clone)]
pub(super) struct Region {
    pub ring: Vec<Point>,
    pub holes: Vec<Vec<Point>>,
}

impl Region {
    fn holds(&self, p: Point) -> bool {
        inside(&self.ring, p) && !self.holes.iter().any(|h| inside(h, p))
    }

    fn clear(&self, p: Point, by: f64) -> bool {
        std::iter::once(&self.ring).chain(&self.holes).all(|ring| {
            ring.iter()
                .zip(ring.iter().cycle().skip(1))
                .all(|(a, b)| off(p, *a, *b) > by)
        })
    }
}

fn inside(ring: &[Point], p: Point) -> bool {
    let mut odd = false;
    for (a, b) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        if (a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y) {
            odd = !odd;
        }
    }
    odd
}

fn off(p: Point, a: Point, b: Point) -> f64 {
    let (edge, to) = (b - a, p - a);
    let long = edge.hypot2();
    let share = if long > 0.0 {
        within(to.dot(edge) / long, 0.0, 1.0)
    } else {
        0.0
    };
    p.distance(a.lerp(b, share))
}

/// The points of a region's border with more on a lattice of even triangles inside, evened out, and the
/// triangles between them. `lines` are kept as edges: none where they cross.
pub(super) fn divide(
    mut points: Vec<Point>,
    lines: &[[usize; 2]],
    step: f64,
    region: &Region,
) -> Option<(Vec<Point>, Vec<[usize; 3]>)> {
    let fixed = points.len();
    let (mut low, mut high) = (*region.ring.first()?, *region.ring.first()?);
    for p in &region.ring {
        low = Point::new(low.x.min(p.x), low.y.min(p.y));
        high = Point::new(high.x.max(p.x), high.y.max(p.y));
    }
    let rise = step * 0.75_f64.sqrt();
    let (mut odd, mut y) = (false, low.y + 0.5 * rise);
    while y < high.y {
        let mut x = low.x + if odd { 1.0 } else { 0.5 } * step;
        while x < high.x {
            let p = Point::new(x, y);
            if region.holds(p) && region.clear(p, 0.6 * step) {
                points.push(p);
            }
            x += step;
        }
        odd = !odd;
        y += rise;
    }
    let mut triangles = joined(&points, lines, region)?;
    for _ in 0..SMOOTHING {
        let mut sums = vec![(Vec2::ZERO, 0.0); points.len()];
        for t in &triangles {
            for k in 0..3 {
                let (a, b, c) = (t[k], t[(k + 1) % 3], t[(k + 2) % 3]);
                sums[a].0 += points[b].to_vec2() + points[c].to_vec2();
                sums[a].1 += 2.0;
            }
        }
        for (p, (sum, count)) in points.iter_mut().zip(&sums).skip(fixed) {
            if *count > 0.0 {
                *p = (*sum / *count).to_point();
            }
        }
        triangles = joined(&points, lines, region)?;
    }
    (!triangles.is_empty()).then_some((points, triangles))
}

fn joined(points: &[Point], lines: &[[usize; 2]], region: &Region) -> Option<Vec<[usize; 3]>> {
    let vertices: Vec<Point2<f64>> = points
        .iter()
        .map(|p| Point2::new(tidy(p.x), tidy(p.y)))
        .collect();
    let mut crossed = false;
    let mesh = ConstrainedDelaunayTriangulation::<Point2<f64>>::try_bulk_load_cdt(
        vertices,
        lines.to_vec(),
        |_| crossed = true,
    )
    .ok()?;
    if crossed || mesh.num_vertices() != points.len() {
        return None;
    }
    let mut triangles: Vec<[usize; 3]> = mesh
        .inner_faces()
        .map(|face| face.vertices().map(|v| v.index()))
        .filter(|t| {
            let [a, b, c] = t.map(|i| points[i]);
            region.holds(Point::new((a.x + b.x + c.x) / 3.0, (a.y + b.y + c.y) / 3.0))
                && (b - a).cross(c - a).abs() > 1e-6
        })
        .collect();
    triangles.sort_unstable();
    Some(triangles)
}

/// Coordinates too small for the triangulation are nought.
fn tidy(v: f64) -> f64 {
    if v.abs() < 1e-9 { 0.0 } else { v }
}
