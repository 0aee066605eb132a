//! A dart divided: its parts make up the whole.

use super::check::{TRUED, assert_kept, parts_of};
use super::people::{block, body, usual};
use super::pictures::show;
use blockwright::alterations::{Alteration, Chain, DartDivision, Refused, ShoulderBlade, alter};
use blockwright::draft::Block;
use blockwright::piece::Pattern;
use proptest::prelude::*;

fn divided(pattern: &Pattern, step: DartDivision) -> Result<Chain, Box<Refused>> {
    let step: Box<dyn Alteration> = Box::new(step);
    alter(pattern, &[step])
}

#[test]
fn thirds_go_their_ways() {
    let before = usual(Block::Bodice);
    let third = 1.0 / 3.0;
    let step = DartDivision::of("bust")
        .part("shoulder", 0.5, third)
        .part("armscye", 0.6, third);
    let done = divided(&before, step).unwrap().pattern;
    show("division-thirds", &done);
    assert_kept(&before, &done, "front", 1e-6);
    let (old, new) = (before.piece("front").unwrap(), done.piece("front").unwrap());
    let whole = old.dart("bust").unwrap();
    for name in ["bust", "bust shoulder", "bust armscye"] {
        let part = new.dart_angle(new.dart(name).unwrap());
        assert!(
            (part - third * old.dart_angle(whole)).abs() < TRUED,
            "{name}"
        );
    }
    assert!((parts_of(new, "bust") - old.dart_angle(whole)).abs() < 2.0 * TRUED);
}

#[test]
fn all_of_it_leaves_nothing() {
    let before = usual(Block::Dress);
    let step = DartDivision::of("bust")
        .part("neckline", 0.3, 0.25)
        .part("neckline", 0.7, 0.25)
        .part("side_seam", 0.2, 0.5);
    let done = divided(&before, step).unwrap().pattern;
    show("division-all", &done);
    assert_kept(&before, &done, "front", 1e-6);
    let new = done.piece("front").unwrap();
    assert!(new.dart("bust").is_none());
    assert!(new.dart("bust neckline 2").is_some());
}

#[test]
fn shares_that_make_no_sense_are_refused() {
    let before = usual(Block::Bodice);
    let message = |step| divided(&before, step).unwrap_err().to_string();
    let bust = || DartDivision::of("bust");
    assert!(message(bust()).contains("names no part"));
    for share in [0.0, -0.5, 1.5, f64::NAN] {
        assert!(message(bust().part("shoulder", 0.5, share)).contains("above 0 and at most 1"));
    }
    let much = bust().part("shoulder", 0.5, 0.7).part("waist", 0.2, 0.7);
    assert!(message(much).contains("sum to 1.400"));
    let taken = bust()
        .part("shoulder", 0.5, 0.3)
        .part("shoulder", 0.52, 0.3);
    assert!(message(taken).contains("opens there already"));
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 24, failure_persistence: None,
        rng_seed: proptest::test_runner::RngSeed::Fixed(0xd1f), ..ProptestConfig::default()
    })]

    #[test]
    fn the_parts_make_up_the_whole(
        bust in 800.0..1200.0_f64, drop in 80.0..240.0_f64, height in 1550.0..1800.0_f64,
        at in (0.15..0.85_f64, 0.3..0.7_f64), shares in (0.1..0.45_f64, 0.1..0.45_f64),
    ) {
        let Some(before) = block(Block::Bodice, &body(bust, bust - drop, bust + 60.0, height)) else { return Ok(()) };
        let old = before.piece("front").unwrap();
        let Some(whole) = old.dart("bust") else { return Ok(()) };
        let step = DartDivision::of("bust")
            .part("shoulder", at.0, shares.0)
            .part("neckline", at.1, shares.1);
        let done = divided(&before, step).unwrap().pattern;
        assert_kept(&before, &done, "front", 1e-6);
        let new = done.piece("front").unwrap();
        let off = parts_of(new, "bust") - old.dart_angle(whole);
        prop_assert!(off.abs() < 2.0 * TRUED, "{off}");
    }
}

/// A back shoulder dart wider than about 20 mm is warned of after any step (a drafting text: a mouth
/// of 16 to 20 mm for a length of 60 to 80), and the share named brings it down to that.
#[test]
fn a_wide_shoulder_dart_is_warned_of_and_divided() {
    let before = usual(Block::Bodice);
    let rounder: Box<dyn Alteration> = Box::new(ShoulderBlade::by(12.0));
    let done = alter(&before, &[rounder]).unwrap();
    let warning = done
        .pattern
        .warnings()
        .iter()
        .find(|w| w.code == "wide_shoulder_dart");
    let text = &warning.expect("a warning").text;
    let share = text.split("share: ").nth(1).unwrap().trim_end_matches(')');
    let share: f64 = share.parse().unwrap();
    let divide: Box<dyn Alteration> =
        Box::new(DartDivision::of("shoulder").part("neckline", 0.5, share));
    let divided = alter(&done.pattern, &[divide]).unwrap().pattern;
    let left = divided
        .piece("back")
        .unwrap()
        .dart("shoulder")
        .unwrap()
        .intake();
    assert!((left - 20.0).abs() < 0.6, "{left}: {text}");
}
