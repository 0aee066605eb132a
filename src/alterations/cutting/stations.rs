//! An edge moved at some of its places, blended between them.

use super::true_up::with_mouth;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{
    Curve, GeometryError, Rigid, Vec2, at_joint, carried_smoothly, tolerance, without_slivers,
};
use crate::piece::{EdgeName, Piece};

/// One place along an edge and by how much it moves.
///
/// ```
/// use blockwright::alterations::Station;
/// use blockwright::geometry::Vec2;
/// let waist = Station { at: 180.0, by: Vec2::new(5.0, 0.0) };
/// assert_eq!(waist.by.y, 0.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Length along the edge, darts open, in millimetres.
    pub at: f64,
    /// By how much the edge moves there.
    pub by: Vec2,
}

impl Station {
    /// A station.
    #[must_use]
    pub fn new(at: f64, by: Vec2) -> Self {
        Self { at, by }
    }
}

/// A curve moved at its stations: before the first and after the last it moves whole, between
/// two it is blended so that its direction at both stays.
///
/// ```
/// use blockwright::alterations::{Station, moved_at};
/// use blockwright::geometry::{Curve, Point, Vec2};
/// let seam = Curve::line(Point::ORIGIN, Point::new(0.0, 600.0))?;
/// // 10 mm more at the hip, nothing at the waist.
/// let wide = moved_at(&seam, &[Station::new(0.0, Vec2::ZERO), Station::new(200.0, Vec2::new(10.0, 0.0))])?;
/// assert_eq!(wide.start(), seam.start());
/// assert_eq!(wide.end(), Point::new(10.0, 600.0));
/// # Ok::<(), blockwright::geometry::GeometryError>(())
/// ```
///
/// # Errors
/// When the stations do not lie on the curve, in order.
pub fn moved_at(curve: &Curve, stations: &[Station]) -> Result<Curve, GeometryError> {
    Ok(moved_parts(curve, stations)?.0)
}

/// Old and new lengths along an edge at the ends of its parts.
type Marks = Vec<(f64, f64)>;

fn moved_parts(curve: &Curve, stations: &[Station]) -> Result<(Curve, Marks), GeometryError> {
    let curve = &without_slivers(curve, &[])?;
    let length = curve.length();
    let (Some(first), Some(last)) = (stations.first(), stations.last()) else {
        return Ok((curve.clone(), vec![(0.0, 0.0), (length, length)]));
    };
    let mut places = vec![Station::new(0.0, first.by)];
    places.extend(stations.iter().copied());
    places.push(Station::new(length, last.by));
    let mut whole: Option<Curve> = None;
    let mut marks = vec![(0.0, 0.0)];
    for [start, end] in places.array_windows() {
        let [from, to] = [start, end].map(|s| at_joint(curve, s.at));
        let (from, to) = (from.max(0.0), to.min(length));
        if to - from <= tolerance::POINT {
            continue;
        }
        let part = curve.part(from, to)?.moved(&Rigid::shift(start.by));
        let by = end.by - start.by;
        let part = if by == Vec2::ZERO {
            part
        } else {
            carried_smoothly(&part.reversed(), &Rigid::shift(by))?.reversed()
        };
        let walked = marks.last().map_or(0.0, |m| m.1) + part.length();
        marks.push((to, walked));
        whole = Some(match whole {
            Some(before) => before.then(&part)?,
            None => part,
        });
    }
    Ok((whole.ok_or(GeometryError::Empty)?, marks))
}

/// Where a length along the old edge lies on the new.
fn carried_along(marks: &[(f64, f64)], at: f64) -> f64 {
    for &[(old_from, new_from), (old_to, new_to)] in marks.array_windows() {
        if at <= old_to {
            return new_from + (at - old_from) * (new_to - new_from) / (old_to - old_from);
        }
    }
    marks.last().map_or(at, |m| m.1)
}

/// Moves an edge of a sketch at its stations; its notches go along. A dart on the edge has to
/// lie where nothing moves, before the first station that does: its mouth is shaped anew.
///
/// # Errors
/// When the piece has no such edge, a dart of it would move, or the stations do not lie on it.
pub(in crate::alterations) fn move_edge(
    sketch: &mut Sketch,
    piece: &Piece,
    edge: &EdgeName,
    stations: &[Station],
) -> Result<(), AlterationError> {
    let curve = sketch.curve(edge)?.clone();
    let mouths = piece.mouths(edge);
    let still = |until: f64| {
        stations
            .iter()
            .all(|s| s.by == Vec2::ZERO || s.at > until + tolerance::POINT)
            && stations
                .iter()
                .rev()
                .find(|s| s.by == Vec2::ZERO)
                .is_some_and(|s| s.at >= until - tolerance::POINT)
    };
    let (moved, marks, mouth) = match mouths.as_slice() {
        [] => {
            let (moved, marks) = moved_parts(&curve, stations)?;
            (moved, marks, None)
        }
        [(dart, from, to)] if still(*to) => {
            let after = curve.part(*to, curve.length())?;
            let shifted: Vec<Station> = stations
                .iter()
                .map(|s| Station::new(s.at - to, s.by))
                .collect();
            let (after, marks) = moved_parts(&after, &shifted)?;
            let moved = with_mouth(&curve.part(0.0, *from)?, dart, &after)?;
            let opens = moved.length() - after.length();
            (moved, marks, Some((*to, opens)))
        }
        _ => {
            return Err(AlterationError::First {
                why: format!(
                    "the {edge} of the {} has darts where it would be moved",
                    piece.name()
                ),
                advice: "make this alteration before darts are relocated".to_owned(),
            });
        }
    };
    sketch.replace(edge, moved)?;
    for notch in &mut sketch.parts_mut().notches {
        if &notch.edge != edge {
            continue;
        }
        notch.at = match mouth {
            None => carried_along(&marks, notch.at),
            Some((to, opens)) if notch.at >= to => opens + carried_along(&marks, notch.at - to),
            Some(_) => notch.at,
        };
    }
    Ok(())
}
