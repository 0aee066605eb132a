//! The closed outline of a piece on the stitching line.

use super::{Edge, EdgeName, PieceError};
use crate::geometry::{signed_area, tolerance, with_next};
use kurbo::{PathSeg, Rect};

/// A closed ring of named edges.
///
/// # Guarantees
/// Two edges or more, each starting where the one before it ended and the last ending where
/// the first starts (within [`tolerance::POINT`]); no two of the same name.
///
/// ```
/// use blockwright::geometry::{Curve, Point};
/// use blockwright::piece::{Edge, EdgeName, EdgeRole, Outline};
/// let at = |x, y| Point::new(x, y);
/// let outline = Outline::new(vec![
///     Edge::new(EdgeName::WAIST, EdgeRole::Seam, Curve::line(at(0.0, 0.0), at(200.0, 0.0))?),
///     Edge::new(EdgeName::SIDE_SEAM, EdgeRole::Seam, Curve::line(at(200.0, 0.0), at(200.0, 600.0))?),
///     Edge::new(EdgeName::HEM, EdgeRole::Hem, Curve::line(at(200.0, 600.0), at(0.0, 600.0))?),
///     Edge::new(EdgeName::CENTRE_BACK, EdgeRole::Fold, Curve::line(at(0.0, 600.0), at(0.0, 0.0))?),
/// ])?;
/// assert_eq!(outline.area(), 120_000.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Outline {
    edges: Vec<Edge>,
}

impl Outline {
    /// A ring of edges.
    ///
    /// # Errors
    /// When there are fewer than two, when the ring is open, or when a name is there twice.
    pub fn new(edges: Vec<Edge>) -> Result<Self, PieceError> {
        if edges.len() < 2 {
            return Err(PieceError::NoEdges);
        }
        for (index, (edge, next)) in with_next(&edges).enumerate() {
            let gap = edge.curve().end().distance(next.curve().start());
            if gap > tolerance::POINT {
                return Err(PieceError::Open {
                    before: edge.name().to_string(),
                    after: next.name().to_string(),
                    gap,
                });
            }
            if edges.iter().take(index).any(|e| e.name() == edge.name()) {
                return Err(PieceError::Twice {
                    kind: "edge",
                    name: edge.name().to_string(),
                });
            }
        }
        Ok(Self { edges })
    }

    /// The edges in order.
    #[must_use]
    pub fn edges(&self) -> &[Edge] {
        &self.edges
    }

    /// The edge of that name.
    #[must_use]
    pub fn edge(&self, name: &EdgeName) -> Option<&Edge> {
        self.edges.iter().find(|e| e.name() == name)
    }

    /// The edge before and the edge after the one of that name.
    #[must_use]
    pub fn neighbours(&self, name: &EdgeName) -> Option<(&Edge, &Edge)> {
        let after = with_next(&self.edges).find(|(edge, _)| edge.name() == name)?;
        let before = with_next(&self.edges).find(|(_, edge)| edge.name() == name)?;
        Some((before.0, after.1))
    }

    /// All segments of the ring in order.
    #[must_use]
    pub fn segments(&self) -> Vec<PathSeg> {
        self.edges
            .iter()
            .flat_map(|e| e.curve().segments().iter().copied())
            .collect()
    }

    /// Area in square millimetres; negative when the ring runs anticlockwise on the page.
    #[must_use]
    pub fn area(&self) -> f64 {
        self.edges
            .iter()
            .map(|e| signed_area(e.curve().segments()))
            .sum()
    }

    /// Smallest upright rectangle around the ring.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.edges
            .iter()
            .map(|e| e.curve().bounds())
            .reduce(|a, b| a.union(b))
            .unwrap_or(Rect::ZERO)
    }
}
