//! A whole pattern: its pieces, how they are sewn, what was asked of it.

use super::side_name::ends_in_side;
use super::{EdgeName, EdgeRef, Girth, Piece, PieceError, RunAlong, Seam};

/// Something the wearer or cutter should know: an adaptation, a doubt, a caution.
///
/// ```
/// use blockwright::piece::Warning;
/// let w = Warning::new("shoulder_extended", "the shoulder was lengthened by 6 mm");
/// assert_eq!(w.code, "shoulder_extended");
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Warning {
    /// A short code in snake case, for programs.
    pub code: String,
    /// A sentence with its numbers, for people.
    pub text: String,
}

impl Warning {
    /// A warning of that code and text.
    #[must_use]
    pub fn new(code: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            code: code.into(),
            text: text.into(),
        }
    }
}

/// What a pattern is made from.
///
/// ```
/// use blockwright::piece::PatternParts;
/// let nothing = PatternParts { block: "skirt".into(), pieces: vec![], seams: vec![], girths: vec![], warnings: vec![] };
/// assert_eq!(nothing.block, "skirt");
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct PatternParts {
    /// Name of the block: `bodice`, `skirt` and so on.
    pub block: String,
    /// The pieces.
    pub pieces: Vec<Piece>,
    /// The seams.
    pub seams: Vec<Seam>,
    /// The girths asked for.
    pub girths: Vec<Girth>,
    /// What the user should know.
    pub warnings: Vec<Warning>,
}

/// A pattern.
///
/// # Guarantees
/// Piece, seam and girth names differ; every seam and girth refers to pieces, edges and lines
/// that are there.
///
/// ```
/// use blockwright::piece::{Pattern, PatternParts};
/// let empty = Pattern::new(PatternParts { block: "skirt".into(), pieces: vec![], seams: vec![], girths: vec![], warnings: vec![] })?;
/// assert!(empty.pieces().is_empty());
/// # Ok::<(), blockwright::piece::PieceError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern {
    parts: PatternParts,
}

impl Pattern {
    /// A pattern of these parts.
    ///
    /// # Errors
    /// When a name is there twice or lacks its side's word, or a seam or girth refers to something
    /// that is not there.
    pub fn new(parts: PatternParts) -> Result<Self, PieceError> {
        let pattern = Self { parts };
        once("piece", pattern.pieces().iter().map(Piece::name))?;
        once("seam", pattern.seams().iter().map(|s| s.name.as_str()))?;
        once("girth", pattern.girths().iter().map(|g| g.name.as_str()))?;
        for seam in pattern.seams() {
            ends_in_side("seam", &seam.name, seam.side)?;
            for edge in seam.a.iter().chain(&seam.b) {
                pattern.must_have(
                    format!("seam {}", seam.name),
                    &edge.piece,
                    Some(&edge.edge),
                    None,
                )?;
            }
        }
        for girth in pattern.girths() {
            ends_in_side("girth", &girth.name, girth.side)?;
            for run in &girth.runs {
                let (edge, line) = match &run.along {
                    RunAlong::Edge(name) => (Some(name), None),
                    RunAlong::Line(name) => (None, Some(name.as_str())),
                };
                pattern.must_have(format!("girth {}", girth.name), &run.piece, edge, line)?;
            }
        }
        Ok(pattern)
    }

    fn must_have(
        &self,
        whose: String,
        piece: &str,
        edge: Option<&EdgeName>,
        line: Option<&str>,
    ) -> Result<(), PieceError> {
        let missing = |kind, name: String| PieceError::Missing {
            whose: whose.clone(),
            kind,
            name,
        };
        let found = self
            .piece(piece)
            .ok_or_else(|| missing("piece", piece.to_owned()))?;
        if let Some(edge) = edge.filter(|e| found.outline().edge(e).is_none()) {
            return Err(missing("edge", format!("{piece} {edge}")));
        }
        if let Some(line) = line.filter(|l| found.line(l).is_none()) {
            return Err(missing("line", format!("{piece} {line}")));
        }
        Ok(())
    }

    /// Name of the block.
    #[must_use]
    pub fn block(&self) -> &str {
        &self.parts.block
    }

    /// The pieces.
    #[must_use]
    pub fn pieces(&self) -> &[Piece] {
        &self.parts.pieces
    }

    /// The piece of that name.
    #[must_use]
    pub fn piece(&self, name: &str) -> Option<&Piece> {
        self.parts.pieces.iter().find(|p| p.name() == name)
    }

    /// The seams.
    #[must_use]
    pub fn seams(&self) -> &[Seam] {
        &self.parts.seams
    }

    /// The girths asked for.
    #[must_use]
    pub fn girths(&self) -> &[Girth] {
        &self.parts.girths
    }

    /// What the user should know.
    #[must_use]
    pub fn warnings(&self) -> &[Warning] {
        &self.parts.warnings
    }

    /// Length of an edge as it is sewn, in millimetres.
    #[must_use]
    pub fn seam_length(&self, edge: &EdgeRef) -> Option<f64> {
        self.piece(&edge.piece)?.seam_length(&edge.edge)
    }

    /// A girth as the sewn garment has it: every run with its darts closed, in millimetres.
    #[must_use]
    pub fn finished(&self, girth: &Girth) -> f64 {
        girth
            .runs
            .iter()
            .filter_map(|run| {
                let piece = self.piece(&run.piece)?;
                let drawn = match &run.along {
                    RunAlong::Edge(name) => piece.seam_length(name)?,
                    RunAlong::Line(name) => piece.sewn_length(&piece.line(name)?.curve),
                };
                Some(if girth.limb {
                    drawn
                } else {
                    drawn * piece.cut().halves()
                })
            })
            .sum()
    }

    /// The parts, to make another pattern from.
    #[must_use]
    pub fn into_parts(self) -> PatternParts {
        self.parts
    }
}

fn once<'a>(kind: &'static str, names: impl Iterator<Item = &'a str>) -> Result<(), PieceError> {
    let mut seen: Vec<&str> = Vec::new();
    for name in names {
        if seen.contains(&name) {
            return Err(PieceError::Twice {
                kind,
                name: name.to_owned(),
            });
        }
        seen.push(name);
    }
    Ok(())
}
