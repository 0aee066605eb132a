//! A panel seam bowed so that it stays in the cloth: high on an armscye the straight way to the
//! point of fullness would leave it.

use super::panel_corner::Bow;
use super::panel_pieces::Division;
use crate::alterations::AlterationError;
use crate::alterations::darts::dart_opening::Opening;
use crate::alterations::darts::dart_swing::Swing;
use crate::geometry::{angle_between, crossings};
use crate::piece::{Edge, Piece};
use std::f64::consts::PI;

/// Bows that are tried, the least that will do first: by so much a seam leaves its start off the
/// straight way, in radians.
pub(in crate::alterations) const BOWS: [f64; 8] = [
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
/// angle does that can be sewn; and where no even bend does, one that is rounded into the axis of its
/// dart.
pub(in crate::alterations) const SLIMMEST: [(f64, bool); 3] =
    [(20.0 * PI / 180.0, true), (0.0, true), (0.0, false)];

/// The direction of the edge is taken so far beside the seam, in millimetres.
const BESIDE: f64 = 0.5;

/// The seam meets the outline at its ends; a crossing farther from them leaves the cloth, in
/// millimetres.
const AT_END: f64 = 1.0;

/// The piece with a dart brought to a place along a cut that is bowed by so much: what a seam is
/// made of next.
pub(in crate::alterations) fn brought(
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
    let edge = piece.outline().edge(&place.edge).ok_or_else(missing)?;
    let start = edge.curve().point_at(place.from)?.0;
    let apex = dart.apex();
    let bow = Bow::sharing(off, &[start], apex, &other.legs);
    let cut = bow.way(start, (apex, bow.arrival(start, apex)))?;
    Ok((swing.made_for_seam(&cut)?, bow))
}

/// Refuses a seam that leaves the cloth, or its edge at too small an angle.
pub(in crate::alterations) fn check_in_cloth(
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
