//! An edge that is drawn anew: paper is cut away along the new line, or put on up to it.

use super::bench::Bench;
use super::error::Tried;
use super::rings::{distance, length, nearest_on, point_along, signed_area, steps};
use super::slash::{Opening, OpeningKind};
use crate::geometry::{Point, counted};
use crate::piece::EdgeName;

/// Into how many strips an edge is taken.
const PARTS: f64 = 96.0;

/// A strip narrower than this is none, in millimetres.
const LEAST: f64 = 0.3;

/// A line that moved by less did not move, in millimetres.
const SAME: f64 = 0.05;

/// What came of drawing edges anew, the most of each in millimetres.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Redrawn {
    pub added: f64,
    pub cut_off: f64,
}

/// Draws an edge anew: strips of paper are put on or cut away between its old line and its new one.
pub(super) fn redraw(bench: &mut Bench<'_>, edge: &EdgeName) -> Tried<Redrawn> {
    let (old, new) = (bench.run(edge)?, bench.new_run(edge)?);
    let mut done = Redrawn::default();
    let along = |run: &[Point], k: usize| {
        let at = length(run) * k as f64 / PARTS;
        point_along(run, at)
    };
    let mut strip: Vec<(Point, Point)> = Vec::new();
    let mut out_before = None;
    let mut strips = Vec::new();
    for k in 0..=counted(PARTS) {
        let (Some((p, way)), Some((q, _))) = (along(&old, k), along(&new, k)) else {
            continue;
        };
        // Outlines run clockwise: what lies left of them lies outside.
        let side = way.cross(nearest(&old, q) - q);
        let far = distance(steps(&old), q);
        let out = (far > SAME).then_some(side > 0.0);
        if out_before.is_some() && out.is_some() && out != out_before {
            strips.push((out_before, std::mem::take(&mut strip)));
        }
        out_before = out.or(out_before);
        strip.push((p, q));
    }
    strips.push((out_before, strip));
    // Strips too narrow to be seen do not break the line.
    let wide = |pairs: &[(Point, Point)]| {
        let far = pairs.iter().map(|pair| distance(steps(&old), pair.1));
        far.fold(0.0, f64::max) >= LEAST
    };
    strips.retain(|(_, pairs)| wide(pairs));
    let whole = strips.len() == 1;
    for (out, pairs) in strips {
        let Some(out) = out else { continue };
        let ring: Vec<Point> = pairs
            .iter()
            .map(|pair| pair.0)
            .chain(pairs.iter().rev().map(|pair| pair.1))
            .collect();
        let far = |q: Point| distance(steps(&old), q);
        let widest = pairs
            .iter()
            .max_by(|a, b| far(a.1).total_cmp(&far(b.1)))
            .map(|pair| (pair.0, pair.1, far(pair.1)));
        let Some((p, q, amount)) = widest else {
            continue;
        };
        if amount < LEAST || signed_area(&ring).abs() < 1.0 {
            continue;
        }
        let kind = if out {
            OpeningKind::Added
        } else {
            OpeningKind::CutOff
        };
        if out {
            done.added = done.added.max(amount);
        } else {
            done.cut_off = done.cut_off.max(amount);
            // The line where it is cut, from edge to edge of the paper.
            let line: Vec<Point> = if whole {
                new.clone()
            } else {
                pairs.iter().map(|pair| pair.1).collect()
            };
            if bench.cut_away(&line, edge) {
                continue;
            }
        }
        bench.strip(
            edge,
            Opening {
                kind,
                ring,
                amount,
                at: p.midpoint(q),
            },
        );
    }
    bench.draw(edge);
    Ok(done)
}

fn nearest(run: &[Point], p: Point) -> Point {
    let near = steps(run).map(|side| nearest_on(side, p).0);
    near.min_by(|a, b| a.distance_squared(p).total_cmp(&b.distance_squared(p)))
        .unwrap_or(p)
}
