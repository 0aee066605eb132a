//! A panel seam bowed so that it stays in the cloth: high on an armscye the straight way to the
//! point of fullness would leave it.

use super::AlterationError;
use super::dart_opening::Opening;
use super::dart_swing::Swing;
use super::panel_corner::Bow;
use super::panel_pieces::Division;
use crate::geometry::{Curve, Point, Rigid, angle_between, crossings, tolerance};
use crate::piece::{Dart, Edge, Piece};
use std::f64::consts::PI;

/// Bows that are tried, the least that will do first: by so much a seam leaves its start off the
/// straight way, in radians.
pub(super) const BOWS: [f64; 8] = [
    0.0,
    8.0 * PI / 180.0,
    16.0 * PI / 180.0,
    24.0 * PI / 180.0,
    32.0 * PI / 180.0,
    40.0 * PI / 180.0,
    50.0 * PI / 180.0,
    60.0 * PI / 180.0,
];

/// A seam leaves the edge where it starts at least at this angle, in radians (20 degrees): a
/// narrower end of a panel frays before it is sewn (an assumption). Where no bow gives that, any
/// angle does that can be sewn.
pub(super) const SLIMMEST: [f64; 2] = [20.0 * PI / 180.0, 0.0];

/// The direction of the edge is taken so far beside the seam, in millimetres.
const BESIDE: f64 = 0.5;

/// The seam meets the outline at its ends; a crossing farther from them leaves the cloth, in
/// millimetres.
const AT_END: f64 = 1.0;

/// A line that the cut crosses runs on over it by so much on either side, in millimetres, so that
/// the seam crosses it clear of where it is bridged.
const ACROSS: f64 = 2.0;

/// The piece with a dart brought to a place along a cut that is bowed by so much: what a seam is
/// made of next.
pub(super) fn brought(
    piece: &Piece,
    [dart, other]: [&str; 2],
    place: &Opening,
    off: f64,
) -> Result<(Piece, Bow), AlterationError> {
    let missing = || AlterationError::Missing {
        what: format!("the {dart} and {other} darts on the {}", piece.name()),
        advice: "name darts of the piece",
    };
    let (dart, other) = piece
        .dart(dart)
        .zip(piece.dart(other))
        .ok_or_else(missing)?;
    let swing = Swing {
        piece,
        dart,
        share: 1.0,
        into: place.clone(),
        name: dart.name.clone(),
    };
    let made = swing.made_for_seam()?;
    let edge = piece.outline().edge(&place.edge).ok_or_else(missing)?;
    let start = edge.curve().point_at(place.from)?.0;
    let apex = dart.apex();
    let bow = Bow::sharing(off, &[start], apex, &other.legs);
    let motion = made.dart(&dart.name).and_then(|new| turn(new, start));
    let Some(motion) = motion.filter(|_| off > 0.0) else {
        return Ok((made, bow));
    };
    let cut = bow.way(start, (apex, bow.arrival(start, apex)))?;
    let mut parts = made.into_parts();
    for line in &mut parts.lines {
        let Some(old) = piece.line(&line.name).map(|l| &l.curve) else {
            continue;
        };
        if line.name == "bust" {
            continue;
        }
        let met = crossings(old.segments(), cut.segments());
        let [met] = met.as_slice() else { continue };
        let at = old.length_to(met.first);
        if at < 2.0 * ACROSS || at > old.length() - 2.0 * ACROSS {
            continue;
        }
        let before = old.part(0.0, at + ACROSS)?;
        let after = old.part(at - ACROSS, old.length())?;
        let ends_moved = line.curve.end().distance(old.end()) > tolerance::PRINT;
        let (before, after) = if ends_moved {
            (before, after.moved(&motion))
        } else {
            (before.moved(&motion), after)
        };
        let bridge = Curve::line(before.end(), after.start())?;
        line.curve = before.then(&bridge)?.then(&after)?;
    }
    Ok((Piece::new(parts)?, bow))
}

/// How the panel beside a new dart turned: about its apex, from where the cut started.
fn turn(dart: &Dart, start: Point) -> Option<Rigid> {
    let apex = dart.apex();
    let [a, b] = dart.legs;
    let moved = if a.distance(start) > b.distance(start) {
        a
    } else {
        b
    };
    let angle = angle_between(start - apex, moved - apex);
    (angle.abs() > tolerance::ANGLE).then(|| Rigid::turn_about(apex, angle))
}

/// Refuses a seam that leaves the cloth, or its edge at too small an angle.
pub(super) fn check_in_cloth(
    piece: &Piece,
    division: &Division<'_>,
    slimmest: f64,
) -> Result<(), AlterationError> {
    let ring = piece.outline().segments();
    let start = &division.ends[0];
    let on = piece.outline().edge(&start.edge).map(Edge::curve);
    for (path, at) in division
        .path
        .curves
        .iter()
        .zip([start.to + BESIDE, start.from - BESIDE])
    {
        let ends = [path.start(), path.end()];
        let outside = crossings(path.segments(), &ring).into_iter().any(|met| {
            let near = ends.iter().map(|end| end.distance(met.point));
            near.fold(f64::INFINITY, f64::min) > AT_END
        });
        let along = on.map(|curve| curve.point_at(at)).transpose()?;
        let slim = along.is_some_and(|(_, along)| {
            let off = angle_between(along, path.start_direction()).abs();
            off.min(PI - off) < slimmest
        });
        if outside || slim {
            let edge = &start.edge;
            return Err(AlterationError::First {
                why: format!("the seam would run along the {edge} or leave the cloth there"),
                advice: format!("choose another place on the {edge}"),
            });
        }
    }
    Ok(())
}
