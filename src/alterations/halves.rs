//! Patterns whose halves are unlike: taken apart into a left and a right pattern, and put
//! together again.
//!
//! Every alteration works on a pattern that is alike on both sides. A pattern with unlike
//! halves is two such patterns: pieces that agree are shared, those that do not are cut singly,
//! once for each side.

use super::AlterationError;
use crate::geometry::tolerance;
use crate::piece::{
    Cut, Edge, EdgeName, EdgeRef, EdgeRole, Girth, GirthRun, Outline, Pattern, PatternParts, Piece,
    Seam,
};
use kurbo::{ParamCurve, Point};
use serde::{Deserialize, Serialize};

/// A side of the wearer's body.
///
/// ```
/// use blockwright::alterations::BodySide;
/// assert_eq!(BodySide::Left.name(), "left");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BodySide {
    /// The wearer's left.
    Left,
    /// The wearer's right.
    Right,
}

impl BodySide {
    /// Both sides.
    pub const BOTH: [Self; 2] = [Self::Left, Self::Right];

    /// The word that ends the names of pieces and seams of that side.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }

    /// The name with the side's word behind it.
    fn of(self, name: &str) -> String {
        format!("{name} {}", self.name())
    }
}

impl std::fmt::Display for BodySide {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// The name without a side's word at its end, and the side.
pub(super) fn sided(name: &str) -> Option<(&str, BodySide)> {
    BodySide::BOTH
        .into_iter()
        .find_map(|side| Some((name.strip_suffix(side.name())?.strip_suffix(' ')?, side)))
}

/// Whether a pattern has unlike halves.
#[must_use]
pub(super) fn are_unlike(pattern: &Pattern) -> bool {
    pattern.pieces().iter().any(|p| sided(p.name()).is_some())
}

/// How the seam down the middle of a divided piece is named.
const CENTRE: &str = "centre seam of the";

/// The pattern of one side, alike on both: what the whole garment would be if both sides were
/// like this one.
///
/// # Errors
/// When the parts do not hold together.
pub(super) fn half(pattern: &Pattern, side: BodySide) -> Result<Pattern, AlterationError> {
    let mut parts = pattern.clone().into_parts();
    let mine = |name: &str| sided(name).is_none_or(|(_, s)| s == side);
    let plain = |name: &str| sided(name).map_or(name, |(base, _)| base).to_owned();
    parts.pieces = parts
        .pieces
        .into_iter()
        .filter(|p| mine(p.name()))
        .map(|p| {
            if sided(p.name()).is_some() {
                made_whole(p)
            } else {
                Ok(p)
            }
        })
        .collect::<Result<_, _>>()?;
    parts
        .seams
        .retain(|s| mine(&s.name) && !s.name.starts_with(CENTRE));
    for seam in &mut parts.seams {
        seam.name = plain(&seam.name);
        for edge in seam.a.iter_mut().chain(&mut seam.b) {
            edge.piece = plain(&edge.piece);
        }
    }
    parts.girths.retain(|g| mine(&g.name));
    for girth in &mut parts.girths {
        girth.name = plain(&girth.name);
        girth.runs.retain(|r| mine(&r.piece));
        for run in &mut girth.runs {
            run.piece = plain(&run.piece);
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

/// A single half as a piece on the fold (one with a centre edge) or a pair.
fn made_whole(piece: Piece) -> Result<Piece, AlterationError> {
    let mut parts = piece.into_parts();
    if let Some((base, _)) = sided(&parts.name) {
        parts.name = base.to_owned();
    }
    let mut cut = Cut::Pair;
    let edges = parts.outline.edges().iter().map(|edge| {
        let centre = is_centre(edge.name());
        if centre {
            cut = Cut::Fold;
        }
        let role = if centre { EdgeRole::Fold } else { edge.role() };
        Edge::new(edge.name().clone(), role, edge.curve().clone())
    });
    parts.outline = Outline::new(edges.collect())?;
    parts.cut = cut;
    Ok(Piece::new(parts)?)
}

fn is_centre(name: &EdgeName) -> bool {
    *name == EdgeName::CENTRE_BACK || *name == EdgeName::CENTRE_FRONT
}

/// Puts the patterns of both sides together: pieces that agree are shared, the others are cut
/// once for each side, and a piece that was on the fold gets a seam down its middle.
///
/// # Errors
/// When the parts do not hold together.
pub(super) fn joined(left: &Pattern, right: &Pattern) -> Result<Pattern, AlterationError> {
    let unlike: Vec<&str> = left
        .pieces()
        .iter()
        .filter(|p| right.piece(p.name()).is_none_or(|q| !alike(p, q)))
        .map(Piece::name)
        .collect();
    let mut parts = PatternParts {
        block: left.block().to_owned(),
        pieces: Vec::new(),
        seams: Vec::new(),
        girths: Vec::new(),
        warnings: left.warnings().to_vec(),
    };
    for piece in left.pieces() {
        let Some(other) = right.piece(piece.name()) else {
            continue;
        };
        if !unlike.contains(&piece.name()) {
            parts.pieces.push(piece.clone());
            continue;
        }
        for (side, of) in [(BodySide::Left, piece), (BodySide::Right, other)] {
            parts.pieces.push(single(of.clone(), side)?);
        }
        if let Some(centre) = fold_of(piece) {
            let edge = |side: BodySide| EdgeRef::new(side.of(piece.name()), centre.clone());
            let name = format!("{CENTRE} {}", piece.name());
            parts.seams.push(Seam::plain(
                name,
                edge(BodySide::Left),
                edge(BodySide::Right),
            ));
        }
    }
    for (index, seam) in left.seams().iter().enumerate() {
        let touched = seam
            .a
            .iter()
            .chain(&seam.b)
            .any(|e| unlike.contains(&e.piece.as_str()));
        if !touched {
            parts.seams.push(seam.clone());
            continue;
        }
        for (side, of) in [
            (BodySide::Left, Some(seam)),
            (BodySide::Right, right.seams().get(index)),
        ] {
            let Some(mut own) = of.cloned() else { continue };
            own.name = side.of(&own.name);
            for edge in own.a.iter_mut().chain(&mut own.b) {
                if unlike.contains(&edge.piece.as_str()) {
                    edge.piece = side.of(&edge.piece);
                }
            }
            parts.seams.push(own);
        }
    }
    for (index, girth) in left.girths().iter().enumerate() {
        let Some(other) = right.girths().get(index) else {
            continue;
        };
        parts.girths.extend(girths(girth, other, &unlike));
    }
    Ok(Pattern::new(parts)?)
}

/// A girth of both sides: of the trunk each side gives its half; a limb has its own on each.
fn girths(left: &Girth, right: &Girth, unlike: &[&str]) -> Vec<Girth> {
    let split = |run: &GirthRun| unlike.contains(&run.piece.as_str());
    if !left.runs.iter().any(split) {
        return vec![left.clone()];
    }
    let of_side = |girth: &Girth, side: BodySide| -> Vec<GirthRun> {
        let sided = |run: &GirthRun| GirthRun {
            piece: if split(run) {
                side.of(&run.piece)
            } else {
                run.piece.clone()
            },
            along: run.along.clone(),
        };
        girth.runs.iter().map(sided).collect()
    };
    if left.limb {
        return [(left, BodySide::Left), (right, BodySide::Right)]
            .map(|(girth, side)| Girth {
                name: side.of(&girth.name),
                runs: of_side(girth, side),
                ..girth.clone()
            })
            .to_vec();
    }
    let mut runs = of_side(left, BodySide::Left);
    // A shared piece on the fold or cut as a pair is counted for both sides already.
    runs.extend(
        of_side(right, BodySide::Right)
            .into_iter()
            .filter(|r| sided(&r.piece).is_some()),
    );
    vec![Girth {
        ease: 0.5 * (left.ease + right.ease),
        runs,
        ..left.clone()
    }]
}

fn fold_of(piece: &Piece) -> Option<EdgeName> {
    let fold = |e: &&Edge| e.role() == EdgeRole::Fold;
    piece
        .outline()
        .edges()
        .iter()
        .find(fold)
        .map(|e| e.name().clone())
}

/// The piece for one side of the body, its fold a seam.
///
/// A back and a sleeve are drawn as the wearer's right looks from outside, a front as her left;
/// the other side is cut with the pattern face down.
fn single(piece: Piece, side: BodySide) -> Result<Piece, AlterationError> {
    let drawn_as = if piece.outline().edge(&EdgeName::CENTRE_FRONT).is_some() {
        BodySide::Left
    } else {
        BodySide::Right
    };
    let mut parts = piece.into_parts();
    parts.name = side.of(&parts.name);
    parts.cut = if side == drawn_as {
        Cut::Single
    } else {
        Cut::SingleFaceDown
    };
    let edges = parts.outline.edges().iter().map(|edge| {
        let role = match edge.role() {
            EdgeRole::Fold => EdgeRole::Seam,
            other => other,
        };
        Edge::new(edge.name().clone(), role, edge.curve().clone())
    });
    parts.outline = Outline::new(edges.collect())?;
    Ok(Piece::new(parts)?)
}

/// Whether two pieces are the same but for rounding.
fn alike(a: &Piece, b: &Piece) -> bool {
    let close = |p: Point, q: Point| p.distance(q) <= tolerance::SEAM_DRAFTED * 0.1;
    let (left, right) = (a.outline().segments(), b.outline().segments());
    left.len() == right.len()
        && left.iter().zip(&right).all(|(s, t)| {
            [0.0, 0.3, 0.7, 1.0]
                .iter()
                .all(|u| close(s.eval(*u), t.eval(*u)))
        })
        && a.darts().len() == b.darts().len()
        && a.darts().iter().zip(b.darts()).all(|(d, e)| {
            close(d.apex(), e.apex()) && close(d.legs[0], e.legs[0]) && close(d.legs[1], e.legs[1])
        })
        && a.points().len() == b.points().len()
        && a.points()
            .iter()
            .zip(b.points())
            .all(|(p, q)| p.name == q.name && close(p.at, q.at))
        && a.notches().len() == b.notches().len()
        && a.notches()
            .iter()
            .zip(b.notches())
            .all(|(n, m)| (n.at - m.at).abs() <= tolerance::SEAM_DRAFTED)
}
