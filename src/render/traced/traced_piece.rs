//! One piece from what is drawn of it.

use super::TracedError;
use super::named_path::NamedPath;
use super::outline::{closed, ring};
use super::place::{Level, level, upright};
use super::traced_darts::darts;
use super::traced_lines::lines;
use super::traced_marks::{grain_line, notches, points};
use crate::geometry::Curve;
use crate::geometry::kurbo::Affine;
use crate::measurements::nearest;
use crate::piece::{Edge, Outline, Piece, PieceError, PieceParts};

/// What is drawn of a piece, and where the piece lies but for its level.
#[derive(Debug)]
pub(super) struct Drawn<'a> {
    paths: Vec<&'a NamedPath>,
    model: &'a Piece,
    ring: Vec<Curve>,
    placed: Affine,
}

impl<'a> Drawn<'a> {
    /// Looks for everything that a piece like this has to have.
    pub fn of(paths: &'a [NamedPath], model: &'a Piece) -> Result<Self, TracedError> {
        let paths: Vec<&NamedPath> = paths.iter().filter(|p| p.piece == model.name()).collect();
        for path in &paths {
            known(path, model)?;
        }
        let ring = ring(&paths, model)?;
        let placed = upright(&ring, &paths, model);
        Ok(Self {
            paths,
            model,
            ring,
            placed,
        })
    }

    /// How far down a level lies.
    pub fn level(&self, which: Level) -> Option<f64> {
        level(which, &self.ring, &self.paths, self.placed, self.model)
    }

    /// How far down the end of an edge at x = 0 lies: of the edge that begins the outline.
    pub fn first_corner(&self) -> f64 {
        let corner = self.ring.first().map(|first| self.placed * first.start());
        corner.map_or(0.0, |at| at.y)
    }

    /// Lets the whole piece down.
    pub fn move_down(&mut self, by: f64) {
        self.placed = Affine::translate((0.0, by)) * self.placed;
    }

    /// The piece.
    pub fn piece(&self) -> Result<Piece, TracedError> {
        let (paths, placed, model) = (&self.paths[..], self.placed, self.model);
        let mut ring = closed(&self.ring, placed, model)?;
        let darts = darts(paths, placed, model, &mut ring)?;
        let edges = model.outline().edges().iter().zip(&ring);
        let edges =
            edges.map(|(edge, curve)| Edge::new(edge.name().clone(), edge.role(), curve.clone()));
        let wrong = |source: PieceError| TracedError::Parts {
            name: model.name().to_owned(),
            source,
        };
        Piece::new(PieceParts {
            name: model.name().to_owned(),
            side: model.side(),
            cut: model.cut(),
            outline: Outline::new(edges.collect()).map_err(wrong)?,
            drill_points: darts.iter().flat_map(|dart| dart.drill_points()).collect(),
            lines: lines(paths, placed, &ring, &darts)?,
            darts,
            grain: grain_line(paths, placed, &ring),
            notches: notches(paths, placed, model, &ring)?,
            points: points(paths, placed, model),
        })
        .map_err(wrong)
    }
}

/// Refuses a part that such a piece does not have.
fn known(path: &NamedPath, model: &Piece) -> Result<(), TracedError> {
    let part = path.part.as_str();
    let marks = ["_dart", "_line", "_notch", "_point"];
    let edges = || {
        model
            .outline()
            .edges()
            .iter()
            .map(|edge| edge.name().as_str())
    };
    if part == "grain"
        || marks.iter().any(|mark| part.ends_with(mark))
        || edges().any(|e| e == part)
    {
        return Ok(());
    }
    let hint = nearest(part, edges()).map_or_else(
        || {
            format!(
                "its edges are `{}`",
                edges().collect::<Vec<_>>().join("`, `")
            )
        },
        |near| format!("did you mean `{}.{near}`?", path.piece.replace(' ', "-")),
    );
    Err(path.fault("a piece like this has no such edge", hint))
}
