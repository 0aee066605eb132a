//! A figure that is a cylinder: its skirt is a rectangle, its bodice has nothing to take in.

use blockwright::draft::{Ease, Figure, Fit, bodice, skirt};
use blockwright::geometry::Point;
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{EdgeName, Piece};

/// The same ease at bust, waist and hip, so that the garment is a cylinder too.
fn even(fit: Fit) -> Ease {
    let ease = Ease::of(fit);
    Ease {
        waist: ease.bust,
        hip: ease.bust,
        ..ease
    }
}

/// Around these neck, shoulders and arms of the cylinder, which are one woman's, still belong.
const GIRTHS: [f64; 4] = [800.0, 900.0, 1000.0, 1100.0];
const FITS: [Fit; 3] = [Fit::Close, Fit::Regular, Fit::Loose];

/// How far a coordinate may be off: rounding.
const EXACT: f64 = 1e-9;

#[track_caller]
fn runs(piece: &Piece, edge: &EdgeName, from: (f64, f64), to: (f64, f64)) {
    let curve = piece.outline().edge(edge).expect("the edge").curve();
    for (found, wanted) in [(curve.start(), from), (curve.end(), to)] {
        let off = found.distance(Point::from(wanted));
        assert!(
            off <= EXACT,
            "{} {edge}: {found:?} is not {wanted:?}",
            piece.name()
        );
    }
    assert!(
        curve.is_straight(EXACT),
        "{} {edge} is straight",
        piece.name()
    );
}

#[test]
fn its_skirt_is_a_rectangle_without_darts() {
    for girth in GIRTHS {
        for fit in FITS {
            let (figure, ease) = (Figure::cylinder(girth), even(fit));
            let length = 620.0;
            let pattern = skirt(&figure, &ease, Some(length)).expect("drafted");
            let mut around = 0.0;
            for (name, centre) in [
                ("back", EdgeName::CENTRE_BACK),
                ("front", EdgeName::CENTRE_FRONT),
            ] {
                let piece = pattern.piece(name).expect("the piece");
                let hem = piece.outline().edge(&EdgeName::HEM).expect("a hem");
                let width = hem.curve().length();
                runs(piece, &EdgeName::WAIST, (0.0, 0.0), (width, 0.0));
                runs(piece, &EdgeName::SIDE_SEAM, (width, 0.0), (width, length));
                runs(piece, &EdgeName::HEM, (width, length), (0.0, length));
                runs(piece, &centre, (0.0, length), (0.0, 0.0));
                assert!(piece.darts().is_empty());
                assert!((piece.outline().area() - width * length).abs() < 1e-6 * length);
                around += 2.0 * width;
            }
            assert!((around - girth - ease.hip).abs() < EXACT * 1e3, "{around}");
            let broken = check_all(&pattern, &Tolerances::drafted());
            assert!(broken.is_empty(), "{broken:?}");
        }
    }
}

#[test]
fn its_bodice_has_no_waist_or_bust_dart_and_a_plumb_side() {
    for girth in GIRTHS {
        for fit in FITS {
            let (figure, ease) = (Figure::cylinder(girth), even(fit));
            let pattern = bodice(&figure, &ease).expect("drafted");
            for name in ["back", "front"] {
                let piece = pattern.piece(name).expect("the piece");
                let darts: Vec<&str> = piece.darts().iter().map(|d| d.name.as_str()).collect();
                let wanted: &[&str] = if name == "back" { &["shoulder"] } else { &[] };
                assert_eq!(darts, wanted, "{girth} {}", fit.name());
                let side = piece.outline().edge(&EdgeName::SIDE_SEAM).expect("a side");
                let side = side.curve();
                assert!(side.is_straight(EXACT));
                assert!((side.start().x - side.end().x).abs() <= EXACT);
                let waist = piece.outline().edge(&EdgeName::WAIST).expect("a waist");
                let waist = waist.curve();
                assert!(waist.is_straight(EXACT));
                assert!((waist.start().y - figure.back_waist_length).abs() <= EXACT);
                assert!((waist.end().y - figure.back_waist_length).abs() <= EXACT);
                assert!((waist.start().x - side.end().x).abs() <= EXACT);
            }
            let broken = check_all(&pattern, &Tolerances::drafted());
            assert!(broken.is_empty(), "{broken:?}");
        }
    }
}
