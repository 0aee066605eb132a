//! Away from corners the cut line lies as far from its edge as was asked; nowhere nearer.

use super::garments::many;
use blockwright::allowance::{Allowances, cut_line};
use blockwright::geometry::{Curve, Point, perpendicular};
use blockwright::piece::{Edge, EdgeRole, Piece};

const CLOSE: f64 = 0.05;

/// Points of a closed line, every 2 mm or so.
fn sampled(line: &Curve) -> Vec<Point> {
    let mut points = Vec::new();
    for segment in line.segments() {
        let alone = Curve::new(vec![*segment]).unwrap();
        let steps = (alone.length() / 2.0).ceil().max(1.0);
        for k in 0..steps as u32 {
            let t = f64::from(k) / steps;
            points.push(kurbo::ParamCurve::eval(segment, t));
        }
    }
    points
}

/// Corners of the stitching line: ends of edges, and joints where an edge turns.
fn corners(edge: &Edge) -> Vec<Point> {
    let segments = edge.curve().segments();
    let mut at = vec![edge.curve().start(), edge.curve().end()];
    for pair in segments.windows(2) {
        let [a, b] = [pair[0], pair[1]].map(|s| Curve::new(vec![s]).unwrap());
        if a.end_direction().cross(b.start_direction()).abs() > 1e-4 {
            at.push(a.end());
        }
    }
    at
}

/// From a place on an edge straight outward, the cut line is as far as it should be.
fn off_by(piece: &Piece, edge: &Edge, width: f64, cut: &Curve) -> f64 {
    let length = edge.curve().length();
    let corners = corners(edge);
    let mut worst: f64 = 0.0;
    for k in 0..=60 {
        let (p, along) = edge.curve().point_at(length * f64::from(k) / 60.0).unwrap();
        // What may be mitred, squared or mirrored does not count here.
        if corners.iter().any(|c| c.distance(p) < 3.0 * width + 100.0) {
            if corners.iter().any(|c| c.distance(p) < 1.5 * width + 12.0) {
                continue;
            }
            let other = piece.outline().edges().iter();
            let near = other
                .filter(|e| e.name() != edge.name())
                .map(|e| e.curve().nearest(p).0)
                .fold(f64::INFINITY, f64::min);
            if near < 2.5 * width.max(50.0) {
                continue;
            }
        }
        let outside = p - perpendicular(along) * width;
        let distance = edge.curve().nearest(outside).0;
        // In a bow tighter than the width no line lies that far out.
        if (distance - width).abs() < 1e-3 {
            worst = worst.max(cut.nearest(outside).0);
        }
    }
    worst
}

#[test]
fn the_cut_line_keeps_its_width() {
    let widths = [
        Allowances::usual(),
        Allowances::all_round(15.0).unwrap(),
        Allowances::all_round(25.0).unwrap(),
    ];
    let (mut faults, mut most, mut points) = (Vec::new(), 0.0_f64, 0usize);
    many(12, |who, pattern| {
        for piece in pattern.pieces() {
            for widths in &widths {
                let cut = cut_line(piece, widths).unwrap();
                for edge in piece.outline().edges() {
                    let width = widths.of(edge);
                    let off = off_by(piece, edge, width, &cut);
                    most = most.max(off);
                    if off > CLOSE {
                        faults.push(format!("{who} {} {}: {off:.3}", piece.name(), edge.name()));
                    }
                }
                for p in sampled(&cut) {
                    points += 1;
                    if let Some(message) = too_near(piece, widths, p) {
                        faults.push(format!("{who} {}: {message}", piece.name()));
                    }
                }
            }
        }
    });
    println!("off by at most {most:.4} mm; {points} points");
    assert!(points > 100_000, "{points}");
    let n = faults.len();
    assert!(
        faults.is_empty(),
        "{n}:\n{}",
        faults[..n.min(20)].join("\n")
    );
}

/// No point of the cut line is nearer to an edge than the least width round it.
fn too_near(piece: &Piece, widths: &Allowances, p: Point) -> Option<String> {
    let edges = piece.outline().edges();
    // What lies on the fold is not cut.
    let on_fold = |e: &Edge| {
        let (from, to) = (e.curve().start(), e.curve().end());
        e.role() == EdgeRole::Fold && ((p - from).cross((to - from).normalize())).abs() < 1e-3
    };
    if edges.iter().any(on_fold) {
        return None;
    }
    for (index, edge) in edges.iter().enumerate() {
        let width = widths.of(edge);
        let (distance, _) = edge.curve().nearest(p);
        if edge.role() == EdgeRole::Fold || distance >= width - CLOSE {
            continue;
        }
        let beside = [
            &edges[(index + edges.len() - 1) % edges.len()],
            &edges[(index + 1) % edges.len()],
        ];
        // Round a hem's corner the neighbour's width counts, for there it is mirrored.
        let least = beside
            .iter()
            .filter(|e| {
                let joint = if e.name() == beside[0].name() {
                    edge.curve().start()
                } else {
                    edge.curve().end()
                };
                e.role() != EdgeRole::Fold && joint.distance(p) < 2.5 * width.max(widths.of(e))
            })
            .map(|e| widths.of(e))
            .fold(width, f64::min);
        if distance < least - CLOSE {
            return Some(format!("{p:?} {distance:.3} from {}", edge.name()));
        }
    }
    None
}
