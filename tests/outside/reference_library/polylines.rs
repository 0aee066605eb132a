//! Edges, darts and notches as points and straight lines, beside what the reference libraries make
//! of the same curves.

use super::flat::{flattened, patterns, polygon};
use blockwright::geometry::{GeometryError, Point};
use blockwright::piece::{Edge, Piece};
use geo::{Contains, Distance, Euclidean, LineString};

fn line(points: &[Point]) -> LineString {
    points.iter().map(|p| (p.x, p.y)).collect()
}

fn each_piece(mut look: impl FnMut(&str, &Piece)) {
    for (who, pattern) in patterns() {
        for piece in pattern.pieces() {
            look(&format!("{who}, {}", piece.name()), piece);
        }
    }
}

/// How far the points of the flattened curve lie from a chain, at most.
fn off(edge: &Edge, chain: &[Point]) -> f64 {
    let chain = line(chain);
    let points = flattened(edge.curve()).into_iter().map(geo::Point::from);
    points
        .map(|p| Euclidean.distance(&p, &chain))
        .fold(0.0, f64::max)
}

#[test]
fn an_edge_is_followed_within_the_tolerance() {
    let mut fewer = 0;
    each_piece(|who, piece| {
        for edge in piece.outline().edges() {
            let mut counts = Vec::new();
            for tolerance in [2.0, 0.1, 0.01] {
                let chain = edge.to_polyline(tolerance).unwrap();
                assert!(off(edge, &chain) <= tolerance, "{who} {}", edge.name());
                assert_eq!([chain[0], chain[chain.len() - 1]], edge.ends());
                counts.push(chain.len());
            }
            assert!(counts.is_sorted(), "{who} {}: {counts:?}", edge.name());
            fewer += usize::from(counts[0] < counts[2]);
        }
    });
    assert!(fewer > 50, "a coarse chain has fewer points: {fewer}");
}

#[test]
fn legs_are_points_of_their_edge_and_as_long_as_each_other() {
    let mut seen = 0;
    each_piece(|who, piece| {
        for dart in piece.darts() {
            let [first, second] = dart.leg_lengths();
            assert!((first - second).abs() < 1e-6, "{who} {}", dart.name);
            let chain = dart.to_polyline();
            assert!(chain.contains(&dart.apex()), "{who} {}", dart.name);
            let Some(name) = &dart.edge else { continue };
            let edge = piece.outline().edge(name).unwrap();
            let points = edge.to_polyline(1.0).unwrap();
            for leg in dart.legs {
                let near = points.iter().any(|p| p.distance(leg) < 1e-6);
                assert!(near, "{who} {}: no point at a leg", dart.name);
            }
            seen += 1;
        }
    });
    assert!(seen > 50, "{seen} darts");
}

#[test]
fn notches_stand_on_their_edge_and_point_into_the_piece() {
    let mut seen = 0;
    each_piece(|who, piece| {
        let inside = polygon(piece.outline(), 1e-3);
        for notch in piece.notches() {
            let edge = piece.outline().edge(&notch.edge).unwrap();
            let curve: LineString = flattened(edge.curve()).into();
            let points = piece.notch_points(notch);
            assert_eq!(points.len(), notch.cuts().len());
            for (point, [from, to]) in points.iter().zip(piece.notch_polylines(notch, 4.0)) {
                let off = Euclidean.distance(&geo::Point::new(point.x, point.y), &curve);
                assert!(off < 1e-4, "{who} {}: {off} mm off its edge", notch.name);
                assert_eq!(from, *point);
                assert!((from.distance(to) - 4.0).abs() < 1e-9);
                let inner = geo::Point::new(to.x, to.y);
                assert!(inside.contains(&inner), "{who} {}", notch.name);
                seen += 1;
            }
        }
    });
    assert!(seen > 100, "{seen} cuts");
}

#[test]
fn a_tolerance_that_is_none_is_refused() {
    let (_, pattern) = patterns().swap_remove(0);
    let edge = &pattern.pieces()[0].outline().edges()[0];
    for wrong in [f64::NAN, f64::INFINITY, 0.0, -1.0, 1e-9] {
        let refused = edge.to_polyline(wrong);
        assert!(
            matches!(refused, Err(GeometryError::Tolerance { .. })),
            "{wrong}"
        );
    }
    assert!(edge.point_at(edge.length() + 1.0).is_err());
}
