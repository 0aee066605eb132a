//! Areas of outlines, and that they are simple.

use super::flat::{patterns, polygon};
use geo::{Area, Validation};

#[test]
fn areas_are_those_of_the_reference() {
    for (who, pattern) in patterns() {
        for piece in pattern.pieces() {
            let flatness = 1e-4;
            let found = piece.outline().area();
            let reference = polygon(piece.outline(), flatness).unsigned_area();
            // A chord may miss its arc by the flatness all along the outline.
            let edges = piece.outline().edges();
            let around: f64 = edges.iter().map(|e| e.curve().length()).sum();
            let off = (found.abs() - reference).abs();
            assert!(
                off <= flatness * around,
                "{who}, {}: {off} mm²",
                piece.name()
            );
        }
    }
}

#[test]
fn outlines_are_simple_and_run_one_way() {
    for (who, pattern) in patterns() {
        let mut ways = Vec::new();
        for piece in pattern.pieces() {
            let polygon = polygon(piece.outline(), 0.02);
            if let Err(fault) = polygon.check_validation() {
                let name = piece.name();
                assert!(polygon.is_valid(), "{who}, {name}: {fault}");
            }
            // The sign of the reference's area is the way round.
            ways.push(polygon.signed_area() > 0.0);
            assert_eq!(polygon.signed_area() > 0.0, piece.outline().area() > 0.0);
        }
        assert!(ways.windows(2).all(|w| w[0] == w[1]), "{who}: {ways:?}");
    }
}
