//! What is drawn, by its name.

use super::TracedError;
use super::fault::short;
use crate::geometry::kurbo::{BezPath, PathEl, PathSeg};
use crate::geometry::{Curve, Point, tolerance};

/// A path of the drawing in millimetres, and what it is.
#[derive(Debug, Clone)]
pub(super) struct NamedPath {
    /// The piece, such as `back left`.
    pub piece: String,
    /// What of the piece, such as `side_seam` or `waist_dart`.
    pub part: String,
    pub path: BezPath,
    /// Where it stands in the text.
    pub line: u32,
    pub column: u32,
}

/// The piece and the part of `back-left.side_seam`; the second cut of a notch ends in `-2`.
pub(super) fn taken_apart(name: &str) -> Option<(String, String)> {
    let (piece, part) = name.trim().split_once('.')?;
    let words = |text: &str| text.trim().replace('-', " ");
    let (piece, part) = (words(piece), words(part));
    let numbered = part.trim_end_matches(|c: char| c.is_ascii_digit());
    let part = match numbered.strip_suffix(' ') {
        Some(name) if numbered.len() < part.len() => name.to_owned(),
        _ => part,
    };
    (!piece.is_empty() && !part.is_empty()).then_some((piece, part))
}

impl NamedPath {
    /// Its name as it is written.
    pub fn name(&self) -> String {
        format!("{}.{}", self.piece, self.part).replace(' ', "-")
    }

    /// What is wrong with it.
    pub fn fault(&self, problem: impl Into<String>, cure: impl Into<String>) -> TracedError {
        TracedError::Element {
            line: self.line,
            column: self.column,
            name: format!("`{}`", short(&self.name())),
            problem: problem.into(),
            cure: cure.into(),
        }
    }

    /// Its strokes, each a chain of lines and cubics with no segment of no length.
    pub fn strokes(&self) -> Vec<Curve> {
        let mut strokes: Vec<BezPath> = Vec::new();
        for element in self.path.elements() {
            match (element, strokes.last_mut()) {
                (PathEl::MoveTo(_), _) | (_, None) => {
                    strokes.push(BezPath::from_vec(vec![*element]));
                }
                (_, Some(stroke)) => stroke.push(*element),
            }
        }
        let curve = |stroke: &BezPath| {
            let long = stroke.segments().filter(|segment| {
                let points = segment.to_cubic();
                let farthest = [points.p1, points.p2, points.p3]
                    .map(|p| p.distance(points.p0))
                    .into_iter()
                    .fold(0.0, f64::max);
                farthest > tolerance::POINT
            });
            let plain = long.map(|segment| match segment {
                PathSeg::Quad(quad) => PathSeg::Cubic(quad.raise()),
                other => other,
            });
            Curve::new(plain.collect()).ok()
        };
        strokes.iter().filter_map(curve).collect()
    }

    /// The corners of its strokes.
    pub fn corners(&self) -> Vec<Point> {
        let mut corners: Vec<Point> = Vec::new();
        for stroke in self.strokes() {
            let ends = stroke
                .segments()
                .iter()
                .map(|segment| segment.to_cubic().p3);
            for at in std::iter::once(stroke.start()).chain(ends) {
                if !corners
                    .iter()
                    .any(|known| known.distance(at) < super::CLOSED_WITHIN)
                {
                    corners.push(at);
                }
            }
        }
        corners
    }
}
