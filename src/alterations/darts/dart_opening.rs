//! Where a dart opens on an edge, and to which side it is pressed.

use crate::alterations::AlterationError;
use crate::geometry::{Curve, Point, tolerance};
use crate::piece::{Dart, EdgeName, EdgeRole, Piece, Pressed};

/// A mouth so many times as long as its dart is wide is a point that stands out of the edge; if
/// the other side makes a shorter one the dart is pressed there (an assumption: mouths on side
/// seams, shoulders and waists, pressed to the usual side, are 1.0 to 1.4 times as long).
pub(in crate::alterations) const USUAL_MOUTH: f64 = 1.6;

/// A mouth is at most so many times as long as its dart is wide: beyond that the fold is a spike
/// that runs along the edge instead of being caught in it (an assumption). For a seam that the
/// dart is made into it may be as long; a cut line is drawn round shorter ones only.
pub(in crate::alterations) const LONGEST_MOUTH: f64 = 2.5;

/// How many times as long as its dart is wide a mouth on an edge is; infinite when the dart does
/// not open there.
pub(in crate::alterations) fn mouth_share(edge: &Curve, dart: &Dart) -> f64 {
    match dart.legs.map(|leg| edge.joint_at(leg)) {
        [Some(first), Some(second)] => (second - first) / dart.intake(),
        _ => f64::INFINITY,
    }
}

/// Where a dart is opened on an edge, along the edge with its darts open, in millimetres.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::alterations) struct Opening {
    pub edge: EdgeName,
    pub from: f64,
    /// Where the dart that is there already has its second leg; `from` when there is none.
    pub to: f64,
    /// The dart that is there already and gets wider.
    pub widens: Option<String>,
}

impl Opening {
    /// A new place, given as a share of the sewn length of an edge.
    pub fn place(piece: &Piece, edge: &EdgeName, share: f64) -> Result<Self, AlterationError> {
        let missing = || AlterationError::Missing {
            what: format!("an edge {edge} on the {}", piece.name()),
            advice: "name an edge of the piece that carries the dart",
        };
        let sewn = piece.seam_length(edge).ok_or_else(missing)?;
        if !(0.0..=1.0).contains(&share) {
            return Err(AlterationError::Setting(format!(
                "the place along the {edge} is {share}; it is a share of the edge, from 0 to 1"
            )));
        }
        let at = piece.open_position(edge, share * sewn);
        Ok(Self {
            edge: edge.clone(),
            from: at,
            to: at,
            widens: None,
        })
    }

    /// The place of a dart that is there and gets wider.
    pub fn dart(piece: &Piece, name: &str) -> Option<Self> {
        let edge = piece.dart(name)?.edge.clone()?;
        let mouths = piece.mouths(&edge);
        let (_, from, to) = mouths.iter().find(|(d, ..)| d.name == name)?;
        Some(Self {
            from: *from,
            to: *to,
            widens: Some(name.to_owned()),
            edge: edge.clone(),
        })
    }
}

/// To which side a dart is pressed, by common practice: an upright one toward the centre, a
/// level one down.
pub(in crate::alterations) fn pressed(piece: &Piece, apex: Point, legs: [Point; 2]) -> Pressed {
    let toward = legs[0].midpoint(legs[1]) - apex;
    let fold = piece
        .outline()
        .edges()
        .iter()
        .find(|e| e.role() == EdgeRole::Fold);
    let centre = fold.map_or(piece.grain()[0].x, |f| f.curve().start().x);
    let first = if toward.y.abs() >= toward.x.abs() {
        (legs[0].x - centre).abs() <= (legs[1].x - centre).abs()
    } else {
        legs[0].y >= legs[1].y
    };
    if first {
        Pressed::TowardFirstLeg
    } else {
        Pressed::TowardSecondLeg
    }
}

/// So far a folded dart may hang over the end of its edge, in millimetres: less than the pencil's line.
const OVERHANG: f64 = tolerance::PRINT;

/// What the fold of a dart hangs over, in words: sewn and pressed, half of its mouth lies on the edge
/// beside it, and where that is shorter it hangs over the next edge.
pub(in crate::alterations) fn hangs_over(piece: &Piece, dart: &str) -> Option<String> {
    let edge = piece.dart(dart)?.edge.clone()?;
    let mouths = piece.mouths(&edge);
    let (found, from, to) = mouths.iter().find(|(d, ..)| d.name == dart)?;
    let edges = piece.outline().edges();
    let at = edges.iter().position(|e| *e.name() == edge)?;
    let length = edges.get(at)?.curve().length();
    let (room, step) = match found.pressed {
        Pressed::TowardFirstLeg => (*from, edges.len() - 1),
        Pressed::TowardSecondLeg => (length - to, 1),
    };
    let neighbour = edges.get((at + step) % edges.len())?.name();
    (0.5 * (to - from) - room > OVERHANG).then(|| {
        format!("folded, the {dart} dart, so wide as it is, would hang over the {neighbour}")
    })
}
