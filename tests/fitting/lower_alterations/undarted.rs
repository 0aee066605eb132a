//! Bodies without waist darts, and a seat that wants width on the back alone.

use super::{body, drafted};
use crate::support::measures::reading;
use blockwright::alterations::{Abdomen, Alteration, BackLengthReduction, Seat, Underarm, alter};
use blockwright::draft::{Block, DraftOptions, Fit, SleeveLength, draft};
use blockwright::geometry::Point;
use blockwright::piece::{EdgeName, Pattern};

/// A figure with hardly more hip than waist: its skirt has no darts.
fn straight_skirt() -> Pattern {
    let body = body(1680.0, 1000.0, 980.0, 1020.0);
    let pattern = drafted(&body, Block::Skirt, SleeveLength::Long).unwrap();
    assert!(pattern.pieces().iter().all(|p| p.darts().is_empty()));
    pattern
}

fn change(before: &Pattern, after: &Pattern, what: &str) -> f64 {
    reading(after, what).unwrap() - reading(before, what).unwrap()
}

/// Both ends of a skirt's waist: at the centre and at the side.
fn waist(pattern: &Pattern, piece: &str) -> [Point; 2] {
    let edge = pattern
        .piece(piece)
        .unwrap()
        .outline()
        .edge(&EdgeName::WAIST);
    let curve = edge.unwrap().curve();
    [curve.start(), curve.end()]
}

/// The piece, by how much its centre comes up, and the alteration there and back.
type Case = (&'static str, f64, [Box<dyn Alteration>; 2]);

#[test]
fn a_skirt_without_darts_is_raised_or_lowered_at_the_centre() {
    let old = straight_skirt();
    // By how much the centre comes up, and on which piece.
    let reduction = |amount| BackLengthReduction {
        hips_checked: true,
        ..BackLengthReduction::by(amount)
    };
    let cases: Vec<Case> = vec![
        (
            "back",
            15.0,
            [Box::new(Seat::by(15.0)), Box::new(Seat::by(-15.0))],
        ),
        (
            "front",
            12.0,
            [
                Box::new(Abdomen { amount: 12.0 }),
                Box::new(Abdomen { amount: -12.0 }),
            ],
        ),
        (
            "back",
            -12.0,
            [Box::new(reduction(12.0)), Box::new(reduction(-12.0))],
        ),
    ];
    for (piece, up, [there, back]) in cases {
        let name = there.name();
        let new = alter(&old, &[there]).unwrap().pattern;
        let (was, is) = (waist(&old, piece), waist(&new, piece));
        assert!((was[0].y - is[0].y - up).abs() < 1e-9, "{name}");
        // The side end gives way by the little that keeps the waist at its length.
        assert!(was[1].distance(is[1]) < 2.0, "{name}: {:?}", was[1] - is[1]);
        let hem = |p: &Pattern| {
            p.piece(piece)
                .unwrap()
                .outline()
                .edge(&EdgeName::HEM)
                .cloned()
        };
        assert_eq!(hem(&old), hem(&new), "{name}");
        for measure in [
            format!("{piece} waist length"),
            format!("{piece} side_seam length"),
        ] {
            assert!(
                change(&old, &new, &measure).abs() < 1e-6,
                "{name}: {measure}"
            );
        }
        let other = if piece == "back" { "front" } else { "back" };
        assert_eq!(old.piece(other), new.piece(other));
        let again = alter(&new, &[back]).unwrap().pattern;
        for (a, b) in waist(&old, piece).into_iter().zip(waist(&again, piece)) {
            assert!(a.distance(b) < 1e-3, "{name}: {a:?} {b:?}");
        }
    }
}

#[test]
fn blocks_in_one_piece_without_waist_darts_are_altered_too() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    for block in [Block::Dress, Block::Tunic, Block::Shirt] {
        let mut options = DraftOptions::fitting(block, Fit::Regular);
        options.waist_darts = Some(false);
        let old = draft(&body, &options).unwrap();
        let steps: [Box<dyn Alteration>; 3] = [
            Box::new(Seat::by(15.0)),
            Box::new(Abdomen { amount: 12.0 }),
            Box::new(BackLengthReduction {
                hips_checked: true,
                ..BackLengthReduction::by(12.0)
            }),
        ];
        for step in steps {
            let name = step.name();
            let by = step.amount().unwrap();
            let new = alter(&old, &[step]).unwrap().pattern;
            let (edge, by) = match name {
                "abdomen" => ("front centre_front length", by),
                "seat" => ("back centre_back length", by),
                _ => ("back centre_back length", -by),
            };
            assert!(
                (change(&old, &new, edge) - by).abs() < 1e-6,
                "{name}, {}",
                block.name()
            );
        }
    }
}

