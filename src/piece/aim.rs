//! An edge redrawn for a dart that is aimed at another apex on its centre line.

use crate::geometry::{
    Curve, GeometryError, Point, Rigid, Vec2, angle_between, arc_length, perpendicular, root,
};
use kurbo::{CubicBez, ParamCurve, PathSeg};

/// Over so many millimetres of edge, on either side of a dart, its corner is spread.
const BLEND: f64 = 40.0;

/// Of the edge that is free beside a dart, the share that may be redrawn.
const OF_ROOM: f64 = 0.6;

/// How far the ends of the legs slide at most, in millimetres.
const SLIDE: f64 = 3.0;

/// How far a curved edge is bowed beside a dart at most, in millimetres.
const BOW: f64 = 1.5;

/// An edge before and after a dart, and the ends of its legs.
pub(crate) struct AimedEdge {
    pub before: Curve,
    pub legs: [Point; 2],
    pub after: Curve,
}

/// Redraws the edge beside a dart that is turned about one apex and sewn to another on the same
/// centre line.
///
/// A dart that ends nearer to its mouth is wider at its apex, so its edge would close with a
/// corner. Half of the corner is spread over the last millimetres of the edge on either side,
/// over at most [`BLEND`] and [`OF_ROOM`] of the `room` there. What that lengthens the edge is
/// taken back by the ends of the legs, which slide evenly apart: the sewn edge is as long as
/// before, and the legs stay equal.
pub(crate) fn aim_edge(
    before: &Curve,
    after: &Curve,
    (turned, sewn): (Point, Point),
    room: [f64; 2],
) -> Result<AimedEdge, GeometryError> {
    let (first, second) = (before.end(), after.start());
    let across = second - first;
    let over = room.map(|room| BLEND.min(OF_ROOM * room));
    let heading =
        |angle: f64, way: Vec2| Rigid::turn_about(Point::ORIGIN, angle).apply_direction(way);
    let opening = |legs: [Point; 2], at: Point| angle_between(legs[1] - at, legs[0] - at);
    let drawn = |bow: f64, slide: f64| -> Result<AimedEdge, GeometryError> {
        let by = across.normalize() * slide;
        let legs = [first + by, second - by];
        let corner = 0.5 * (opening([first, second], turned) - opening(legs, sewn));
        Ok(AimedEdge {
            before: ending_anew(
                before,
                legs[0],
                heading(-corner, before.end_direction()),
                (over[0], bow),
            )?,
            legs,
            after: ending_anew(
                &after.reversed(),
                legs[1],
                heading(corner, -after.start_direction()),
                (over[1], -bow),
            )?
            .reversed(),
        })
    };
    let wanted = before.length() + after.length();
    let miss = |bow: f64, slide: f64| {
        drawn(bow, slide).map_or(f64::NAN, |edge| {
            edge.before.length() + edge.after.length() - wanted
        })
    };
    // A curved edge is bowed a little more or less, a straight one gives way at the legs.
    if let Ok(bow) = root("bow of the edge beside a dart", -BOW, BOW, |bow| {
        miss(bow, 0.0)
    }) {
        return drawn(bow, 0.0);
    }
    let reach = SLIDE.min(0.3 * across.hypot());
    let slide = root("ends of the legs of a dart", -reach, reach, |slide| {
        miss(0.0, slide)
    })?;
    drawn(0.0, slide)
}

/// A curve whose last millimetres are bent to another end and direction, the rest kept: each
/// point goes off by a share that grows evenly, so that nothing changes where nothing turns.
fn ending_anew(
    curve: &Curve,
    end: Point,
    arrive: Vec2,
    (over, bow): (f64, f64),
) -> Result<Curve, GeometryError> {
    let (kept, last) = curve.split_at(curve.length() - over)?;
    let across = perpendicular(last.end() - last.start()).normalize() * bow;
    let (upper, lower) = last.split_at(0.5 * last.length())?;
    let none = Vec2::ZERO;
    let bowed = displaced(&upper, [none, none, across, across])?
        .then(&displaced(&lower, [across, across, none, none])?)?;
    // What the end goes off by, and what the last handle does: a third of the stretch.
    let off = end - last.end();
    let handle = off - (arrive - last.end_direction()) * (last.length() / 3.0);
    let turned = displaced(&bowed, [none, none, handle, off])?;
    kept.then(&turned.ending_at(end)?)
}

/// A curve whose points all go off by what an even cubic of shifts says at their place.
fn displaced(curve: &Curve, by: [Vec2; 4]) -> Result<Curve, GeometryError> {
    let [a, b, c, d] = by.map(|shift| Point::ORIGIN + shift);
    let (shift, whole) = (CubicBez::new(a, b, c, d), curve.length());
    let mut segments = Vec::with_capacity(curve.segments().len());
    let mut walked = 0.0;
    for segment in curve.segments() {
        let from = walked / whole;
        walked += arc_length(segment);
        let part = shift.subsegment(from..(walked / whole).min(1.0));
        let c = cubic(segment);
        segments.push(PathSeg::Cubic(CubicBez::new(
            c.p0 + part.p0.to_vec2(),
            c.p1 + part.p1.to_vec2(),
            c.p2 + part.p2.to_vec2(),
            c.p3 + part.p3.to_vec2(),
        )));
    }
    Curve::new(segments)
}

/// A segment as a cubic, evenly walked where it is straight.
fn cubic(segment: &PathSeg) -> CubicBez {
    match *segment {
        PathSeg::Line(l) => CubicBez::new(
            l.p0,
            l.p0.lerp(l.p1, 1.0 / 3.0),
            l.p0.lerp(l.p1, 2.0 / 3.0),
            l.p1,
        ),
        PathSeg::Quad(q) => q.raise(),
        PathSeg::Cubic(c) => c,
    }
}
