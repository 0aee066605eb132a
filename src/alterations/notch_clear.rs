//! The notch of a side seam moved along where a dart came too near.

use super::AlterationError;
use super::sleeve::replaced;
use crate::piece::{EdgeName, EdgeRef, Pattern, Piece};

/// The notch halfway down a side seam, on both pieces.
const SIDE: &str = "side";

/// It stands at least so far from where a dart closes and from the ends of the seam, in millimetres:
/// in a straight line to a leg 15 or more, for a dart opens aslant.
const CLEAR: f64 = 21.0;

/// Sewn lengths that are the same to so many millimetres are one place.
const SAME: f64 = 1.0;

/// The pattern with the notch of every side seam clear of darts: it moves as little as it must, on
/// both pieces alike. Where there is no such place it stays.
pub(super) fn with_side_notches_clear(pattern: Pattern) -> Result<Pattern, AlterationError> {
    let mut clear = pattern;
    let darted: Vec<Piece> = clear.pieces().to_vec();
    for piece in &darted {
        let Some((at, to)) = clear_place(piece) else {
            continue;
        };
        clear = replaced(&clear, notch_moved(piece, to)?)?;
        let length = sewn_length(piece);
        let seam = clear.seams().iter().find_map(|seam| {
            let on = |edges: &[EdgeRef]| match edges {
                [one] if one.edge == EdgeName::SIDE_SEAM => Some(one.piece.clone()),
                _ => None,
            };
            let (a, b) = (on(&seam.a)?, on(&seam.b)?);
            match piece.name() {
                name if name == a => Some(b),
                name if name == b => Some(a),
                _ => None,
            }
        });
        let Some(other) = seam.and_then(|name| clear.piece(&name)).cloned() else {
            continue;
        };
        let Some(theirs) = notch_at(&other) else {
            continue;
        };
        // The other piece may be walked the other way.
        let by = if (theirs - at).abs() <= (theirs + at - length).abs() + SAME {
            to - at
        } else {
            at - to
        };
        clear = replaced(&clear, notch_moved(&other, theirs + by)?)?;
    }
    Ok(clear)
}

fn sewn_length(piece: &Piece) -> f64 {
    piece.seam_length(&EdgeName::SIDE_SEAM).unwrap_or(0.0)
}

/// Where along the sewn side seam the notch is.
fn notch_at(piece: &Piece) -> Option<f64> {
    let mut notches = piece.notches().iter();
    let notch = notches.find(|n| n.edge == EdgeName::SIDE_SEAM && n.name == SIDE)?;
    Some(piece.sewn_position(&EdgeName::SIDE_SEAM, notch.at))
}

/// Where the notch is and where it has to go, along the sewn seam, if a dart is too near.
fn clear_place(piece: &Piece) -> Option<(f64, f64)> {
    let side = EdgeName::SIDE_SEAM;
    let at = notch_at(piece)?;
    let closes: Vec<f64> = piece
        .mouths(&side)
        .iter()
        .map(|(_, from, _)| piece.sewn_position(&side, *from))
        .collect();
    let free = |place: f64| {
        closes
            .iter()
            .all(|dart| (dart - place).abs() >= CLEAR - 1e-9)
    };
    if free(at) {
        return None;
    }
    let ends = CLEAR..=(sewn_length(piece) - CLEAR);
    let beside = closes.iter().flat_map(|dart| [dart - CLEAR, dart + CLEAR]);
    let places = beside.filter(|place| ends.contains(place) && free(*place));
    let nearest = places.min_by(|a, b| (a - at).abs().total_cmp(&(b - at).abs()))?;
    Some((at, nearest))
}

/// The piece with its notch at another place along the sewn seam.
fn notch_moved(piece: &Piece, to: f64) -> Result<Piece, AlterationError> {
    let side = EdgeName::SIDE_SEAM;
    let open = piece.open_position(&side, to);
    let mut parts = piece.clone().into_parts();
    let mut notches = parts.notches.iter_mut();
    if let Some(notch) = notches.find(|n| n.edge == side && n.name == SIDE) {
        notch.at = open;
    }
    Ok(Piece::new(parts)?)
}
