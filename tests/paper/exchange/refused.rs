//! What is not written.

use super::files::CASES;
use blockwright::draft::{Ease, Figure, Fit, skirt};
use blockwright::geometry::Point;
use blockwright::piece::{Pattern, Piece};
use blockwright::render::dxf::{DxfError, SizedPattern, Style, render};

const STYLE: Style<'static> = Style {
    title: "A skirt",
    sample_size: "40",
    date: None,
};

fn written(pattern: &Pattern) -> Result<String, DxfError> {
    let sized = SizedPattern {
        size: "40",
        pattern,
        cut: None,
    };
    render(&STYLE, &[sized])
}

/// A drafted skirt with its back changed.
fn spoil(
    change: impl Fn(&mut blockwright::piece::PieceParts),
) -> Result<Piece, blockwright::piece::PieceError> {
    let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None).unwrap();
    let mut parts = pattern.into_parts();
    let mut back = parts.pieces.remove(0).into_parts();
    change(&mut back);
    Piece::new(back)
}

/// A drafted skirt with its back changed.
fn spoiled(change: impl Fn(&mut blockwright::piece::PieceParts)) -> Pattern {
    let pattern = skirt(&Figure::cylinder(900.0), &Ease::of(Fit::Regular), None).unwrap();
    let mut parts = pattern.into_parts();
    let mut back = parts.pieces.remove(0).into_parts();
    change(&mut back);
    parts.pieces.insert(0, Piece::new(back).unwrap());
    Pattern::new(parts).unwrap()
}

#[test]
fn what_is_not_a_number_is_refused_before_anything_is_written() {
    assert!(written(&spoiled(|_| ())).is_ok());
    let nan = Point::new(f64::NAN, 0.0);
    // Such a mark makes no piece, so that there is nothing to write.
    let grain = spoil(|back| back.grain[1] = nan).unwrap_err();
    assert!(grain.to_string().contains("grain line"), "{grain}");
    let far = Point::new(0.0, f64::INFINITY);
    let hole = spoil(|back| {
        back.drill_points.push(blockwright::piece::DrillPoint {
            name: "pocket".into(),
            at: far,
        });
    });
    assert!(hole.unwrap_err().to_string().contains("pocket"));
}

#[test]
fn no_dart_without_an_apex() {
    let mut parts = CASES[0].outcome().pattern.into_parts();
    let mut back = parts.pieces.remove(0).into_parts();
    back.darts[0].apexes = blockwright::piece::Apexes::One(Point::new(1.0, f64::NAN));
    let name = back.darts[0].name.clone();
    let error = Piece::new(back).unwrap_err();
    assert!(error.to_string().contains(&format!("the {name} dart")));
}

#[test]
fn no_file_without_a_piece() {
    assert_eq!(render(&STYLE, &[]), Err(DxfError::NoPieces));
    let mut parts = CASES[0].outcome().pattern.into_parts();
    (parts.pieces, parts.seams, parts.girths) = (vec![], vec![], vec![]);
    let empty = Pattern::new(parts).unwrap();
    assert_eq!(written(&empty), Err(DxfError::NoPieces));
}
