//! Where curves cross, against crossings of their flattened chords.

use super::flat::{edges, flattened};
use blockwright::geometry::{Curve, Point, crossings};
use geo::{
    Coord, Line,
    line_intersection::{LineIntersection, line_intersection},
};

/// What a crossing may be off, in millimetres.
///
/// Crossings are those of chords half a millimetre long: on a curve of radius 30 such a chord
/// misses its arc by 0.5² / (8 · 30) = 0.001, and a shallow crossing stretches that a few times.
/// The reference adds its flatness. Half of what a seam may miss in a draft, 0.01.
const BOUND: f64 = 5e-3;

/// Crossings of two chains of chords.
fn reference(a: &[Coord], b: &[Coord]) -> Vec<Coord> {
    let mut found: Vec<Coord> = Vec::new();
    for p in a.windows(2) {
        for q in b.windows(2) {
            let crossing = line_intersection(Line::new(p[0], p[1]), Line::new(q[0], q[1]));
            if let Some(LineIntersection::SinglePoint {
                intersection: at, ..
            }) = crossing
                && !found.iter().any(|f| (f.x - at.x).hypot(f.y - at.y) < 1e-4)
            {
                found.push(at);
            }
        }
    }
    found
}

/// Slanted lines over the edge, none of them through an end or along it.
fn lines_over(edge: &Curve) -> Vec<Curve> {
    let bounds = edge.bounds().inflate(20.0, 20.0);
    [0.23, 0.41, 0.57, 0.79]
        .into_iter()
        .flat_map(|share| {
            let y = bounds.y0 + share * bounds.height();
            let x = bounds.x0 + share * bounds.width();
            [
                (Point::new(bounds.x0, y), Point::new(bounds.x1, y + 7.3)),
                (Point::new(x, bounds.y0), Point::new(x + 5.9, bounds.y1)),
            ]
        })
        .map(|(from, to)| Curve::line(from, to).expect("finite"))
        .collect()
}

#[test]
fn edges_are_crossed_where_the_reference_says() {
    let mut crossed = 0;
    // One body in three: every shape of edge, a second instead of four.
    for (name, edge) in edges().into_iter().step_by(3) {
        let points = flattened(&edge);
        for line in lines_over(&edge) {
            let expected = reference(&points, &flattened(&line));
            let found = crossings(edge.segments(), line.segments());
            let mut distinct: Vec<Point> = Vec::new();
            for crossing in found {
                if distinct.iter().all(|p| p.distance(crossing.point) > 1e-4) {
                    distinct.push(crossing.point);
                }
            }
            assert_eq!(
                distinct.len(),
                expected.len(),
                "{name}: {distinct:?} {expected:?}"
            );
            for at in expected {
                let nearest = distinct.iter().map(|p| p.distance(Point::new(at.x, at.y)));
                assert!(
                    nearest.fold(f64::MAX, f64::min) <= BOUND,
                    "{name} near {at:?}: {distinct:?}"
                );
                crossed += 1;
            }
        }
    }
    assert!(crossed > 300, "only {crossed} crossings were looked at");
}

#[test]
fn curves_cross_each_other_where_the_reference_says() {
    let cubic = |p: [(f64, f64); 4]| {
        let [a, b, c, d] = p.map(Point::from);
        Curve::cubic(a, b, c, d).expect("finite")
    };
    let arch = cubic([(0.0, 0.0), (30.0, 90.0), (70.0, 90.0), (100.0, 0.0)]);
    for (other, times) in [
        (
            cubic([(0.0, 30.0), (40.0, 30.0), (60.0, 35.0), (100.0, 33.0)]),
            2,
        ),
        (
            cubic([(50.0, -10.0), (50.0, 20.0), (55.0, 60.0), (50.0, 120.0)]),
            1,
        ),
        (
            cubic([(-5.0, 60.0), (60.0, -90.0), (40.0, 190.0), (105.0, 30.0)]),
            2,
        ),
        (
            cubic([(0.0, 80.0), (30.0, 95.0), (70.0, 95.0), (100.0, 80.0)]),
            0,
        ),
    ] {
        let expected = reference(&flattened(&arch), &flattened(&other));
        let found = crossings(arch.segments(), other.segments());
        assert_eq!(found.len(), expected.len(), "{found:#?} {expected:#?}");
        assert_eq!(found.len(), times, "{found:?}");
        for crossing in found {
            let p = crossing.point;
            let near = expected.iter().map(|e| (e.x - p.x).hypot(e.y - p.y));
            assert!(near.fold(f64::MAX, f64::min) <= BOUND);
        }
    }
}
