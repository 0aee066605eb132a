//! Two darts made one.

use super::check::{TRUED, apart, assert_kept};
use super::people::{block, body, usual};
use super::pictures::show;
use blockwright::alterations::{
    Alteration, Chain, DartDivision, DartMerging, DartRelocation, Refused, alter,
};
use blockwright::draft::Block;
use blockwright::piece::Pattern;
use proptest::prelude::*;

fn merged(pattern: &Pattern, step: DartMerging) -> Result<Chain, Box<Refused>> {
    let step: Box<dyn Alteration> = Box::new(step);
    alter(pattern, &[step])
}

#[test]
fn the_bust_dart_goes_into_the_waist_dart() {
    let before = usual(Block::Bodice);
    let done = merged(&before, DartMerging::of("waist", "bust"))
        .unwrap()
        .pattern;
    show("merging-waist", &done);
    assert_kept(&before, &done, "front", 0.05);
    let new = done.piece("front").unwrap();
    assert_eq!(new.darts().len(), 1);
    let old = before.piece("front").unwrap();
    let [bust, waist] = ["bust", "waist"].map(|n| old.dart(n).unwrap());
    let one = new.dart("waist").unwrap();
    // The angles about the bust point add up; the waist dart gets narrower when it is aimed there.
    let sum = old.dart_angle(bust) + old.dart_angle(waist);
    let whole = new.dart_angle(one);
    assert!((whole - sum).abs() < 3.0 * TRUED, "{whole} of {sum}");
    let stay = DartMerging {
        to: Some("bust".into()),
        ..DartMerging::of("waist", "bust")
    };
    let other = merged(&before, stay).unwrap().pattern;
    show("merging-bust", &other);
    assert_eq!(other.piece("front").unwrap().darts()[0].name, "bust");
}

#[test]
fn parts_of_one_dart_merge_to_what_it_was() {
    let before = usual(Block::Tunic);
    let divide = DartDivision::of("bust").part("shoulder", 0.5, 0.4);
    let steps: [Box<dyn Alteration>; 2] = [
        Box::new(divide),
        Box::new(DartMerging::of("bust", "bust shoulder")),
    ];
    let done = alter(&before, &steps).unwrap().pattern;
    let off = apart(done.piece("front").unwrap(), before.piece("front").unwrap());
    assert!(off < 0.1, "{off}");
    assert_kept(&before, &done, "front", 1e-5);
}

#[test]
fn darts_that_point_apart_are_refused() {
    let bodice = usual(Block::Bodice);
    let message = |p, step| merged(p, step).unwrap_err().to_string();
    let apart = DartMerging::of("shoulder", "waist");
    assert!(message(&bodice, apart).contains("do not point at one place"));
    let skirt = usual(Block::Skirt);
    assert!(
        message(&skirt, DartMerging::of("waist inner", "waist outer")).contains("do not point")
    );
    assert!(message(&bodice, DartMerging::of("bust", "bust")).contains("name two"));
    let third = DartMerging {
        to: Some("hip".into()),
        ..DartMerging::of("bust", "waist")
    };
    assert!(message(&bodice, third).contains("neither"));
}

#[test]
fn a_merged_dart_moves_on() {
    let before = usual(Block::BodiceAndSkirt);
    let steps: [Box<dyn Alteration>; 2] = [
        Box::new(DartMerging::of("waist", "bust")),
        Box::new(DartRelocation::to("waist", "shoulder", 0.6).on("bodice front")),
    ];
    let done = alter(&before, &steps).unwrap().pattern;
    show("merged-shoulder", &done);
    assert_kept(&before, &done, "bodice front", 0.05);
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 24, failure_persistence: None,
        rng_seed: proptest::test_runner::RngSeed::Fixed(0x3e6), ..ProptestConfig::default()
    })]

    #[test]
    fn any_body_keeps_its_seams(
        bust in 800.0..1250.0_f64, drop in 80.0..260.0_f64, height in 1550.0..1800.0_f64,
    ) {
        let Some(before) = block(Block::Bodice, &body(bust, bust - drop, bust + 60.0, height)) else { return Ok(()) };
        let front = before.piece("front").unwrap();
        if front.dart("bust").is_none() || front.dart("waist").is_none() { return Ok(()) }
        match merged(&before, DartMerging::of("waist", "bust")) {
            Ok(done) => assert_kept(&before, &done.pattern, "front", 0.05),
            Err(refused) => {
                prop_assert!(matches!(refused.reason, blockwright::alterations::Reason::Alteration(_)), "{refused}");
            }
        }
    }
}
