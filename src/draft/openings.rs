//! Getting in: which openings a garment needs, how long, and where they end.
//!
//! The neckline has to pass the head, the waist the bust (a garment goes on over the head) or
//! the hips (a skirt is stepped into), the wrist the hand. Where the finished girth is too
//! small, a slit or a zip has to make it up, twice its length on each: it is reported and its
//! ends are marked.

use super::{Block, Figure};
use crate::geometry::Point;
use crate::piece::{EdgeName, NamedPoint, Notch, NotchKind, Pattern, PatternParts, Piece, Warning};

/// What an opening is larger than the head, in millimetres, so that it passes with ears and
/// hair (common practice). 600 mm pass 95 % of heads (1988 and 2012 U.S. Army surveys, computed).
const HEAD_EASE: f64 = 10.0;
/// What a slit is longer than half of what is missing: its ends do not open flat. Half of head
/// less neckline "and a little" (an exam note on plackets); for a mean head and a jewel neck
/// this makes 120 mm, and 120 to 150 are safe for 95 % (computed).
const SLIT_MORE: f64 = 25.0;
/// What a waist is larger than the bust that passes through it, arms first (common practice).
const BUST_EASE: f64 = 20.0;
/// A zip is longer than half of what is missing by this.
const ZIP_MORE: f64 = 20.0;
/// The shortest zip of a skirt: 18 to 23 cm are usual, to end below the full hip curve (value
/// from memory; 23 to 30 cm for plackets in *School Sewing*).
const SKIRT_ZIP: f64 = 180.0;
/// The shortest zip in the side seam of a dress: 20 to 25 cm (value from memory).
const SIDE_ZIP: f64 = 200.0;
/// How much of a zip in the side seam of a dress lies above the waist.
const ABOVE_WAIST: f64 = 0.45;
/// What the thumb laid into the palm adds to the hand: 20 to 35 mm (value from memory).
const THUMB: f64 = 25.0;
/// The shortest slit at a wrist: 76 mm (sleeve placket, *Text-Book on Domestic Art*), or what a
/// hand needs.
const WRIST_SLIT: f64 = 76.0;
/// The end of an opening stays this far from notches and dart legs, in millimetres.
const CLEAR: f64 = 16.0;
/// An opening ends this far inside its seam, in millimetres.
const INSIDE: f64 = 25.0;

/// The pattern with the openings it needs reported and marked.
pub(super) fn with_openings(pattern: Pattern, f: &Figure, block: Block) -> PatternParts {
    let neckline: f64 = pattern
        .pieces()
        .iter()
        .filter_map(|piece| piece.seam_length(&EdgeName::NECKLINE))
        .sum::<f64>()
        * 2.0;
    let finished = |name: &str| {
        let girth = pattern.girths().iter().find(|g| g.name == name)?;
        Some(pattern.finished(girth))
    };
    let waist = finished("waist").or_else(|| finished("skirt_waist"));
    let wrist = finished("wrist");
    let mut parts = pattern.into_parts();
    if neckline > 0.0 {
        neck(&mut parts, neckline, f.head_girth);
    }
    if let Some(waist) = waist {
        at_waist(&mut parts, waist, f, block);
    }
    if let Some(wrist) = wrist {
        at_wrist(&mut parts, wrist, f.hand_girth);
    }
    parts
}

/// The length of a slit or zip that makes up what is missing, in whole centimetres.
fn length(missing: f64, more: f64, least: f64) -> f64 {
    ((0.5 * missing + more).max(least) / 10.0).ceil() * 10.0
}

fn warn(parts: &mut PatternParts, code: &'static str, text: String) {
    parts.warnings.push(Warning::new(code, text));
}

fn neck(parts: &mut PatternParts, neckline: f64, head: f64) {
    let missing = head + HEAD_EASE - neckline;
    if missing <= 0.0 {
        return;
    }
    let slit = length(missing, SLIT_MORE, 0.0);
    warn(
        parts,
        "neck_opening",
        format!(
            "the neckline is {neckline:.0} mm round and the head {head:.0} mm: open it by a slit of {slit:.0} mm, for example down the centre back, where its end is marked"
        ),
    );
    point(parts, "neck_slit_end", |piece| {
        piece.outline().edge(&EdgeName::CENTRE_BACK)?;
        let nape = piece.outline().edge(&EdgeName::NECKLINE)?.curve().start();
        Some(Point::new(nape.x, nape.y + slit))
    });
}

fn at_waist(parts: &mut PatternParts, waist: f64, f: &Figure, block: Block) {
    let (through, what, least) = match block {
        Block::Skirt => (f.hip_girth, "hips", SKIRT_ZIP),
        _ => (f.bust_girth + BUST_EASE, "bust", SIDE_ZIP),
    };
    let missing = through - waist;
    if missing <= 0.0 {
        return;
    }
    let zip = length(missing, ZIP_MORE, least);
    let above = match block {
        Block::Skirt => 0.0,
        Block::Bodice => zip,
        _ => ABOVE_WAIST * zip,
    };
    warn(
        parts,
        "waist_opening",
        format!(
            "the finished waist is {waist:.0} mm and has to pass the {what} ({through:.0} mm with ease): put a zip of {zip:.0} mm into the left side seam, {}; its ends are marked",
            match block {
                Block::Skirt => "from the waist down".to_owned(),
                Block::Bodice => "from the waist up".to_owned(),
                _ => format!("from {above:.0} mm above the waist down"),
            }
        ),
    );
    for ends in [
        ("back", "front"),
        ("bodice back", "bodice front"),
        ("skirt back", "skirt front"),
    ] {
        mark_zip(parts, ends, above, zip - above);
    }
}

