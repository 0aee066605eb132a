//! A back neckline that stands off: into the shoulder dart, into ease, into a neck dart.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use super::wardrobe::{eased, pattern};
use blockwright::alterations::{
    Alteration, AlterationError, BackNeckGape, Fullness, Reason, alter,
};
use blockwright::draft::Block;
use blockwright::geometry::Point;
use blockwright::piece::{EdgeName, Pattern, Piece};

fn eased_in(amount: f64) -> Box<dyn Alteration> {
    Box::new(BackNeckGape::by(amount))
}

fn in_a_dart(amount: f64) -> Box<dyn Alteration> {
    Box::new(BackNeckGape {
        amount,
        fullness: Fullness::Dart,
    })
}

fn back(pattern: &Pattern) -> &Piece {
    let mut pieces = pattern.pieces().iter();
    let found = pieces.find(|p| p.outline().edge(&EdgeName::SHOULDER).is_some());
    found.unwrap()
}

/// Nape, neck side point, shoulder point.
fn corners(pattern: &Pattern) -> [Point; 3] {
    let edge = |name| back(pattern).outline().edge(&name).unwrap().curve().clone();
    let (neckline, shoulder) = (edge(EdgeName::NECKLINE), edge(EdgeName::SHOULDER));
    [neckline.start(), neckline.end(), shoulder.end()]
}

#[test]
fn a_gape_is_passed_into_the_shoulder_dart_or_eased() {
    on_all(
        eased_in,
        &[3.0, 5.0, -3.0],
        |_, _, _| false,
        |garment, amount, done| {
            let what = &garment.what;
            let change = |of: &str| read(&done.pattern, of) - read(&garment.pattern, of);
            assert!(
                (change("back neckline length") + amount).abs() < 0.01,
                "{what}"
            );
            let (was, is) = (corners(&garment.pattern), corners(&done.pattern));
            assert!(was[0].distance(is[0]) < 1e-9, "{what}: the nape stays");
            assert!(
                was[2].distance(is[2]) < if eased(&garment.pattern) { 0.6 } else { 1e-9 },
                "{what}: the shoulder point stays"
            );
            // The neck side point goes toward the centre by about the amount.
            let inward = was[1].x - is[1].x;
            assert!(inward * amount > 0.0, "{what}: {inward}");
            assert!(inward.abs() < 1.6 * amount.abs(), "{what}: {inward}");
            let fuller = if eased(&garment.pattern) {
                change("back shoulder length")
            } else {
                assert!(change("back shoulder length").abs() < 1e-6, "{what}");
                change("back shoulder dart intake")
            };
            assert!(
                fuller * amount > 0.0 && fuller.abs() < 1.2 * amount.abs(),
                "{what}: {fuller}"
            );
            assert!(change("front shoulder length").abs() < 1e-9, "{what}");
        },
    );
}

#[test]
fn a_gape_is_sewn_as_a_neck_dart() {
    for (which, block) in [(0, Block::Tunic), (1, Block::Shirt), (4, Block::Tunic)] {
        let before = pattern(block, true, which);
        for amount in [4.0, 10.0] {
            let after = alter(&before, &[in_a_dart(amount)]).unwrap().pattern;
            let dart = back(&after).dart("neck").unwrap();
            assert_eq!(dart.edge, Some(EdgeName::NECKLINE));
            assert!((dart.intake() - amount).abs() < 0.2, "{}", dart.intake());
            let middle = dart.legs[0].midpoint(dart.legs[1]);
            assert!((dart.apex().distance(middle) - 75.0).abs() < 0.5);
            // It points down, over the blade.
            let down = dart.apex() - middle;
            assert!(down.y > 65.0 && down.x > 0.0, "{down:?}");
            assert_eq!(corners(&before), corners(&after));
            assert_eq!(before.piece("front"), after.piece("front"));
        }
    }
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(eased_in, |_| true);
    undone(eased_in, 5.0, |_| true);
    too_much_is_refused(eased_in);
    too_much_is_refused(in_a_dart);
}

#[test]
fn what_cannot_be_taken_in_is_refused_with_the_way_out() {
    let tunic = pattern(Block::Tunic, false, 1);
    let refused = alter(&tunic, &[eased_in(18.0)]).unwrap_err();
    assert!(refused.to_string().contains("fullness: dart"), "{refused}");
    assert!(alter(&tunic, &[in_a_dart(12.0)]).is_ok());
    let let_out = alter(&tunic, &[in_a_dart(-3.0)]).unwrap_err();
    let missing = AlterationError::Missing {
        what: String::new(),
        advice: "",
    };
    let Reason::Alteration(reason) = let_out.reason else {
        panic!("a broken law");
    };
    assert_eq!(
        std::mem::discriminant(&reason),
        std::mem::discriminant(&missing)
    );
    // A second step goes on from a neck dart as from any other that was moved.
    let twice = alter(&tunic, &[in_a_dart(4.0), eased_in(3.0)]).unwrap();
    let by = read(&twice.pattern, "back neckline length") - read(&tunic, "back neckline length");
    assert!((by + 7.0).abs() < 0.02, "{by}");
}
