//! The quarters of a garment: pieces of the trunk, found by their edges and lines.

use crate::alterations::AlterationError;
use crate::geometry::tolerance;
use crate::piece::{EdgeName, EdgeRole, Pattern, Piece};

/// Which half of the body a piece covers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::alterations) enum Half {
    Back,
    Front,
}

/// The name of a piece's centre edge.
pub(in crate::alterations) fn centre(piece: &Piece) -> Option<(Half, EdgeName)> {
    [
        (Half::Back, EdgeName::CENTRE_BACK),
        (Half::Front, EdgeName::CENTRE_FRONT),
    ]
    .into_iter()
    .find(|(_, name)| piece.outline().edge(name).is_some())
}

/// The pieces of the trunk.
pub(in crate::alterations) fn quarters(pattern: &Pattern) -> impl Iterator<Item = &Piece> {
    pattern.pieces().iter().filter(|p| centre(p).is_some())
}

/// Whether a piece has an armscye.
pub(in crate::alterations) fn upper(piece: &Piece) -> bool {
    piece.outline().edge(&EdgeName::ARMSCYE).is_some()
}

/// The hem edge.
pub(in crate::alterations) fn hem(piece: &Piece) -> Option<&EdgeName> {
    piece
        .outline()
        .edges()
        .iter()
        .find(|e| e.role() == EdgeRole::Hem)
        .map(|e| e.name())
}

/// A notch of a balance line lies at most so far from where the line ends, in millimetres: lines stay
/// level where back and front are brought to one length, notches go with the cloth.
const AT_ITS_NOTCH: f64 = 10.0;

/// Where along the side seam, darts open, a balance line ends on it: at its notch, so that what is
/// moved there is moved at the same place of both pieces, and moved back there; where it has none,
/// at the place nearest to its end.
pub(in crate::alterations) fn line_on_side(piece: &Piece, line: &str) -> Option<f64> {
    let at = piece.line(line)?.curve.end();
    let side = piece.outline().edge(&EdgeName::SIDE_SEAM)?.curve();
    let ends = side.nearest(at).1;
    let mut notches = piece.notches().iter();
    let notch = notches.find(|n| n.edge == EdgeName::SIDE_SEAM && n.name == line);
    let notch = notch.filter(|n| (n.at - ends).abs() <= AT_ITS_NOTCH);
    Some(notch.map_or(ends, |notch| notch.at))
}

/// Where along the side seam, darts open, the waist is: its end on a bodice, its start on a
/// skirt.
pub(in crate::alterations) fn waist_on_side(piece: &Piece) -> Option<f64> {
    let side = piece.outline().edge(&EdgeName::SIDE_SEAM)?.curve();
    if piece.outline().edge(&EdgeName::WAIST).is_some() {
        return Some(if upper(piece) { side.length() } else { 0.0 });
    }
    line_on_side(piece, "waist")
}

/// The pieces of the trunk that reach over the hips.
pub(in crate::alterations) fn over_hips(pattern: &Pattern) -> impl Iterator<Item = &Piece> {
    quarters(pattern).filter(|piece| piece.line("hip").is_some())
}

/// Where along the side seam, darts open, waist and hip are.
pub(in crate::alterations) fn waist_and_hip(
    piece: &Piece,
    advice: &'static str,
) -> Result<(f64, f64), AlterationError> {
    let missing = |what: &str| AlterationError::Missing {
        what: format!("{what} on the {}", piece.name()),
        advice,
    };
    let waist = waist_on_side(piece).ok_or_else(|| missing("a waist at the side seam"))?;
    let hip = line_on_side(piece, "hip").ok_or_else(|| missing("a hip line"))?;
    Ok((waist, hip))
}

/// Where along the sewn side seam the stretch above the waist begins that has no dart: the same
/// for all of these pieces, so that seams that match keep matching.
pub(in crate::alterations) fn free_above_waist(pieces: &[&Piece]) -> f64 {
    let side = &EdgeName::SIDE_SEAM;
    pieces
        .iter()
        .flat_map(|p| {
            let until = waist_on_side(p).unwrap_or(0.0);
            p.mouths(side)
                .into_iter()
                .filter(move |(_, _, to)| *to < until)
                .map(|(_, opens, _)| p.sewn_position(side, opens))
        })
        .fold(0.0, f64::max)
}

/// The same place on one piece, darts open: behind a dart that lies there.
pub(in crate::alterations) fn opened(piece: &Piece, sewn: f64) -> f64 {
    let side = &EdgeName::SIDE_SEAM;
    let at = piece.open_position(side, sewn);
    piece
        .mouths(side)
        .iter()
        .filter(|(_, opens, _)| *opens <= at + tolerance::POINT)
        .map(|(_, _, to)| *to)
        .fold(at, f64::max)
}