/// A shoulder dart whose tip reaches below the shoulder's panel goes with the shoulder.
#[test]
fn a_long_shoulder_dart_swings_whole() {
    let body = body(1500.0, 1150.0, 1040.0, 1160.0);
    let mut options = DraftOptions::fitting(Block::Dress, Fit::Loose);
    options.waist_darts = Some(false);
    let old = draft(&body, &options).unwrap();
    let lower: Box<dyn Alteration> = Box::new(blockwright::alterations::ShoulderSlope {
        degrees: 2.0,
        underarm: Underarm::Keep,
    });
    let reduce: Box<dyn Alteration> = Box::new(BackLengthReduction {
        hips_checked: true,
        ..BackLengthReduction::by(12.0)
    });
    let new = alter(&old, &[lower, reduce]).unwrap().pattern;
    let dart = new.piece("back").unwrap().dart("shoulder").unwrap();
    let [first, second] = dart.legs.map(|leg| leg.distance(dart.apex()));
    assert!((first - second).abs() < 0.01, "{first} {second}");
}

#[test]
fn a_large_seat_gets_width_on_the_back_alone() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    for block in [
        Block::Skirt,
        Block::BodiceAndSkirt,
        Block::Dress,
        Block::Tunic,
        Block::Shirt,
    ] {
        let old = drafted(&body, block, SleeveLength::Long).unwrap();
        let prefix = if block == Block::BodiceAndSkirt {
            "skirt "
        } else {
            ""
        };
        let wide = |amount, width| -> Box<dyn Alteration> { Box::new(Seat { amount, width }) };
        let new = alter(&old, &[wide(15.0, 20.0)]).unwrap().pattern;
        let by = |what: &str| change(&old, &new, &format!("{prefix}{what}"));
        assert!((change(&old, &new, "hip finished") - 20.0).abs() < 1e-6);
        assert!((by("back centre_back length") - 15.0).abs() < 1e-6);
        assert!(
            (by("back hem length") - 10.0).abs() < 1.0,
            "{}",
            by("back hem length")
        );
        assert!(by("back side_seam length").abs() < 1e-6);
        let front = format!("{prefix}front");
        assert_eq!(old.piece(&front), new.piece(&front));
        // On the back alone: the hip line goes out by half of the width on either side.
        let hip = |p: &Pattern| {
            let back = p.piece(&format!("{prefix}back")).unwrap();
            back.line("hip").unwrap().curve.end()
        };
        let out = hip(&new) - hip(&old);
        assert!((out.x - 10.0).abs() < 1e-6 && out.y.abs() < 1e-9, "{out:?}");
        let there_and_back = alter(&old, &[wide(0.0, 16.0), wide(0.0, -16.0)])
            .unwrap()
            .pattern;
        let off = hip(&there_and_back) - hip(&old);
        assert!(off.hypot() < 1e-3, "{off:?}");
        for width in [26.0, -26.0, f64::NAN, f64::INFINITY] {
            assert!(alter(&old, &[wide(5.0, width)]).is_err(), "{width}");
        }
    }
}
