//! A dart goes anywhere on its piece, and what must stay, stays.

use super::check::{TRUED, apart, assert_kept, at_now, turning};
use super::people::{block, body, usual};
use super::pictures::show;
use blockwright::alterations::{Alteration, Chain, DartRelocation, Reason, Refused, alter};
use blockwright::draft::Block;
use blockwright::piece::{Pattern, Pressed};
use proptest::prelude::*;

pub fn moved(pattern: &Pattern, steps: &[DartRelocation]) -> Result<Chain, Box<Refused>> {
    let chain: Vec<Box<dyn Alteration>> = steps
        .iter()
        .map(|s| Box::new(s.clone()) as Box<dyn Alteration>)
        .collect();
    alter(pattern, &chain)
}

/// Places that every body must allow: block, piece, dart, edge, and where along it.
const EASY: &[(Block, &str, &str, &str, f64)] = &[
    (Block::Bodice, "front", "bust", "shoulder", 0.5),
    (Block::Bodice, "front", "bust", "neckline", 0.5),
    (Block::Bodice, "front", "bust", "armscye", 0.6),
    (Block::Bodice, "front", "bust", "waist", 0.3),
    (Block::Bodice, "front", "waist", "side_seam", 0.8),
    (Block::Bodice, "front", "waist", "shoulder", 0.5),
    (Block::Bodice, "back", "shoulder", "neckline", 0.6),
    (Block::Bodice, "back", "shoulder", "armscye", 0.4),
    (Block::Bodice, "back", "waist", "side_seam", 0.6),
    (Block::Bodice, "sleeve", "elbow", "wrist", 0.8),
    (Block::Dress, "front", "bust", "shoulder", 0.5),
    (Block::Dress, "front", "bust", "hem", 0.2),
    (Block::Tunic, "front", "bust", "side_seam", 0.4),
    (Block::Tunic, "front", "bust", "hem", 0.5),
    (Block::Skirt, "back", "waist inner", "hem", 0.6),
    (Block::Skirt, "front", "waist", "side_seam", 0.3),
    (
        Block::BodiceAndSkirt,
        "bodice front",
        "bust",
        "neckline",
        0.4,
    ),
];

#[test]
fn the_usual_places_are_open() {
    for (of, piece, dart, edge, at) in EASY {
        let before = usual(*of);
        let step = DartRelocation::to(*dart, *edge, *at).on(*piece);
        let done = moved(&before, &[step]).unwrap_or_else(|e| panic!("{of:?} {piece} {dart}: {e}"));
        show(&format!("{of:?}-{piece}-{dart}-{edge}"), &done.pattern);
        assert_kept(&before, &done.pattern, piece, 1e-6);
        let [new, old] = [&done.pattern, &before].map(|p| p.piece(piece).unwrap());
        let [found, was] = [new, old].map(|p| p.dart(dart).unwrap());
        assert_eq!(found.edge.as_ref().unwrap().as_str(), *edge);
        let within = if old.bust_point().is_some() {
            TRUED
        } else {
            1e-9
        };
        assert!((new.dart_angle(found) - old.dart_angle(was)).abs() < within);
    }
}

#[test]
fn there_and_back_is_as_before() {
    for (of, piece, dart, edge, at) in EASY {
        let before = usual(*of);
        let (home, share) = at_now(before.piece(piece).unwrap(), dart);
        let steps = [
            DartRelocation::to(*dart, *edge, *at).on(*piece),
            DartRelocation::to(*dart, home.as_str(), share).on(*piece),
        ];
        let done = moved(&before, &steps).unwrap_or_else(|e| panic!("{of:?} {piece} {dart}: {e}"));
        let off = apart(
            done.pattern.piece(piece).unwrap(),
            before.piece(piece).unwrap(),
        );
        assert!(
            off < 0.1,
            "{of:?} {piece} {dart} by {edge}: {off:.4} mm off"
        );
    }
}

#[test]
fn once_round_the_piece_is_as_before() {
    let before = usual(Block::Bodice);
    let (home, share) = at_now(before.piece("front").unwrap(), "bust");
    let places = [
        ("armscye", 0.7),
        ("shoulder", 0.4),
        ("neckline", 0.4),
        ("neckline", 0.8),
        ("side_seam", 0.2),
        ("shoulder", 0.8),
        (home.as_str(), share),
    ];
    let mut steps = vec![DartRelocation::to("waist", "side_seam", 0.6).on("front")];
    steps.extend(places.map(|(edge, at)| DartRelocation::to("bust", edge, at)));
    let away = moved(&before, &steps[..1]).unwrap().pattern;
    let done = moved(&before, &steps).unwrap().pattern;
    let off = apart(done.piece("front").unwrap(), away.piece("front").unwrap());
    assert!(off < 0.1, "{off:.4} mm off after seven moves");
    assert_kept(&before, &done, "front", 1e-5);
}

#[test]
fn upright_darts_are_pressed_to_the_centre_and_level_ones_down() {
    let before = usual(Block::Bodice);
    for (edge, at, leg) in [
        ("shoulder", 0.4, 0),
        ("waist", 0.3, 1),
        ("side_seam", 0.4, 1),
    ] {
        let done = moved(&before, &[DartRelocation::to("bust", edge, at)]).unwrap();
        let dart = done
            .pattern
            .piece("front")
            .unwrap()
            .dart("bust")
            .unwrap()
            .clone();
        let pressed = usize::from(dart.pressed == Pressed::TowardSecondLeg);
        assert_eq!(pressed, leg, "{edge}");
        let (to, from) = (dart.legs[pressed], dart.legs[1 - pressed]);
        assert!(if edge == "side_seam" {
            to.y > from.y
        } else {
            to.x < from.x
        });
    }
}

