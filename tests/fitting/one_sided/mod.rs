//! Alterations of one side of the body, and alterations after them.
#![allow(clippy::unwrap_used)]

use crate::support::bodies::body;
use crate::support::measures::reading;
use blockwright::alterations::{
    Alteration, BackLengthReduction, CATALOGUE, OneSided, ShoulderSlope, alter,
};
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::piece::{BodySide, Cut, Measure, Pattern};

fn drafted(block: Block) -> Pattern {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(SleeveLength::Long);
    draft(&body, &options).unwrap()
}

fn sloping(side: BodySide, degrees: f64) -> Box<dyn Alteration> {
    Box::new(OneSided::new(side, Box::new(ShoulderSlope::by(degrees))))
}

#[test]
fn one_shoulder_falls_and_the_other_stays() {
    for block in [Block::Bodice, Block::Dress, Block::Tunic, Block::Shirt] {
        let pattern = drafted(block);
        let slope = |p: &Pattern, what: &str| reading(p, what).unwrap();
        let before = slope(&pattern, "back shoulder slope");
        for side in BodySide::BOTH {
            let done = alter(&pattern, &[sloping(side, 3.0)]).unwrap();
            assert!(check_all(&done.pattern, &Tolerances::altered()).is_empty());
            for s in BodySide::BOTH {
                let now = slope(&done.pattern, &format!("back {} shoulder slope", s.name()));
                let change = if s == side { 3.0 } else { 0.0 };
                assert!(
                    (now - before - change).abs() < 1e-6,
                    "{}: {now}",
                    block.name()
                );
            }
            // The centre has a seam now, and each half is cut for its side.
            let cuts = ["back left", "back right", "front left", "front right"]
                .map(|name| done.pattern.piece(name).unwrap().cut());
            let (up, down) = (Cut::Single, Cut::SingleFaceDown);
            assert_eq!(cuts, [down, up, up, down]);
            assert!(
                done.pattern
                    .seams()
                    .iter()
                    .any(|s| s.name == "centre seam of the back")
            );
            // The account compares each side with what both were.
            let changes = &done.accounts[0].changes;
            let change = changes
                .iter()
                .find(|c| c.measure == Measure::shoulder_slope("back").on(side))
                .unwrap();
            assert!((change.difference().unwrap() - 3.0).abs() < 1e-6);
            assert!(
                !changes
                    .iter()
                    .any(|c| c.measure == Measure::shoulder_slope("back").on(side.other()))
            );
        }
    }
}

#[test]
fn girths_are_the_mean_of_both_sides() {
    let pattern = drafted(Block::Tunic);
    let finished = |p: &Pattern, name: &str| {
        let girth = p.girths().iter().find(|g| g.name == name).cloned().unwrap();
        p.finished(&girth)
    };
    let both = finished(&pattern, "bust");
    let done = alter(&pattern, &[sloping(BodySide::Left, 3.0)])
        .unwrap()
        .pattern;
    assert!((finished(&done, "bust") - both).abs() < 0.4);
}

#[test]
fn what_follows_is_made_on_both_sides() {
    let pattern = drafted(Block::Tunic);
    let chain: Vec<Box<dyn Alteration>> = vec![
        sloping(BodySide::Left, 3.0),
        Box::new(BackLengthReduction::by(12.0)),
        sloping(BodySide::Right, -2.0),
    ];
    let done = alter(&pattern, &chain).unwrap().pattern;
    assert!(check_all(&done, &Tolerances::altered()).is_empty());
    let centre = |p: &Pattern, what: &str| reading(p, what).unwrap();
    let before = centre(&pattern, "back centre_back length");
    for side in BodySide::BOTH {
        let now = centre(&done, &format!("back {} centre_back length", side.name()));
        assert!((before - now - 12.0).abs() < 1e-6);
    }
}

#[test]
fn both_sides_alike_again_are_one_piece_again() {
    let pattern = drafted(Block::Tunic);
    let chain = [sloping(BodySide::Left, 2.0), sloping(BodySide::Left, -2.0)];
    let done = alter(&pattern, &chain).unwrap().pattern;
    assert!(done.piece("back").is_some() || done.piece("back left").is_some());
    assert!(check_all(&done, &Tolerances::altered()).is_empty());
}

#[test]
fn what_changes_the_fold_on_one_side_meets_the_other_half_way() {
    let pattern = drafted(Block::Tunic);
    let shorter = |side| -> Box<dyn Alteration> {
        Box::new(OneSided::new(side, Box::new(BackLengthReduction::by(15.0))))
    };
    let left = alter(&pattern, &[shorter(BodySide::Left)]).unwrap();
    let before = reading(&pattern, "back centre_back length").unwrap();
    for side in BodySide::BOTH {
        let what = format!("back {} centre_back length", side.name());
        let now = reading(&left.pattern, &what).unwrap();
        assert!((before - now - 7.5).abs() < 1e-3, "{what}: {before}, {now}");
    }
    // The shoulder is that of the side alone.
    let slope = |side: BodySide| {
        let what = format!("back {} shoulder slope", side.name());
        reading(&left.pattern, &what).unwrap()
    };
    assert!(slope(BodySide::Right) - slope(BodySide::Left) > 3.0);
    let message = left.pattern.warnings().iter();
    assert_eq!(message.filter(|w| w.code == "centre_trued").count(), 2);
    // The same on the other side comes to what it is on both.
    let both = alter(&left.pattern, &[shorter(BodySide::Right)]).unwrap();
    for side in BodySide::BOTH {
        let what = format!("back {} centre_back length", side.name());
        let now =
            reading(&both.pattern, &what).or(reading(&both.pattern, "back centre_back length"));
        assert!((before - now.unwrap() - 15.0).abs() < 1e-3);
    }
}

#[test]
fn what_meets_the_other_half_at_a_seam_is_refused_on_one_side() {
    let pattern = drafted(Block::Bodice);
    let shorter: Box<dyn Alteration> = Box::new(OneSided::new(
        BodySide::Left,
        Box::new(BackLengthReduction::by(15.0)),
    ));
    let refused = alter(&pattern, &[shorter]).unwrap_err().to_string();
    assert!(refused.contains("where both sides meet"), "{refused}");
    assert!(refused.contains("leave out side"), "{refused}");
}

#[test]
fn every_alteration_is_made_on_one_side_or_refused_by_name() {
    for entry in CATALOGUE {
        for block in [Block::Dress, Block::Tunic] {
            if !entry.blocks.contains(&block.name()) {
                continue;
            }
            let step: Box<dyn Alteration> =
                Box::new(OneSided::new(BodySide::Right, (entry.example)()));
            match alter(&drafted(block), &[step]) {
                Ok(done) => {
                    assert!(check_all(&done.pattern, &Tolerances::altered()).is_empty());
                }
                Err(refused) => eprintln!("{} on a {}: {refused}", entry.name, block.name()),
            }
        }
    }
}
