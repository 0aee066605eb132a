//! Drafted edges handed to the reference libraries: `lyon_geom` flattens and measures, `geo` takes
//! what was flattened.

use blockwright::draft::{Block, DraftOptions, Fit, draft};
use blockwright::geometry::{Curve, Point};
use blockwright::measurements::{Body, Measurement as M};
use blockwright::piece::{Outline, Pattern};
use geo::{Coord, LineString, Polygon};
use kurbo::PathSeg;
use lyon_geom::{CubicBezierSegment, LineSegment, QuadraticBezierSegment, point};

/// How far a flattened curve may run from the curve, in millimetres.
///
/// A chord that misses its arc by `d` is shorter than it by about 8/3 d²/chord; on the curves of
/// a block that adds up to less than 1e-5 mm.
pub const FLATNESS: f64 = 1e-5;

/// Half a dozen bodies from slight to large, pear and apple.
pub fn bodies() -> Vec<(&'static str, Body)> {
    [
        ("slight", [1550.0, 780.0, 600.0, 840.0]),
        ("mean", [1629.0, 907.0, 726.0, 967.0]),
        ("pear", [1650.0, 880.0, 690.0, 1060.0]),
        ("tall", [1850.0, 960.0, 760.0, 1010.0]),
        ("apple", [1620.0, 1060.0, 1000.0, 1040.0]),
        ("large", [1700.0, 1240.0, 1090.0, 1300.0]),
    ]
    .map(|(name, [height, bust, waist, hip])| {
        let taken = [
            (M::Height, height),
            (M::BustGirth, bust),
            (M::WaistGirth, waist),
            (M::HipGirth, hip),
        ];
        (name, Body::from_taken(taken).expect("a possible body"))
    })
    .into()
}

/// Bodice and skirt of each body at each fit, with a name for messages.
pub fn patterns() -> Vec<(String, Pattern)> {
    let mut all = Vec::new();
    for (name, body) in bodies() {
        for fit in [Fit::Close, Fit::Regular, Fit::Loose] {
            let options = DraftOptions::fitting(Block::BodiceAndSkirt, fit);
            let pattern = draft(&body, &options).expect("drafted");
            all.push((format!("{name}, {}", fit.name()), pattern));
        }
    }
    all
}

/// Every edge of every piece, with a name for messages.
pub fn edges() -> Vec<(String, Curve)> {
    let mut all = Vec::new();
    for (who, pattern) in patterns() {
        for piece in pattern.pieces() {
            for edge in piece.outline().edges() {
                let name = format!("{who}, {} {}", piece.name(), edge.name());
                all.push((name, edge.curve().clone()));
            }
        }
    }
    all
}

fn at(p: Point) -> lyon_geom::Point<f64> {
    point(p.x, p.y)
}

/// The points of a chain of segments, flattened by the reference library.
pub fn flattened_to(segments: &[PathSeg], flatness: f64) -> Vec<Coord> {
    let mut points: Vec<Coord> = Vec::new();
    let mut add = |segment: &LineSegment<f64>| {
        if points.is_empty() {
            points.push(Coord {
                x: segment.from.x,
                y: segment.from.y,
            });
        }
        points.push(Coord {
            x: segment.to.x,
            y: segment.to.y,
        });
    };
    for segment in segments {
        match *segment {
            PathSeg::Line(l) => add(&LineSegment {
                from: at(l.p0),
                to: at(l.p1),
            }),
            PathSeg::Quad(q) => QuadraticBezierSegment {
                from: at(q.p0),
                ctrl: at(q.p1),
                to: at(q.p2),
            }
            .for_each_flattened(flatness, &mut add),
            PathSeg::Cubic(c) => CubicBezierSegment {
                from: at(c.p0),
                ctrl1: at(c.p1),
                ctrl2: at(c.p2),
                to: at(c.p3),
            }
            .for_each_flattened(flatness, &mut |line: &LineSegment<f64>| add(line)),
        }
    }
    points
}

pub fn flattened(curve: &Curve) -> Vec<Coord> {
    flattened_to(curve.segments(), FLATNESS)
}

/// Length along the flattened points.
pub fn walked(points: &[Coord]) -> f64 {
    points
        .windows(2)
        .map(|p| (p[1].x - p[0].x).hypot(p[1].y - p[0].y))
        .sum()
}

/// An outline as a polygon, flattened to `flatness`; points that lie on each other are one.
pub fn polygon(outline: &Outline, flatness: f64) -> Polygon {
    let mut points = flattened_to(&outline.segments(), flatness);
    points.dedup_by(|a, b| (a.x - b.x).hypot(a.y - b.y) < 1e-6);
    Polygon::new(LineString::new(points), Vec::new())
}
