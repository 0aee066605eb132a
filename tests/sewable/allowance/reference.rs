//! Held against an offset made by a general-purpose geometry library from polygons.

use super::garments::many;
use blockwright::allowance::{Allowances, cut_line};
use blockwright::geometry::{Curve, signed_area};
use blockwright::piece::{Edge, EdgeRole, Outline, Piece};
use geo::algorithm::buffer::{Buffer, BufferStyle, LineJoin};
use geo::{Area, LineString, Polygon};
use kurbo::{ParamCurve, PathSeg, Point};

/// The polygon of a ring, each cubic in so many chords.
fn polygon(segments: &[PathSeg]) -> Polygon {
    let mut points = Vec::new();
    for segment in segments {
        let steps = match segment {
            PathSeg::Line(_) => 1,
            _ => 60,
        };
        for k in 0..steps {
            let p = segment.eval(f64::from(k) / f64::from(steps));
            points.push((p.x, p.y));
        }
    }
    Polygon::new(LineString::from(points), vec![])
}

/// The piece with every edge cut: none on the fold, none turned up.
fn all_seams(piece: &Piece) -> Piece {
    let mut parts = piece.clone().into_parts();
    let edges = parts.outline.edges().iter();
    let seams = edges.map(|e| Edge::new(e.name().clone(), EdgeRole::Seam, e.curve().clone()));
    parts.outline = Outline::new(seams.collect()).unwrap();
    Piece::new(parts).unwrap()
}

/// Where the stitching line turns.
fn corners(piece: &Piece) -> Vec<Point> {
    let segments = piece.outline().segments();
    let pairs = segments.iter().zip(segments.iter().cycle().skip(1));
    pairs
        .filter(|(a, b)| {
            let [a, b] = [a, b].map(|s| Curve::new(vec![**s]).unwrap());
            a.end_direction().cross(b.start_direction()).abs() > 1e-3
        })
        .map(|(a, _)| a.end())
        .collect()
}

#[test]
fn the_cut_line_is_where_a_polygon_library_puts_it() {
    let (mut farthest, mut compared) = (0.0_f64, 0usize);
    many(5, |who, pattern| {
        for piece in pattern.pieces() {
            let piece = all_seams(piece);
            let corners = corners(&piece);
            for width in [10.0, 15.0, 25.0] {
                let widths = Allowances::all_round(width).unwrap();
                let cut = cut_line(&piece, &widths).unwrap();
                let style = BufferStyle::new(width).line_join(LineJoin::Round(0.02));
                let grown = polygon(&piece.outline().segments()).buffer_with_style(style);
                // Round corners hold the least; each of ours adds no more than a long mitre.
                let more = signed_area(cut.segments()) - grown.unsigned_area();
                let most = corners.len() as f64 * 2.5 * width * width;
                assert!(
                    (-5.0..most).contains(&more),
                    "{who} {}: {more}",
                    piece.name()
                );
                for ring in grown.iter() {
                    for c in ring.exterior() {
                        let p = Point::new(c.x, c.y);
                        if corners.iter().any(|q| q.distance(p) < 2.0 * width) {
                            continue;
                        }
                        compared += 1;
                        farthest = farthest.max(cut.nearest(p).0);
                    }
                }
            }
        }
    });
    println!("{compared} points, at most {farthest:.4} mm apart");
    assert!(compared > 10_000, "{compared}");
    assert!(farthest < 0.05, "{farthest}");
}
