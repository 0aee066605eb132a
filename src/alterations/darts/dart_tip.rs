//! Tips of darts: brought to the point of fullness to be turned there, and backed off again.

use super::dart_opening::{LONGEST_MOUTH, USUAL_MOUTH, mouth_share};
use crate::alterations::cutting::true_up::with_mouth;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{GeometryError, Point, Span, along, tolerance};
use crate::piece::{AimedEdge, Apexes, Dart, EdgeName, Piece, aim_edge};

/// How far the tip of a dart stops short of the bust point, by the edge it opens on, for a small
/// and for a full bust, in millimetres: 25 for a small one and up to 64 for a full one at the
/// side (S. Veblen, *Threads* 181), front darts at least 25 (*Introduction to Darts*, a sewing
/// educators' page); at shoulder and waist values from memory.
fn tip_range(edge: &EdgeName) -> [f64; 2] {
    if *edge == EdgeName::SIDE_SEAM {
        [25.0, 50.0]
    } else if *edge == EdgeName::WAIST || *edge == EdgeName::HEM {
        [20.0, 25.0]
    } else {
        [25.0, 40.0]
    }
}

/// Of the way from the bust point to the mouth, the share that a tip stops short at most: a dart
/// in a short place stays long enough to be sewn.
const OF_WAY: f64 = 0.4;

/// A dart turned about the bust point ends at most so far beside it, in millimetres: half of the
/// most that a bust is spread by lies between where its dart turns and where it points.
pub(in crate::alterations) const AT_BUST_POINT: f64 = 16.0;

/// How full the bust is by the tip of a dart made for it: 0 for small, 1 for full.
pub(in crate::alterations) fn bust_fullness(piece: &Piece, dart: &Dart) -> f64 {
    let Some(edge) = &dart.edge else { return 0.0 };
    let [least, most] = tip_range(edge);
    let distance = dart.apex().distance(piece.fullness(dart));
    Span::SHARES.nearest((distance - least) / (most - least))
}

/// The piece with a dart's tip at its point of fullness, where the dart can be turned.
pub(in crate::alterations) fn tip_to_fullness(
    piece: &Piece,
    dart: &Dart,
) -> Result<Piece, AlterationError> {
    aim_dart(piece, dart, piece.fullness(dart))
}

/// The piece with the tip of a dart that ends at the bust point backed off along its centre
/// line, as far as its place wants; any other dart stays.
pub(in crate::alterations) fn tip_backed_off(
    piece: &Piece,
    name: &str,
    fullness: f64,
) -> Result<Piece, AlterationError> {
    let (Some(dart), Some(bust)) = (piece.dart(name), piece.bust_point()) else {
        return Ok(piece.clone());
    };
    let (apex, mouth) = (dart.apex(), dart.legs[0].midpoint(dart.legs[1]));
    let axis = (apex - mouth).normalize();
    let full = mouth + axis * (bust - mouth).dot(axis);
    let (Some(edge), true) = (
        &dart.edge,
        full.distance(apex).max(full.distance(bust)) <= AT_BUST_POINT,
    ) else {
        return Ok(piece.clone());
    };
    let [least, most] = tip_range(edge);
    let off = (least + fullness * (most - least)).min(OF_WAY * full.distance(mouth));
    // Where the edge beside the mouth is too short or too curved to be trued, less far.
    for share in [1.0, 0.75, 0.5, 0.25] {
        let made = aim_dart(piece, dart, along(full, mouth, share * off));
        if let Ok(made) = made
            && made.dart(name).is_some_and(|new| stays(dart, new))
            && lies_flat(&made, name)
        {
            return Ok(made);
        }
    }
    Ok(piece.clone())
}

/// Whether the ends of the legs slid so little that no width across the dart changes by more
/// than can be seen.
fn stays(old: &Dart, new: &Dart) -> bool {
    let slid = old.legs.iter().zip(&new.legs).map(|(a, b)| a.distance(*b));
    slid.fold(0.0, f64::max) <= tolerance::PRINT
}

/// Whether the mouth of a dart stands out of its edge no farther than a dart may be opened.
fn lies_flat(piece: &Piece, name: &str) -> bool {
    piece.dart(name).is_none_or(|dart| {
        let edge = dart.edge.as_ref().and_then(|e| piece.outline().edge(e));
        edge.is_none_or(|edge| mouth_share(edge.curve(), dart) <= LONGEST_MOUTH)
    })
}

/// The piece with a dart aimed at a point on its centre line: the mouth is shaped anew, and the
/// edge meets the legs so that it still closes without a corner, as long as before.
pub(in crate::alterations) fn aim_dart(
    piece: &Piece,
    dart: &Dart,
    apex: Point,
) -> Result<Piece, AlterationError> {
    if dart.apex().distance(apex) <= tolerance::POINT {
        return Ok(piece.clone());
    }
    let missing = || AlterationError::Missing {
        what: format!("an edge with the {} dart", dart.name),
        advice: "only darts with one apex, open on an edge, can be moved",
    };
    let name = dart.edge.as_ref().ok_or_else(missing)?;
    let curve = piece.outline().edge(name).ok_or_else(missing)?.curve();
    let mouths = piece.mouths(name);
    let mut places = mouths.iter().enumerate();
    let found = places.find(|(_, (d, ..))| d.name == dart.name);
    let (place, &(_, from, to)) = found.ok_or_else(missing)?;
    let before = place.checked_sub(1).and_then(|p| mouths.get(p));
    // Plain edge beside the dart, to the corner or the next dart.
    let room = [
        from - before.map_or(0.0, |m| m.2),
        mouths.get(place + 1).map_or(curve.length(), |m| m.1) - to,
    ];
    let drawn = || -> Result<_, GeometryError> {
        let (before, after) = (curve.part(0.0, from)?, curve.part(to, curve.length())?);
        let AimedEdge {
            before,
            legs,
            after,
        } = aim_edge(&before, &after, (dart.apex(), apex), room)?;
        let dart = Dart {
            legs,
            apexes: Apexes::One(apex),
            ..dart.clone()
        };
        let pressed_as = |dart: Dart| {
            let edge = with_mouth(&before, &dart, &after)?;
            Ok::<_, GeometryError>((mouth_share(&edge, &dart), edge, dart))
        };
        // Where its fold does not lie on the one side or stands out, it is pressed to the other.
        let usual = pressed_as(dart.clone());
        if let Ok((share, edge, dart)) = &usual
            && *share <= USUAL_MOUTH
        {
            return Ok((edge.clone(), dart.clone()));
        }
        let pressed = dart.pressed.other();
        let other = pressed_as(Dart { pressed, ..dart });
        let (_, edge, dart) = match (usual, other) {
            (Ok(usual), Ok(other)) if other.0 < usual.0 => other,
            (Ok(usual), _) => usual,
            (Err(_), other) => other?,
        };
        Ok((edge, dart))
    };
    let (edge, dart) = drawn().map_err(|source| AlterationError::Construction {
        step: "tip of a dart",
        source,
    })?;
    let mut sketch = Sketch::of(piece);
    sketch.replace(name, edge)?;
    if let Some(slot) = sketch.dart_mut(&dart.name) {
        *slot = dart;
    }
    sketch.finish_sewn(piece)
}