#[test]
fn the_fold_takes_a_seam() {
    let refused = moved(
        &usual(Block::Bodice),
        &[DartRelocation::to("bust", "centre_front", 0.5)],
    );
    let message = refused.unwrap_err().to_string();
    assert!(
        message.contains("takes a seam") && !message.contains("free"),
        "{message}"
    );
}

#[test]
fn a_place_that_is_taken_is_refused_with_the_free_ones() {
    let before = usual(Block::Bodice);
    let (_, taken) = at_now(before.piece("front").unwrap(), "waist");
    let message = moved(&before, &[DartRelocation::to("bust", "waist", taken)])
        .unwrap_err()
        .to_string();
    assert!(
        message.contains("the waist dart opens there already"),
        "{message}"
    );
    let (_, free) = message.split_once("the places at ").unwrap();
    let mut ends = free.split(' ').filter_map(|word| word.parse::<f64>().ok());
    let middle = 0.5 * (ends.next().unwrap() + ends.next().unwrap());
    assert!(moved(&before, &[DartRelocation::to("bust", "waist", middle)]).is_ok());
}

#[test]
fn what_makes_no_sense_is_refused_by_name() {
    let bodice = usual(Block::Bodice);
    let message = |p: &Pattern, step: DartRelocation| moved(p, &[step]).unwrap_err().to_string();
    let of = |dart: &str, edge: &str, at: f64| DartRelocation::to(dart, edge, at);
    assert!(message(&bodice, of("hip", "waist", 0.5)).contains("a hip dart"));
    assert!(message(&bodice, of("waist", "side_seam", 0.5)).contains("back or front"));
    assert!(message(&bodice, of("bust", "yoke", 0.5)).contains("an edge yoke"));
    for at in [f64::NAN, f64::INFINITY, -0.1, 1.1] {
        assert!(message(&bodice, of("bust", "shoulder", at)).contains("from 0 to 1"));
    }
    for at in [0.0, 1.0] {
        assert!(message(&bodice, of("bust", "shoulder", at)).contains("corner"));
    }
    let dress = usual(Block::Dress);
    assert!(message(&dress, of("waist", "hem", 0.5).on("front")).contains("two apexes"));
}

#[test]
fn settings_are_read_and_unknown_ones_refused() {
    let entry = blockwright::alterations::find("dart_relocation").unwrap();
    let read = |text: &str| (entry.read)(serde_json::from_str(text).unwrap());
    assert_eq!(
        read(r#"{"dart": "bust", "to": "shoulder"}"#)
            .unwrap()
            .name(),
        "dart_relocation"
    );
    assert!(read(r#"{"dart": "bust", "to": "shoulder", "angle": 3}"#).is_err());
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 80, failure_persistence: None,
        rng_seed: proptest::test_runner::RngSeed::Fixed(0xda28), ..ProptestConfig::default()
    })]

    /// Any dart, any edge, any place, any body: moved with everything kept, or refused in words
    /// by the alteration itself, never by a law that came out broken.
    #[test]
    fn any_place_is_moved_to_or_refused(
        bust in 780.0..1250.0_f64, drop in 60.0..260.0_f64, hips in -20.0..140.0_f64,
        height in 1500.0..1850.0_f64, which in 0..EASY.len(), edge in 0..6_usize, at in 0.0..=1.0_f64,
    ) {
        let (of, piece, dart, ..) = EASY[which];
        let Some(before) = block(of, &body(bust, bust - drop, bust + hips, height)) else { return Ok(()) };
        let on = before.piece(piece).unwrap();
        let Some(old) = on.dart(dart) else { return Ok(()) };
        let edges = on.outline().edges();
        let edge = edges[edge % edges.len()].name().clone();
        let step = DartRelocation::to(dart, edge.as_str(), at).on(piece);
        match moved(&before, &[step]) {
            Ok(done) => {
                assert_kept(&before, &done.pattern, piece, 1e-6);
                let new = done.pattern.piece(piece).unwrap();
                let about = on.fullness(old);
                let within = if on.bust_point().is_some() { TRUED } else { 1e-9 };
                prop_assert!((turning(new, about) - turning(on, about)).abs() < within);
                let (there, share) = at_now(new, dart);
                prop_assert_eq!(&there, &edge);
                // Where the tip is backed off the ends of the legs slide a little; where its fold
                // would hang over the next edge the dart opens aside, and says so.
                let aside = done.pattern.warnings().iter().any(|warning| warning.code == "dart_moved_aside");
                let off = (share - at).abs() * on.seam_length(&edge).unwrap();
                prop_assert!(off < 0.3 || aside, "{} mm off", off);
                prop_assert!((share - at).abs() < 0.16, "{} of the edge off", share - at);
            }
            Err(refused) => {
                // Beside a waist seam a dart must meet one of the skirt: that is for the law.
                let fair = match &refused.reason {
                    Reason::Alteration(_) => true,
                    Reason::Law(law) => law.law() == "waists_meet",
                    _ => false,
                };
                prop_assert!(fair, "{of:?} {piece} {dart} to {edge} at {at:.2}: {refused}");
            }
        }
    }
}

#[test]
fn a_dart_that_is_there_already_stays() {
    let before = usual(Block::Bodice);
    let step = DartRelocation::to("bust", "shoulder", 0.5);
    let once = moved(&before, std::slice::from_ref(&step)).unwrap().pattern;
    let twice = moved(&once, &[step]).unwrap().pattern;
    assert_eq!(once.piece("front"), twice.piece("front"));
}
