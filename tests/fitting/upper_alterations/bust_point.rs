//! The bust point and its darts, moved every way.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused};
use super::wardrobe::{BLOCKS, pattern};
use blockwright::alterations::{Alteration, BustDirection, BustPoint, DartRelocation, alter};
use blockwright::draft::Block;
use blockwright::geometry::Vec2;
use blockwright::piece::{Apexes, Pattern, Piece};

const WAYS: [(BustDirection, Vec2); 4] = [
    (BustDirection::Up, Vec2::new(0.0, -1.0)),
    (BustDirection::Down, Vec2::new(0.0, 1.0)),
    (BustDirection::In, Vec2::new(-1.0, 0.0)),
    (BustDirection::Out, Vec2::new(1.0, 0.0)),
];

fn moved(direction: BustDirection) -> impl Fn(f64) -> Box<dyn Alteration> {
    move |amount| Box::new(BustPoint { amount, direction })
}

fn front(pattern: &Pattern) -> &Piece {
    let mut pieces = pattern.pieces().iter();
    pieces.find(|p| p.bust_point().is_some()).unwrap()
}

#[test]
fn the_darts_go_along() {
    for (direction, way) in WAYS {
        on_all(
            moved(direction),
            &[12.0, -8.0],
            |_, _, _| false,
            |garment, amount, done| {
                let what = format!("{} {direction:?} by {amount}", garment.what);
                let (was, is) = (front(&garment.pattern), front(&done.pattern));
                let by = is.bust_point().unwrap() - was.bust_point().unwrap();
                assert!((by - way * amount).hypot() < 1e-9, "{what}: {by:?}");
                let line = is.line("bust").unwrap().curve.start().y;
                assert!((line - is.bust_point().unwrap().y).abs() < 1e-9, "{what}");
                for (old, new) in was.darts().iter().zip(is.darts()) {
                    assert!(
                        (old.intake() - new.intake()).abs() < 0.6,
                        "{what}: {}",
                        old.name
                    );
                    assert!((new.apex() - old.apex() - by).hypot() < 1e-9, "{what}");
                    let legs = [0, 1].map(|leg| new.legs[leg].distance(new.apex()));
                    assert!((legs[0] - legs[1]).abs() < 1e-6, "{what}: {legs:?}");
                    if let (Apexes::Two(_, low), Apexes::Two(_, lower)) = (old.apexes, new.apexes) {
                        // Its waist and its lower end go across only.
                        assert!(
                            (lower - low - Vec2::new(by.x, 0.0)).hypot() < 1e-9,
                            "{what}"
                        );
                        assert!((new.legs[0].y - old.legs[0].y).abs() < 1e-9, "{what}");
                    }
                }
                for edge in [
                    "side_seam",
                    "armscye",
                    "shoulder",
                    "neckline",
                    "centre_front",
                ] {
                    let of = format!("front {edge} length");
                    let by = read(&done.pattern, &of) - read(&garment.pattern, &of);
                    assert!(by.abs() < 0.01, "{what}: {edge} {by}");
                }
            },
        );
        none_changes_nothing(moved(direction), |_| true);
        too_much_is_refused(moved(direction));
    }
}

#[test]
fn there_and_back_with_tips_and_mouths() {
    for (direction, _) in WAYS {
        for block in BLOCKS {
            for which in [0, 1, 3] {
                let before = pattern(block, false, which);
                let step = moved(direction);
                let after = alter(&before, &[step(12.0), step(-12.0)]).unwrap().pattern;
                let (was, is) = (front(&before), front(&after));
                for (old, new) in was.darts().iter().zip(is.darts()) {
                    let ends = [
                        (old.apex(), new.apex()),
                        (old.legs[0], new.legs[0]),
                        (old.legs[1], new.legs[1]),
                    ];
                    for (a, b) in ends {
                        assert!(a.distance(b) < 0.05, "{}: {a:?} {b:?}", block.name());
                    }
                }
                // Notches that made way for a dart come back with it.
                for (old, new) in before.pieces().iter().zip(after.pieces()) {
                    for (old, new) in old.notches().iter().zip(new.notches()) {
                        assert!((old.at - new.at).abs() < 0.05, "{old:?} {new:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn a_relocated_dart_goes_along() {
    let dress = pattern(Block::Dress, false, 1);
    let relocate: Box<dyn Alteration> = Box::new(DartRelocation::to("bust", "shoulder", 0.5));
    let there = alter(&dress, &[relocate]).unwrap().pattern;
    let done = alter(&there, &[moved(BustDirection::Out)(8.0)]).unwrap();
    let apex = |p: &Pattern| front(p).dart("bust").unwrap().apex();
    let by = apex(&done.pattern) - apex(&there);
    assert!((by - Vec2::new(8.0, 0.0)).hypot() < 1e-9, "{by:?}");
}

#[test]
fn what_stands_against_it_is_said() {
    // Up until a dart ends on the underarm line, is too short, or has no edge beside it.
    let refused: Vec<String> = (0..6)
        .filter_map(|which| {
            let dress = pattern(Block::Dress, false, which);
            alter(&dress, &[moved(BustDirection::Up)(40.0)]).err()
        })
        .map(|refused| refused.to_string())
        .collect();
    assert!(!refused.is_empty());
    for text in refused {
        assert!(text.contains(" dart"), "{text}");
        assert!(text.contains("at most"), "{text}");
    }
    let skirt = pattern(Block::Skirt, false, 1);
    let missing = alter(&skirt, &[moved(BustDirection::Up)(5.0)]).unwrap_err();
    assert!(missing.to_string().contains("upper half"), "{missing}");
}

#[test]
fn the_direction_has_to_be_given() {
    let read = blockwright::alterations::find("bust_point").unwrap().read;
    let one = read(serde_json::json!({"amount": 10, "direction": "down"})).unwrap();
    assert_eq!(one.amount(), Some(10.0));
    assert!(read(serde_json::json!({"amount": 10})).is_err());
    assert!(read(serde_json::json!({"amount": 10, "direction": "sideways"})).is_err());
}
