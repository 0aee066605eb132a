//! The side seams of back and front moved together.

use super::quarter::{hem, line_on_side, waist_and_hip};
use super::stations::{Station, move_edge, moved_at};
use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Vec2, root, tolerance};
use crate::piece::{EdgeName, Pattern, Piece};

/// A piece and how its side seam moves.
pub(in crate::alterations) type SideMove<'p> = (&'p Piece, Vec<Station>);

/// The moves with every stretch between two stations getting longer by the same on all the pieces:
/// by the mean of what each would get. Their stations go down or up for that by what is missing,
/// and what lies below goes with them.
///
/// Seams that bend unlike, as beside a bust dart, get longer by different lengths when they are
/// moved alike: sewn together one of them would be too long.
pub(in crate::alterations) fn matched(
    mut moves: Vec<SideMove<'_>>,
) -> Result<Vec<SideMove<'_>>, AlterationError> {
    let count = moves.first().map_or(0, |(_, stations)| stations.len());
    if moves.len() < 2 || moves.iter().any(|(_, stations)| stations.len() != count) {
        return Ok(moves);
    }
    let mut dropped = vec![0.0; moves.len()];
    for stretch in 1..count {
        for ((_, stations), drop) in moves.iter_mut().zip(&dropped) {
            station(stations, stretch)?.by.y += drop;
        }
        let stretches: Vec<Stretch> = moves
            .iter()
            .map(|(piece, stations)| Stretch::of(piece, stations, stretch))
            .collect::<Result<_, _>>()?;
        let longer = stretches.iter().map(|s| s.longer(0.0));
        let longer = longer.sum::<Result<f64, _>>()? / moves.len() as f64;
        let ends = moves.iter_mut().zip(&mut dropped);
        for (((_, stations), dropped), part) in ends.zip(&stretches) {
            let drop = part.drop_for(longer)?;
            *dropped += drop;
            station(stations, stretch)?.by.y += drop;
        }
    }
    Ok(moves)
}

/// The station at a place, which every piece has: they have equally many.
fn station(stations: &mut [Station], place: usize) -> Result<&mut Station, GeometryError> {
    stations.get_mut(place).ok_or(GeometryError::Empty)
}

/// A side seam that stays at the waist and goes out at the hip and parallel below it.
pub(in crate::alterations) fn out_at_hip(
    piece: &Piece,
    by: f64,
    advice: &'static str,
) -> Result<Vec<Station>, AlterationError> {
    let (waist, hip) = waist_and_hip(piece, advice)?;
    Ok(vec![
        Station::new(waist, Vec2::ZERO),
        Station::new(hip, Vec2::new(by, 0.0)),
    ])
}

/// The pattern with side seams moved, matched to one length; whatever ends on them goes along.
pub(in crate::alterations) fn with_sides_moved(
    pattern: &Pattern,
    moves: Vec<SideMove<'_>>,
) -> Result<Pattern, AlterationError> {
    let mut altered = pattern.clone();
    for (piece, stations) in matched(moves)? {
        let mut sketch = Sketch::of(piece);
        move_edge(&mut sketch, piece, &EdgeName::SIDE_SEAM, &stations)?;
        follow_side(&mut sketch, piece, &stations)?;
        altered = replaced(&altered, sketch.finish()?)?;
    }
    Ok(altered)
}

/// Everything that ends on a side seam goes along with it: balance lines, and the hem with the last
/// station.
pub(in crate::alterations) fn follow_side(
    sketch: &mut Sketch,
    piece: &Piece,
    stations: &[Station],
) -> Result<(), AlterationError> {
    let Some(seam) = piece.outline().edge(&EdgeName::SIDE_SEAM) else {
        return Ok(());
    };
    let (seam, last) = (seam.curve(), stations.last().map_or(Vec2::ZERO, |s| s.by));
    for line in sketch.lines_mut() {
        let end = line.curve.end();
        let (off, at) = seam.nearest(end);
        let own = line_on_side(piece, &line.name).filter(|own| *own != at);
        if own.is_none() && off > tolerance::SEAM_ALTERED {
            continue;
        }
        let at = own.unwrap_or(at);
        let by = moved_by(stations, at);
        if by != Vec2::ZERO {
            // It stays level: the drop is what a pencil line is wide.
            line.curve = Curve::line(line.curve.start(), Point::new(end.x + by.x, end.y))?;
        }
    }
    if let Some(hem) = hem(piece)
        && last != Vec2::ZERO
    {
        let length = sketch.curve(hem)?.length();
        let ends = [Station::new(0.0, last), Station::new(length, Vec2::ZERO)];
        move_edge(sketch, piece, hem, &ends)?;
    }
    Ok(())
}

/// By how much a place on the seam moves that is a station, or lies below the last; nothing where
/// it lies between two, whose blend is the seam's own.
fn moved_by(stations: &[Station], at: f64) -> Vec2 {
    let here = stations
        .iter()
        .rev()
        .find(|s| (s.at - at).abs() <= tolerance::SEAM_ALTERED);
    let below = stations.last().filter(|s| at > s.at);
    here.or(below).map_or(Vec2::ZERO, |s| s.by)
}

/// What lies between two stations of a side seam.
struct Stretch {
    by: Vec2,
    part: Curve,
}

impl Stretch {
    /// The stretch down to the station at a place.
    fn of(piece: &Piece, stations: &[Station], place: usize) -> Result<Self, AlterationError> {
        let mut stretches = stations.array_windows().skip(place.saturating_sub(1));
        let [from, to] = stretches.next().ok_or(GeometryError::Empty)?;
        let edge = piece.outline().edge(&EdgeName::SIDE_SEAM);
        let part = edge.map(|e| e.curve().part(from.at, to.at));
        Ok(Self {
            by: to.by - from.by,
            part: part.unwrap_or(Err(GeometryError::Empty))?,
        })
    }

    /// By how much it gets longer, its lower end going down besides by a drop.
    fn longer(&self, drop: f64) -> Result<f64, GeometryError> {
        let length = self.part.length();
        let ends = [
            Station::new(0.0, Vec2::ZERO),
            Station::new(length, self.by + Vec2::new(0.0, drop)),
        ];
        Ok(moved_at(&self.part, &ends)?.length() - length)
    }

    fn drop_for(&self, longer: f64) -> Result<f64, AlterationError> {
        let longer = longer - self.longer(0.0)?;
        let reach = 1.0 + 3.0 * longer.abs();
        drop_to(longer, (-reach, reach), |drop| self.longer(drop)).map_err(|source| {
            AlterationError::Construction {
                step: "side seams of back and front at one length",
                source,
            }
        })
    }
}

/// How far an end drops, between two bounds, that makes a length longer by so much than it is without
/// a drop.
pub(in crate::alterations) fn drop_to(
    longer: f64,
    (low, high): (f64, f64),
    length: impl Fn(f64) -> Result<f64, GeometryError>,
) -> Result<f64, GeometryError> {
    if longer.abs() <= tolerance::SOLVE {
        return Ok(0.0);
    }
    let wanted = length(0.0)? + longer;
    root("drop of a side seam", low, high, |drop| {
        length(drop).map_or(f64::NAN, |length| length - wanted)
    })
}
