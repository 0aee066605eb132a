//! A dart that goes along with the bust point: its tip as far as that, its mouth along its edge.

use crate::alterations::cutting::quarter::line_on_side;
use crate::alterations::cutting::true_up::{carried, with_mouth};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, angle_between, as_cubic, root, tolerance,
};
use crate::piece::{Apexes, Dart, EdgeName, Piece, Pressed};
use kurbo::{CubicBez, ParamCurve, PathSeg};

/// The edge beside a mouth is at least so long, in millimetres: less cannot be trued.
const LEAST_BESIDE: f64 = 12.0;

/// A dart is at least so long, in millimetres (value from memory).
const SHORTEST: f64 = 30.0;

/// Most that each leg's end gives way along the mouth, in millimetres.
const APART: f64 = 1.0;

/// Why a dart cannot go along.
pub(in crate::alterations) enum Stops {
    /// Only this share of the way can be made.
    Share(f64, &'static str),
    Other(AlterationError),
}

impl From<AlterationError> for Stops {
    fn from(error: AlterationError) -> Self {
        Self::Other(error)
    }
}

impl From<GeometryError> for Stops {
    fn from(error: GeometryError) -> Self {
        Self::Other(error.into())
    }
}

/// The piece with a dart gone along by `by`.
///
/// The tip goes by all of it. The mouth goes along its edge by what crosses the dart's centre line,
/// so that this still passes the bust point as it did. The edge beside it, to its next corner, dart or
/// the waist, is drawn to close without a corner; the ends of the legs give way by the few tenths that
/// keep the sewn edge at its length.
///
/// A dart with two apexes goes along whole across the piece, and with its upper apex up or down.
pub(in crate::alterations) fn follow(piece: &Piece, dart: &Dart, by: Vec2) -> Result<Piece, Stops> {
    match (&dart.edge, dart.apexes) {
        (None, Apexes::Two(upper, lower)) => {
            let across = Vec2::new(by.x, 0.0);
            let mut sketch = Sketch::of(piece);
            if let Some(slot) = sketch.dart_mut(&dart.name) {
                slot.legs = dart.legs.map(|leg| leg + across);
                slot.apexes = Apexes::Two(upper + by, lower + across);
            }
            Ok(sketch.finish()?)
        }
        (Some(edge), Apexes::One(apex)) => on_edge(piece, dart, edge, (apex, by)),
        _ => Ok(piece.clone()),
    }
}

/// The edge in parts: what stays, what is redrawn up to the mouth, from it, and what stays.
struct Beside {
    head: Option<Curve>,
    before: Curve,
    after: Curve,
    tail: Option<Curve>,
}

impl Beside {
    fn of(piece: &Piece, dart: &Dart, name: &EdgeName) -> Result<Self, AlterationError> {
        let missing = || AlterationError::Missing {
            what: format!("the {} dart on its edge {name}", dart.name),
            advice: "only darts that open on an edge go along",
        };
        let curve = piece.outline().edge(name).ok_or_else(missing)?.curve();
        let (mut start, mut end) = (0.0, curve.length());
        let mouths = piece.mouths(name);
        let own = mouths.iter().find(|(d, ..)| d.name == dart.name);
        let (_, from, to) = own.ok_or_else(missing)?;
        for (_, opens, closes) in &mouths {
            if closes < from {
                start = closes.max(start);
            } else if opens > to {
                end = opens.min(end);
            }
        }
        let waist = (*name == EdgeName::SIDE_SEAM).then(|| line_on_side(piece, "waist"));
        if let Some(waist) = waist.flatten().filter(|at| *at > to + LEAST_BESIDE) {
            end = waist.min(end);
        }
        let part = |from: f64, to: f64| {
            (to - from > tolerance::POINT)
                .then(|| curve.part(from, to))
                .transpose()
        };
        let need = |found: Option<Curve>| found.ok_or_else(missing);
        Ok(Self {
            head: part(0.0, start)?,
            before: need(part(start, *from)?)?,
            after: need(part(*to, end)?)?,
            tail: part(end, curve.length())?,
        })
    }

