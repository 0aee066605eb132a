//! What cannot be laid, and what is said of it.

use super::garments::drafted;
use blockwright::draft::Block;
use blockwright::lay::{Cloth, CutShape, LayError, LayPart, Pose, Search, parts};

#[test]
fn a_piece_wider_than_the_cloth_is_named_with_its_width() {
    let pattern = drafted(Block::Dress, None);
    let cloth = Cloth::new(400.0).unwrap().folded();
    let refused = Search::new(&cloth, parts(&pattern, None, &cloth).unwrap(), 1).unwrap_err();
    let LayError::TooNarrow {
        across,
        needs,
        gives,
        cloth: enough,
        ..
    } = refused.clone()
    else {
        panic!("{refused}");
    };
    assert_eq!((gives, needs, enough), (200.0, across + 5.0, 2.0 * needs));
    assert!(refused.to_string().contains("200 mm folded"), "{refused}");
    // As narrow as it says is wide enough for that piece, and a little less is not.
    let piece = pattern
        .piece(refused.to_string().split(' ').next().unwrap())
        .unwrap();
    assert!((piece.outline().bounds().width() - across).abs() < 0.1);
    let rectangle = |width: f64| {
        let shape = CutShape::rectangle(300.0, across).unwrap();
        let part = LayPart::new("half", shape).on_fold();
        Search::new(&Cloth::new(width).unwrap().folded(), vec![part], 1)
    };
    assert!(rectangle(enough).is_ok());
    assert!(rectangle(enough - 1.0).is_err());
}

#[test]
fn a_pair_that_only_fits_opened_out_is_reported_so() {
    let sleeve = LayPart::new("sleeve", CutShape::rectangle(600.0, 500.0).unwrap());
    let cloth = Cloth::new(900.0).unwrap().folded();
    let refused = Search::new(&cloth, vec![sleeve.clone()], 1).unwrap_err();
    assert!(refused.to_string().contains("open it out"), "{refused}");
    assert!(Search::new(&Cloth::new(900.0).unwrap(), vec![sleeve], 1).is_ok());
}

#[test]
fn numbers_out_of_reach_are_refused() {
    for width in [0.0, -5.0, 49.9, 1e5, f64::NAN, f64::INFINITY] {
        assert!(matches!(Cloth::new(width), Err(LayError::Width { .. })));
    }
    let cloth = Cloth::new(1400.0).unwrap();
    for gap in [-1.0, 101.0, f64::NAN] {
        assert!(matches!(cloth.with_gap(gap), Err(LayError::Gap { .. })));
    }
    assert_eq!(
        Search::new(&cloth, vec![], 1).unwrap_err(),
        LayError::Nothing
    );
    let part = LayPart::new("tab", CutShape::rectangle(30.0, 30.0).unwrap());
    let many = vec![part.clone(); Search::MOST_PARTS + 1];
    let refused = Search::new(&cloth, many, 1).unwrap_err();
    assert!(matches!(refused, LayError::TooMany { count: 201, .. }));
    let none: &[Pose] = &[];
    let refused = Search::new(&cloth, vec![part.clone().with_poses(none)], 1).unwrap_err();
    assert!(matches!(refused, LayError::Shape { .. }));
    let refused = Search::new(&cloth, vec![part.on_fold()], 1).unwrap_err();
    assert!(
        matches!(refused, LayError::Fold { .. }),
        "the cloth has no fold"
    );
}
