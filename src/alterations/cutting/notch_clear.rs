//! The notch of a side seam moved along where a dart came too near.

use crate::alterations::AlterationError;
use crate::alterations::sleeves::sleeve::replaced;
use crate::piece::{EdgeName, EdgeRef, Pattern, Piece};

/// The notch halfway down a side seam, on both pieces.
const SIDE: &str = "side";

/// It stands at least so far from where a dart closes and from the ends of the seam, in millimetres:
/// in a straight line to a leg 15 or more, for a dart opens aslant.
const CLEAR: f64 = 21.0;

/// A notch as near to its usual place stands there, in millimetres.
const AS_USUAL: f64 = 0.1;

/// Sewn lengths that are the same to so many millimetres are one place.
const SAME: f64 = 1.0;

/// The pattern with the notch of every side seam clear of darts, on both pieces alike.
///
/// One that stood where a block has it, halfway or beside a dart that is there, stands so again, so
/// that it comes back with the dart. Any other moves as little as it must; where there is no such
/// place it stays.
pub(in crate::alterations) fn with_side_notches_clear(
    before: &Pattern,
    pattern: Pattern,
) -> Result<Pattern, AlterationError> {
    let mut clear = pattern;
    let darted: Vec<Piece> = clear.pieces().to_vec();
    for piece in &darted {
        let Some((at, to)) = clear_place(before.piece(piece.name()), piece) else {
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

/// Where the darts on the side seam close, along the sewn seam.
fn darts_close(piece: &Piece) -> Vec<f64> {
    let side = EdgeName::SIDE_SEAM;
    let mouths = piece.mouths(&side);
    let closes = mouths
        .iter()
        .map(|(_, from, _)| piece.sewn_position(&side, *from));
    closes.collect()
}

fn is_free(closes: &[f64], place: f64) -> bool {
    let clear = |dart: &f64| (dart - place).abs() >= CLEAR - 1e-9;
    closes.iter().all(clear)
}

/// The place that a block gives its notch: halfway down the seam, or below a dart that is there, or
/// above it where there is no room below.
fn usual_place(piece: &Piece) -> Option<f64> {
    let closes = darts_close(piece);
    let seam = piece.outline().edge(&EdgeName::SIDE_SEAM)?.curve();
    let down = (seam.end().y - seam.start().y).signum();
    let length = sewn_length(piece);
    let half = 0.5 * length;
    let beside = |by: f64| closes.iter().map(move |dart| dart + down * by);
    let mut places = std::iter::once(half)
        .chain(beside(CLEAR))
        .chain(beside(-CLEAR));
    places.find(|at| (CLEAR..=length - CLEAR).contains(at) && is_free(&closes, *at))
}

/// Where the notch is and where it has to go, along the sewn seam, if it has to.
fn clear_place(before: Option<&Piece>, piece: &Piece) -> Option<(f64, f64)> {
    let at = notch_at(piece)?;
    let stood_as_usual = before.is_some_and(|old| {
        let (stood, usual) = (notch_at(old), usual_place(old));
        stood
            .zip(usual)
            .is_some_and(|(stood, usual)| (stood - usual).abs() <= AS_USUAL)
    });
    if stood_as_usual && let Some(usual) = usual_place(piece) {
        return ((usual - at).abs() > 1e-9).then_some((at, usual));
    }
    let closes = darts_close(piece);
    if is_free(&closes, at) {
        return None;
    }
    let ends = CLEAR..=(sewn_length(piece) - CLEAR);
    let beside = closes.iter().flat_map(|dart| [dart - CLEAR, dart + CLEAR]);
    let places = beside.filter(|place| ends.contains(place) && is_free(&closes, *place));
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