/// Marks on both pieces of a side seam where an opening ends that runs by so much up and down
/// from the waist.
fn mark_zip(parts: &mut PatternParts, (back, front): (&str, &str), up: f64, down: f64) {
    let find = |name: &str| parts.pieces.iter().find(|p| p.name() == name);
    let (Some(back), Some(front)) = (find(back), find(front)) else {
        return;
    };
    let pieces = [back, front];
    let Some(seam) = pieces
        .iter()
        .filter_map(|p| p.seam_length(&EdgeName::SIDE_SEAM))
        .min_by(f64::total_cmp)
    else {
        return;
    };
    let Some(waist) = waist_along(back, seam) else {
        return;
    };
    let within = INSIDE..=seam - INSIDE;
    let mut marks = Vec::new();
    if waist > INSIDE {
        marks.push(("zip top", (waist - up).max(INSIDE), -5.0));
    }
    if waist < seam - INSIDE {
        marks.push(("zip end", (waist + down).min(seam - INSIDE), 5.0));
    }
    // Longer rather than into a notch or a dart.
    for (_, at, step) in &mut marks {
        while within.contains(at) && pieces.iter().any(|p| !clear(p, *at)) {
            *at += *step;
        }
    }
    marks.retain(|(_, at, _)| within.contains(at));
    let names = pieces.map(|p| p.name().to_owned());
    let anchors = side_notches(back);
    for piece in &mut parts.pieces {
        if !names.iter().any(|n| n == piece.name()) {
            continue;
        }
        let new: Vec<Notch> = marks
            .iter()
            .map(|(name, at, _)| Notch {
                name: (*name).to_owned(),
                edge: EdgeName::SIDE_SEAM,
                at: piece.open_position(&EdgeName::SIDE_SEAM, at + eased(piece, &anchors, *at)),
                kind: NotchKind::Single,
            })
            .collect();
        let mut changed = piece.clone().into_parts();
        changed.notches.extend(new);
        if let Ok(marked) = Piece::new(changed) {
            *piece = marked;
        }
    }
}

/// The notches of a sewn side seam, with how far from its upper end each lies.
fn side_notches(piece: &Piece) -> Vec<(String, f64)> {
    let edge = EdgeName::SIDE_SEAM;
    piece
        .notches()
        .iter()
        .filter(|n| n.edge == edge)
        .map(|n| (n.name.clone(), piece.sewn_position(&edge, n.at)))
        .collect()
}

/// By how much a piece is ahead of the one with these notches at a place along the sewn seam:
/// what it eased in up to the notch before.
fn eased(piece: &Piece, anchors: &[(String, f64)], at: f64) -> f64 {
    let own = side_notches(piece);
    anchors
        .iter()
        .filter(|(_, place)| *place <= at)
        .filter_map(|(name, place)| {
            let (_, met) = own.iter().find(|(n, _)| n == name)?;
            Some((place, met - place))
        })
        .max_by(|one, other| one.0.total_cmp(other.0))
        .map_or(0.0, |(_, ahead)| ahead)
}

/// Where the waist lies along the sewn side seam, from its upper end.
fn waist_along(piece: &Piece, seam: f64) -> Option<f64> {
    let edge = piece.outline().edge(&EdgeName::SIDE_SEAM)?.curve();
    if let Some(line) = piece.line("waist") {
        return Some(piece.sewn_position(&EdgeName::SIDE_SEAM, edge.nearest(line.curve.end()).1));
    }
    let waist = piece.outline().edge(&EdgeName::WAIST)?.curve().bounds();
    let from_top =
        (edge.start().y - waist.center().y).abs() < (edge.end().y - waist.center().y).abs();
    Some(if from_top { 0.0 } else { seam })
}

/// Whether a place along the sewn side seam is clear of notches and darts.
fn clear(piece: &Piece, sewn: f64) -> bool {
    let edge = EdgeName::SIDE_SEAM;
    let of_notches = side_notches(piece).into_iter().map(|(_, at)| at);
    let of_darts = piece
        .mouths(&edge)
        .into_iter()
        .map(|(_, from, _)| piece.sewn_position(&edge, from));
    of_notches
        .chain(of_darts)
        .all(|at| (at - sewn).abs() >= CLEAR)
}

fn at_wrist(parts: &mut PatternParts, wrist: f64, hand: f64) {
    let through = hand + THUMB;
    let missing = through - wrist;
    if missing <= 0.0 {
        return;
    }
    let slit = length(missing, ZIP_MORE, WRIST_SLIT);
    warn(
        parts,
        "wrist_opening",
        format!(
            "the finished wrist is {wrist:.0} mm and the hand with its thumb about {through:.0} mm: cut a slit of {slit:.0} mm at the back of the sleeve, where its end is marked, or leave the seam open as long"
        ),
    );
    point(parts, "wrist_slit_end", |piece| {
        piece.outline().edge(&EdgeName::SLEEVE_CAP)?;
        let wrist = piece.outline().edge(&EdgeName::WRIST)?.curve();
        let (at, along) = wrist.point_at(0.75 * wrist.length()).ok()?;
        // The edge runs from the front to the back, the piece lies on its right.
        let up = crate::geometry::perpendicular(along);
        Some(at + up * if up.y < 0.0 { slit } else { -slit })
    });
}

/// Adds a named point to a piece, where the piece has what it is placed by.
fn point(parts: &mut PatternParts, what: &str, at: impl Fn(&Piece) -> Option<Point>) {
    for piece in &mut parts.pieces {
        let Some(at) = at(piece) else { continue };
        let mut changed = piece.clone().into_parts();
        changed.points.push(NamedPoint {
            name: what.to_owned(),
            at,
        });
        if let Ok(marked) = Piece::new(changed) {
            *piece = marked;
        }
    }
}
