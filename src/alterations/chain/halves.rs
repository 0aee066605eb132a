//! Patterns whose halves are unlike, taken apart into a left and a right pattern.
//!
//! Every alteration works on a pattern that is alike on both sides. A pattern with unlike
//! halves is two such patterns: pieces that agree are shared, those that do not are cut singly,
//! once for each side.

use crate::alterations::AlterationError;
use crate::piece::{BodySide, Cut, Edge, EdgeRef, EdgeRole, Outline, Pattern, Piece, Seam};

/// Whether a pattern has unlike halves.
#[must_use]
pub(in crate::alterations) fn are_unlike(pattern: &Pattern) -> bool {
    pattern.pieces().iter().any(|p| p.side().is_some())
        || pattern.seams().iter().any(|s| s.side.is_some())
        || pattern.girths().iter().any(|g| g.side.is_some())
}

/// The side of a piece by its name.
fn side_of(pattern: &Pattern, piece: &str) -> Option<BodySide> {
    pattern.piece(piece).and_then(Piece::side)
}

/// Whether a seam joins the left half to the right one, down the middle of the body.
#[must_use]
pub(in crate::alterations) fn joins_sides(pattern: &Pattern, seam: &Seam) -> bool {
    let on = |side| {
        let mut edges = seam.a.iter().chain(&seam.b);
        edges.any(|e| side_of(pattern, &e.piece) == Some(side))
    };
    on(BodySide::Left) && on(BodySide::Right)
}

/// The pattern of one side, alike on both: what the whole garment would be if both sides were
/// like this one.
///
/// # Errors
/// When the parts do not hold together.
pub(in crate::alterations) fn half(
    pattern: &Pattern,
    side: BodySide,
) -> Result<Pattern, AlterationError> {
    let mine = |of: Option<BodySide>| of.is_none_or(|s| s == side);
    let base = |piece: &str| -> String {
        let found = pattern.piece(piece).map(Piece::base_name);
        found.unwrap_or(piece).to_owned()
    };
    let (middle, others): (Vec<&Seam>, Vec<&Seam>) = pattern
        .seams()
        .iter()
        .partition(|seam| joins_sides(pattern, seam));
    let middle: Vec<&EdgeRef> = middle
        .into_iter()
        .flat_map(|seam| seam.a.iter().chain(&seam.b))
        .collect();
    let mut parts = pattern.clone().into_parts();
    parts.pieces = pattern
        .pieces()
        .iter()
        .filter(|p| mine(p.side()))
        .map(|p| match p.side() {
            Some(_) => made_whole(p, &middle),
            None => Ok(p.clone()),
        })
        .collect::<Result<_, _>>()?;
    parts.seams = others
        .into_iter()
        .filter(|seam| mine(seam.side))
        .cloned()
        .collect();
    for seam in &mut parts.seams {
        seam.name = seam.base_name().to_owned();
        seam.side = None;
        for edge in seam.a.iter_mut().chain(&mut seam.b) {
            edge.piece = base(&edge.piece);
        }
    }
    parts.girths.retain(|girth| mine(girth.side));
    for girth in &mut parts.girths {
        girth.name = girth.base_name().to_owned();
        girth.side = None;
        girth.runs.retain(|r| mine(side_of(pattern, &r.piece)));
        for run in &mut girth.runs {
            run.piece = base(&run.piece);
        }
    }
    let whole = Pattern::new(parts)?;
    // A garment of which both halves are like this one has the girths of this half, doubled.
    let finished: Vec<f64> = whole.girths().iter().map(|g| whole.finished(g)).collect();
    let mut parts = whole.into_parts();
    for (girth, finished) in parts.girths.iter_mut().zip(finished) {
        girth.ease = finished - girth.body;
    }
    Ok(Pattern::new(parts)?)
}

/// A single half as a piece on the fold, where it has an edge in the middle of the body, or a
/// pair.
fn made_whole(piece: &Piece, middle: &[&EdgeRef]) -> Result<Piece, AlterationError> {
    let mut parts = piece.clone().into_parts();
    parts.name = piece.base_name().to_owned();
    parts.side = None;
    parts.cut = Cut::Pair;
    let in_middle = |edge: &Edge| {
        middle
            .iter()
            .any(|m| m.piece == piece.name() && m.edge == *edge.name())
    };
    let mut edges = Vec::new();
    for edge in parts.outline.edges() {
        let mut role = edge.role();
        if in_middle(edge) {
            parts.cut = Cut::Fold;
            role = EdgeRole::Fold;
        }
        edges.push(Edge::new(edge.name().clone(), role, edge.curve().clone()));
    }
    parts.outline = Outline::new(edges)?;
    Ok(Piece::new(parts)?)
}