    fn length(&self) -> f64 {
        self.before.length() + self.after.length()
    }
}

fn on_edge(
    piece: &Piece,
    dart: &Dart,
    name: &EdgeName,
    (apex, by): (Point, Vec2),
) -> Result<Piece, Stops> {
    let beside = Beside::of(piece, dart, name)?;
    let [first, second] = dart.legs;
    let middle = first.midpoint(second);
    let along = (second - first).normalize();
    let slide = by.dot(along);
    fits(&beside, (apex, middle), (by, slide))?;
    let opening = |legs: [Point; 2], at: Point| {
        let [first, second] = legs;
        angle_between(second - at, first - at)
    };
    // Along the closed edge, which passes the mouth half way between its two directions.
    let onward = beside.before.end_direction() + beside.after.start_direction();
    let shift = onward * (slide / onward.dot(along));
    let drawn = |apart: f64| -> Result<(Curve, Dart, Curve), GeometryError> {
        let shifts = [shift - along * apart, shift + along * apart];
        let [to_first, to_second] = shifts;
        let legs = [first + to_first, second + to_second];
        let corner = 0.5 * (opening(dart.legs, apex) - opening(legs, apex + by));
        let turned =
            |at: Point, by: f64, to: Vec2| Rigid::turn_about(at, by).then(Rigid::shift(to));
        let up = beside.before.reversed();
        let before = drawn_out(&up, &turned(first, -corner, to_first))?.reversed();
        let after = drawn_out(&beside.after, &turned(second, corner, to_second))?;
        let dart = Dart {
            legs,
            apexes: Apexes::One(apex + by),
            ..dart.clone()
        };
        Ok((before, dart, after))
    };
    let wanted = beside.length();
    let apart = root("legs of a dart gone along", -APART, APART, |apart| {
        drawn(apart).map_or(f64::NAN, |(before, _, after)| {
            before.length() + after.length() - wanted
        })
    })
    .map_err(|_| AlterationError::First {
        why: format!(
            "the mouth of the {} dart cannot go along the {name} of the {} so far at its sewn length",
            dart.name,
            piece.name()
        ),
        advice: "move the bust point by less, or before that dart is moved to this edge".to_owned(),
    })?;
    let (before, dart, after) = drawn(apart)?;
    let (edge, dart) = match with_mouth(&before, &dart, &after) {
        Ok(edge) => (edge, dart),
        Err(_) => {
            // Where its fold does not lie on the one side, it is pressed to the other.
            let pressed = match dart.pressed {
                Pressed::TowardFirstLeg => Pressed::TowardSecondLeg,
                Pressed::TowardSecondLeg => Pressed::TowardFirstLeg,
            };
            let dart = Dart { pressed, ..dart };
            (with_mouth(&before, &dart, &after)?, dart)
        }
    };
    let whole = match beside.head {
        Some(head) => head.then(&edge)?,
        None => edge,
    };
    let whole = match beside.tail {
        Some(tail) => whole.then(&tail)?,
        None => whole,
    };
    let mut sketch = Sketch::of(piece);
    sketch.replace(name, whole)?;
    if let Some(slot) = sketch.dart_mut(&dart.name) {
        *slot = dart;
    }
    Ok(sketch.finish_sewn(piece)?)
}

/// Whether edge and dart stay long enough.
fn fits(
    beside: &Beside,
    (apex, middle): (Point, Point),
    (by, slide): (Vec2, f64),
) -> Result<(), Stops> {
    let room = |length: f64, least: f64, taken: f64, why| {
        if taken <= 0.0 || length - taken >= least {
            return Ok(());
        }
        Err(Stops::Share(((length - least) / taken).max(0.0), why))
    };
    room(
        beside
            .before
            .length()
            .min(beside.before.start().distance(beside.before.end())),
        LEAST_BESIDE,
        -slide,
        "its mouth would come too near to the end of its edge",
    )?;
    room(
        beside.after.length(),
        LEAST_BESIDE,
        slide,
        "its mouth would come too near to the end of its edge",
    )?;
    let axis = (middle - apex).normalize();
    room(
        apex.distance(middle),
        SHORTEST,
        by.dot(axis),
        "it would be too short to be sewn",
    )
}

/// A curve whose start goes with a motion while its end stays, its handles as much longer or shorter as
/// its parts are: drawn out or pushed together it bends as it did.
fn drawn_out(curve: &Curve, motion: &Rigid) -> Result<Curve, GeometryError> {
    let moved = carried(curve, motion)?;
    let scaled = curve.segments().iter().zip(moved.segments());
    let scaled = scaled.map(|(old, new)| {
        let c = as_cubic(new);
        let chord = old.start().distance(old.end());
        let by = c.p0.distance(c.p3) / chord;
        let by = if by.is_finite() { by } else { 1.0 };
        PathSeg::Cubic(CubicBez::new(
            c.p0,
            c.p0 + (c.p1 - c.p0) * by,
            c.p3 + (c.p2 - c.p3) * by,
            c.p3,
        ))
    });
    Curve::new(scaled.collect())
}
