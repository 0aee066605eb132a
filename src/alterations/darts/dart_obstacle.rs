//! What stands against a dart in a place: the fold, a corner, another dart, the edge of the cloth.

use crate::alterations::AlterationError;
use crate::geometry::{Curve, Point, Region, crossings, tolerance};
use crate::invariants::Tolerances;
use crate::piece::{Dart, EdgeName, EdgeRole, Piece};

/// A dart opens at least this far from a notch, in millimetres: a little more than a mark has to lie
/// from its legs, since they slide when its tip is backed off.
const FROM_NOTCH: f64 = 1.5 * Tolerances::MARK_FROM_LEG;

/// A dart opens at least this far from the corner of its edge and from another dart, along the
/// sewn edge in millimetres: its folded mouth needs an edge to lie on (value from practice at
/// the table, about half a seam allowance).
const CLEAR: f64 = 6.0;

/// A piece about to be cut from a place on an edge to the apex of a dart.
pub(in crate::alterations) struct Dividing<'a> {
    pub piece: &'a Piece,
    pub dart: &'a Dart,
    /// Edge and place along it, darts open.
    pub into: (&'a EdgeName, f64),
    /// The dart that is there already, if one is.
    pub widens: Option<&'a str>,
    /// The panel between the dart and the place.
    pub panel: &'a Region,
}

/// What stands against it, in words, if something does.
pub(in crate::alterations) fn obstacle(
    d: &Dividing<'_>,
) -> Result<Option<String>, AlterationError> {
    let (name, at) = d.into;
    let missing = || AlterationError::Missing {
        what: format!("an edge {name} on the {}", d.piece.name()),
        advice: "name an edge of the piece that carries the dart",
    };
    let edge = d.piece.outline().edge(name).ok_or_else(missing)?;
    if edge.role() == EdgeRole::Fold {
        return Err(AlterationError::First {
            why: format!("a dart cannot open on the {name}, which is cut on the fold"),
            advice: "that takes a seam at the centre; choose another edge".to_owned(),
        });
    }
    if let Some(other) = astride(d) {
        return Ok(Some(format!(
            "the cut to the {name} would run through the {other} dart"
        )));
    }
    if d.widens.is_some() {
        return Ok(None);
    }
    let sewn = d.piece.sewn_position(name, at);
    let length = d.piece.seam_length(name).unwrap_or(0.0);
    if sewn < CLEAR || sewn > length - CLEAR {
        return Ok(Some(format!(
            "the place lies at the corner of the {name}; a dart needs {CLEAR:.0} mm of edge beside it"
        )));
    }
    for (other, from, _) in d.piece.mouths(name) {
        let apart = (d.piece.sewn_position(name, from) - sewn).abs();
        if other.name != d.dart.name && apart < CLEAR {
            return Ok(Some(format!(
                "the {} dart opens there already, {apart:.1} mm away",
                other.name
            )));
        }
    }
    for notch in d.piece.notches().iter().filter(|n| n.edge == *name) {
        let apart = (d.piece.sewn_position(name, notch.at) - sewn).abs();
        if apart < FROM_NOTCH {
            return Ok(Some(format!("the {} notch lies there", notch.name)));
        }
    }
    let (place, _) = edge.curve().point_at(at)?;
    in_the_way(d, place)
}

/// A dart inside the piece that lies on both sides of the cut.
fn astride<'a>(d: &Dividing<'a>) -> Option<&'a str> {
    let split = |dart: &&Dart| {
        let points = dart.legs.into_iter().chain(dart.apexes.points());
        let mut within = points.map(|p| d.panel.surrounds(p));
        let first = within.next();
        dart.edge.is_none() && within.any(|w| Some(w) != first)
    };
    d.piece
        .darts()
        .iter()
        .find(split)
        .map(|dart| dart.name.as_str())
}

/// What the straight cut from the place to the apex runs through.
fn in_the_way(d: &Dividing<'_>, place: Point) -> Result<Option<String>, AlterationError> {
    let apex = d.dart.apex();
    let cut = Curve::line(place, apex)?;
    let apart =
        |p: &Point| p.distance(place) > tolerance::PRINT && p.distance(apex) > tolerance::PRINT;
    for other in d.piece.darts().iter().filter(|o| o.name != d.dart.name) {
        for end in other.legs {
            for tip in other.apexes.points() {
                let leg = Curve::line(end, tip)?;
                let met = crossings(cut.segments(), leg.segments());
                if met.into_iter().map(|c| c.point).any(|p| apart(&p)) {
                    return Ok(Some(format!(
                        "the cut from there would run through the {} dart",
                        other.name
                    )));
                }
            }
        }
    }
    let ring = d.piece.outline().segments();
    let off = crossings(cut.segments(), &ring)
        .into_iter()
        .any(|c| apart(&c.point));
    Ok(off.then(|| "the cut from there would leave the cloth".to_owned()))
}
