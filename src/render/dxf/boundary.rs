//! The boundary of a piece: corners and points along curves.

use super::view::View;
use crate::geometry::{Curve, Point, angle_between, tolerance, with_next};
use crate::invariants::Tolerances;
use crate::piece::{EdgeRole, Piece};
use kurbo::{PathSeg, Rect};

/// Vertices nearer than this are one: they could not be told apart in the file, in millimetres.
const SAME: f64 = 1e-3;

/// A vertex of the boundary.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Vertex {
    /// Where it is in the file.
    pub(super) at: Point,
    /// Whether the boundary turns here: two edges meet, a line ends, or a curve breaks. At
    /// the others a curve runs on.
    pub(super) turn: bool,
}

/// The boundary: clockwise as seen, the cut line if there is one, else the stitching line.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Boundary {
    pub(super) vertices: Vec<Vertex>,
}

/// A segment with its chords, and whether an edge ends with it.
struct Step {
    segment: PathSeg,
    chords: Vec<Point>,
    ends_edge: bool,
}

impl Boundary {
    pub(super) fn of(piece: &Piece, cut: Option<&Curve>, view: View) -> Self {
        let edges = piece.outline().edges().iter();
        let steps: Vec<Step> = match cut {
            Some(cut) => steps(cut, false),
            None => edges.flat_map(|edge| steps(edge.curve(), true)).collect(),
        };
        let mut vertices: Vec<Vertex> = Vec::new();
        for (step, next) in with_next(&steps) {
            let corner = step.ends_edge || turns(&step.segment, &next.segment);
            for (place, at) in step.chords.iter().enumerate() {
                let turn = corner && place + 1 == step.chords.len();
                let at = view.point(*at);
                match vertices.last_mut() {
                    Some(last) if last.at.distance(at) < SAME => last.turn |= turn,
                    _ => vertices.push(Vertex { at, turn }),
                }
            }
        }
        close(&mut vertices);
        // The chords name their ends: the last end is where the first edge starts.
        if !vertices.is_empty() {
            vertices.rotate_right(1);
        }
        // The mirror of a ring runs the other way round.
        if view.mirrored() {
            vertices.reverse();
        }
        Self { vertices }
    }

    /// The places of the vertices.
    pub(super) fn points(&self) -> Vec<Point> {
        self.vertices.iter().map(|vertex| vertex.at).collect()
    }

    /// Smallest upright rectangle around it, in the file.
    pub(super) fn bounds(&self) -> Rect {
        let points = self.vertices.iter().map(|v| Rect::from_points(v.at, v.at));
        points.reduce(|a, b| a.union(b)).unwrap_or(Rect::ZERO)
    }

    /// The folds of the piece from end to end of what lies on them, across the allowances at
    /// their ends.
    pub(super) fn mirror_lines(&self, piece: &Piece, view: View) -> Vec<[Point; 2]> {
        let edges = piece.outline().edges().iter();
        let folds = edges.filter(|edge| edge.role() == EdgeRole::Fold);
        folds
            .map(|edge| {
                let [from, to] = [edge.curve().start(), edge.curve().end()].map(|p| view.point(p));
                let along = (to - from).normalize();
                let on_fold = self.vertices.iter().map(|vertex| vertex.at).filter(|at| {
                    let off = (*at - from).cross(along).abs();
                    off < tolerance::PRINT
                });
                let place = |at: &Point| (*at - from).dot(along);
                let first = on_fold.clone().min_by(|a, b| place(a).total_cmp(&place(b)));
                let last = on_fold.max_by(|a, b| place(a).total_cmp(&place(b)));
                [first.unwrap_or(from), last.unwrap_or(to)]
            })
            .collect()
    }
}

/// The last vertex is not the first one again.
fn close(vertices: &mut Vec<Vertex>) {
    while let [first, .., last] = vertices.as_mut_slice() {
        if first.at.distance(last.at) >= SAME {
            break;
        }
        first.turn |= last.turn;
        vertices.pop();
    }
}

fn steps(curve: &Curve, ends_edge: bool) -> Vec<Step> {
    let count = curve.segments().len();
    let pairs = curve.segments().iter().zip(curve.chords()).enumerate();
    pairs
        .map(|(index, (segment, chords))| Step {
            segment: *segment,
            chords,
            ends_edge: ends_edge && index + 1 == count,
        })
        .collect()
}

/// Whether one segment goes on into the next with a turn: unless both are curves and the one
/// arrives as the other leaves.
fn turns(before: &PathSeg, after: &PathSeg) -> bool {
    let straight = |s: &PathSeg| matches!(s, PathSeg::Line(_));
    if straight(before) || straight(after) {
        return true;
    }
    let one = |s: &PathSeg| Curve::new(vec![*s]);
    let (Ok(before), Ok(after)) = (one(before), one(after)) else {
        return true;
    };
    let angle = angle_between(before.end_direction(), after.start_direction());
    angle.abs() > Tolerances::altered().smooth
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_curve_that_runs_on_is_no_turn() {
        let at = |x: f64, y: f64| Point::new(x, y);
        let curve = |a, b, c, d| PathSeg::Cubic(kurbo::CubicBez::new(a, b, c, d));
        let first = curve(at(0.0, 0.0), at(10.0, 0.0), at(20.0, 5.0), at(30.0, 5.0));
        let on = curve(at(30.0, 5.0), at(40.0, 5.0), at(50.0, 0.0), at(60.0, 0.0));
        let off = curve(at(30.0, 5.0), at(30.0, 15.0), at(50.0, 0.0), at(60.0, 0.0));
        assert!(!turns(&first, &on));
        assert!(turns(&first, &off));
        let line = PathSeg::Line(kurbo::Line::new(at(30.0, 5.0), at(60.0, 5.0)));
        assert!(turns(&first, &line), "a line ends where a curve begins");
    }
}
