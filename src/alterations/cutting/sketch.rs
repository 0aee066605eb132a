//! A piece being redrawn: edges replaced, darts moved, until it is whole again.

use crate::alterations::AlterationError;
use crate::geometry::{Curve, GeometryError, Point, Span, tolerance};
use crate::piece::{
    BUST_POINT, BalanceLine, Dart, Edge, EdgeName, NamedPoint, Outline, Piece, PieceParts,
    level_through,
};

/// A piece between two states: its edges may not meet yet.
///
/// ```
/// use blockwright::alterations::Sketch;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// # fn main() -> Result<(), Box<dyn std::error::Error>> {
/// let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None)?;
/// let back = pattern.piece("back").ok_or("no back")?;
/// assert_eq!(&Sketch::of(back).finish()?, back);
/// # Ok(()) }
/// ```
#[derive(Debug, Clone)]
pub struct Sketch {
    parts: PieceParts,
    edges: Vec<Edge>,
    /// Where each notch lies, once something moved it.
    notch_points: Vec<Option<Point>>,
}

impl Sketch {
    /// A sketch of a piece as it is.
    #[must_use]
    pub fn of(piece: &Piece) -> Self {
        let parts = piece.clone().into_parts();
        Self {
            edges: parts.outline.edges().to_vec(),
            notch_points: vec![None; parts.notches.len()],
            parts,
        }
    }

    /// The line of an edge.
    ///
    /// # Errors
    /// When the piece has no such edge.
    pub fn curve(&self, name: &EdgeName) -> Result<&Curve, AlterationError> {
        self.edges
            .iter()
            .find(|e| e.name() == name)
            .map(Edge::curve)
            .ok_or_else(|| AlterationError::Missing {
                what: format!("an edge {name} on the {}", self.parts.name),
                advice: "this alteration does not suit this block",
            })
    }

    /// Replaces the line of an edge; its ends may lie elsewhere than before.
    ///
    /// # Errors
    /// When the piece has no such edge.
    pub fn replace(&mut self, name: &EdgeName, curve: Curve) -> Result<(), AlterationError> {
        self.curve(name)?;
        for edge in &mut self.edges {
            if edge.name() == name {
                *edge = Edge::new(name.clone(), edge.role(), curve);
                return Ok(());
            }
        }
        Ok(())
    }

    /// The darts.
    pub fn darts_mut(&mut self) -> &mut Vec<Dart> {
        &mut self.parts.darts
    }

    /// The darts.
    #[must_use]
    pub fn darts(&self) -> &[Dart] {
        &self.parts.darts
    }

    /// The dart of that name.
    pub fn dart_mut(&mut self, name: &str) -> Option<&mut Dart> {
        self.parts.darts.iter_mut().find(|d| d.name == name)
    }

    /// The balance lines.
    pub fn lines_mut(&mut self) -> &mut Vec<BalanceLine> {
        &mut self.parts.lines
    }

    /// The named points.
    pub fn points_mut(&mut self) -> &mut Vec<NamedPoint> {
        &mut self.parts.points
    }

    /// Everything else of the piece: its outline is taken from the edges in the end.
    pub fn parts_mut(&mut self) -> &mut PieceParts {
        &mut self.parts
    }

    /// Puts a notch, by its place in the piece's list, where its edge comes nearest to a point.
    pub fn put_notch(&mut self, place: usize, point: Point) {
        if let Some(slot) = self.notch_points.get_mut(place) {
            *slot = Some(point);
        }
    }

    /// Draws the end of every edge anew where a rule says so, from the edge and the start of the
    /// next one.
    fn close_corners(
        &mut self,
        closed: impl Fn(&Curve, Point) -> Result<Option<Curve>, GeometryError>,
    ) -> Result<(), GeometryError> {
        let mut starts: Vec<Point> = self.edges.iter().map(|e| e.curve().start()).collect();
        starts.extend(starts.first().copied());
        for (edge, to) in self.edges.iter_mut().zip(starts.into_iter().skip(1)) {
            if let Some(curve) = closed(edge.curve(), to)? {
                *edge = Edge::new(edge.name().clone(), edge.role(), curve);
            }
        }
        Ok(())
    }

    /// Moves the start or end of neighbouring edges together: each edge's last point is laid on
    /// the first of the next. Where both moved by the same motion nothing happens; a gap left by
    /// a cut that runs out at a corner is closed straight, on the edge before it.
    ///
    /// # Errors
    /// When what comes out is no curve.
    pub fn join_corners(&mut self) -> Result<(), GeometryError> {
        self.close_corners(|curve, to| {
            let gap = curve.end().distance(to);
            (gap > tolerance::POINT)
                .then(|| curve.clone().then(&Curve::line(curve.end(), to)?))
                .transpose()
        })
    }

    /// The piece, whole again: notches at their places, drill points inside their darts.
    ///
    /// # Errors
    /// When the edges do not meet or the darts do not lie on their edges.
    pub fn finish(mut self) -> Result<Piece, AlterationError> {
        // Rounding only: a real gap is refused by the outline.
        self.close_corners(|curve, to| {
            let gap = curve.end().distance(to);
            (gap > 0.0 && gap <= tolerance::SEAM_DRAFTED * 1e-2)
                .then(|| curve.ending_at(to))
                .transpose()
        })?;
        for (notch, point) in self.parts.notches.iter_mut().zip(&self.notch_points) {
            if let Some(edge) = self.edges.iter().find(|e| e.name() == &notch.edge) {
                if let Some(point) = point {
                    notch.at = edge.curve().nearest(*point).1;
                }
                notch.at = Span::from_low(0.0, edge.curve().length()).nearest(notch.at);
            }
        }
        self.parts.drill_points = self
            .parts
            .darts
            .iter()
            .flat_map(Dart::drill_points)
            .collect();
        self.parts.outline = Outline::new(self.edges)?;
        level_bust_line(&mut self.parts)?;
        Ok(Piece::new(self.parts)?)
    }

    /// The piece, whole again, every notch at the sewn place that it had on another: for edges
    /// of which only the mouths of darts changed.
    ///
    /// # Errors
    /// As [`finish`](Self::finish).
    pub(in crate::alterations) fn finish_sewn(self, old: &Piece) -> Result<Piece, AlterationError> {
        let whole = self.finish()?;
        let places: Vec<f64> = old
            .notches()
            .iter()
            .map(|n| whole.open_position(&n.edge, old.sewn_position(&n.edge, n.at)))
            .collect();
        let mut parts = whole.into_parts();
        for (notch, at) in parts.notches.iter_mut().zip(places) {
            let edge = parts.outline.edge(&notch.edge);
            notch.at = at.min(edge.map_or(at, |e| e.curve().length()));
        }
        Ok(Piece::new(parts)?)
    }
}

/// Draws the bust line anew, level through the bust point; its start stays on its side.
fn level_bust_line(parts: &mut PieceParts) -> Result<(), GeometryError> {
    let Some(bust) = parts.points.iter().find(|p| p.name == BUST_POINT) else {
        return Ok(());
    };
    for line in parts.lines.iter_mut().filter(|l| l.name == "bust") {
        let level = level_through(&parts.outline, bust.at)?;
        let rightward = line.curve.start().x <= line.curve.end().x;
        line.curve = if rightward { level } else { level.reversed() };
    }
    Ok(())
}
