//! Elbow, forearm and pitch of a sleeve.

use super::{body, drafted};
use crate::support::measures::reading;
use blockwright::alterations::{
    Alteration, ElbowWidth, ForearmWidth, Request, SleevePitch, UpperArm, alter,
};
use blockwright::draft::{Block, SleeveLength};
use blockwright::geometry::Vec2;
use blockwright::piece::{EdgeName, Measure, Pattern, Piece};

const BLOCKS: [Block; 4] = [Block::Bodice, Block::Dress, Block::Tunic, Block::Shirt];

type Make = fn(f64) -> Box<dyn Alteration>;

fn elbow(amount: f64) -> Box<dyn Alteration> {
    Box::new(ElbowWidth { amount })
}

fn forearm(amount: f64) -> Box<dyn Alteration> {
    Box::new(ForearmWidth { amount })
}

fn pitch(amount: f64) -> Box<dyn Alteration> {
    Box::new(SleevePitch::by(amount))
}

fn garments() -> Vec<(String, Pattern)> {
    let mut found = Vec::new();
    for (height, bust, waist, hip) in [
        (1560.0, 820.0, 660.0, 900.0),
        (1680.0, 940.0, 780.0, 1020.0),
        (1700.0, 1180.0, 1050.0, 1200.0),
    ] {
        for block in BLOCKS {
            let pattern = drafted(&body(height, bust, waist, hip), block, SleeveLength::Long);
            found.push((format!("{} bust {bust}", block.name()), pattern.unwrap()));
        }
    }
    found
}

fn sleeve(pattern: &Pattern) -> &Piece {
    pattern.piece("sleeve").unwrap()
}

fn change(before: &Pattern, after: &Pattern, what: &str) -> f64 {
    reading(after, what).unwrap() - reading(before, what).unwrap()
}

fn seams_are_equal(pattern: &Pattern, what: &str) {
    let [front, back] = ["underarm_front", "underarm_back"].map(|name| {
        let edge = EdgeName::new(name);
        sleeve(pattern).seam_length(&edge).unwrap()
    });
    assert!((front - back).abs() < 0.01, "{what}: {front} {back}");
}

#[test]
fn elbow_and_forearm_get_wider_and_nothing_else() {
    let cases: [(Make, &str); 2] = [(elbow, "elbow"), (forearm, "forearm")];
    for (what, old) in garments() {
        for (make, line) in cases {
            for amount in [14.0, -8.0] {
                let what = format!("{what}, {line} by {amount}");
                let once = alter(&old, &[make(0.5)]).unwrap().pattern;
                let new = alter(&old, &[make(0.5), make(amount)]).unwrap().pattern;
                let by = new.measured(&Measure::line_girth(line)).unwrap()
                    - once.measured(&Measure::line_girth(line)).unwrap();
                assert!((by - amount).abs() < 1e-6, "{what}: {by}");
                seams_are_equal(&new, &what);
                for stays in [
                    "upper_arm finished",
                    "wrist finished",
                    "sleeve sleeve_cap length",
                ] {
                    assert!(change(&old, &new, stays).abs() < 0.01, "{what}: {stays}");
                }
                let cap = |p: &Pattern| sleeve(p).outline().edge(&EdgeName::SLEEVE_CAP).cloned();
                assert_eq!(cap(&old), cap(&new), "{what}");
                let darts = sleeve(&old).darts().iter().zip(sleeve(&new).darts());
                for (was, is) in darts {
                    assert!(
                        (was.apex() - is.apex()).hypot() < 1e-9,
                        "{what}: the tip stays"
                    );
                    assert!(
                        (was.angle() - is.angle()).abs() < 1e-6,
                        "{what}: its angle stays"
                    );
                }
            }
        }
    }
}

#[test]
fn a_turned_sleeve_goes_forward_as_a_whole() {
    for (what, old) in garments() {
        for amount in [10.0, -10.0] {
            let what = format!("{what} by {amount}");
            let new = alter(&old, &[pitch(amount)]).unwrap().pattern;
            seams_are_equal(&new, &what);
            for stays in [
                "upper_arm finished",
                "wrist finished",
                "sleeve sleeve_cap length",
            ] {
                assert!(change(&old, &new, stays).abs() < 0.01, "{what}: {stays}");
            }
            let cap = |p: &Pattern| {
                let edge = sleeve(p).outline().edge(&EdgeName::SLEEVE_CAP);
                edge.unwrap().curve().clone()
            };
            // Notches keep their places along the cap from the underarm, as the armscye has them...
            for (was, is) in sleeve(&old).notches().iter().zip(sleeve(&new).notches()) {
                assert!((was.at - is.at).abs() < 1e-9, "{what}: {}", was.name);
            }
            // ...and so lie that much behind their old places on the sleeve, which goes forward.
            let shoulder = |p: &Pattern| {
                let notch = sleeve(p)
                    .notches()
                    .iter()
                    .find(|n| n.name == "shoulder")
                    .unwrap()
                    .at;
                cap(p).point_at(notch).unwrap().0
            };
            let back = shoulder(&new).x - shoulder(&old).x;
            assert!(
                (back + amount).abs() < 0.12 * amount.abs(),
                "{what}: {back}"
            );
            let by = cap(&new).start() - cap(&old).start();
            assert!((by.x + amount).abs() < 0.1 * amount.abs(), "{what}: {by:?}");
            assert_eq!(sleeve(&old).grain(), sleeve(&new).grain(), "{what}");
            for piece in old.pieces().iter().filter(|p| p.name() != "sleeve") {
                assert_eq!(Some(piece), new.piece(piece.name()));
            }
        }
    }
}

#[test]
fn there_and_back() {
    let cases: [(Make, f64); 3] = [(elbow, 12.0), (forearm, 10.0), (pitch, 10.0)];
    for (what, old) in garments() {
        for (make, amount) in cases {
            let new = alter(&old, &[make(amount), make(-amount)]).unwrap().pattern;
            let (was, is) = (sleeve(&old), sleeve(&new));
            for edge in was.outline().edges() {
                let line = is.outline().edge(edge.name()).unwrap().curve();
                for step in 0..=8 {
                    let at = edge.curve().length() * f64::from(step) / 8.0;
                    let off = line.nearest(edge.curve().point_at(at).unwrap().0).0;
                    assert!(off < 0.1, "{what}, {}: {off}", edge.name());
                }
            }
            for (a, b) in was.darts().iter().zip(is.darts()) {
                assert!((a.apex() - b.apex()).hypot() < 0.01);
                assert!((a.legs[0] - b.legs[0]).hypot() < 0.05, "{what}");
            }
        }
    }
}

#[test]
fn a_target_is_met_where_no_line_was() {
    let (_, tunic) = garments().swap_remove(6);
    assert!(sleeve(&tunic).line("elbow").is_none());
    let step = Request::new("elbow_width", serde_json::json!({"to": 300.0})).unwrap();
    let done = alter(&tunic, &[step.alteration().unwrap()]).unwrap();
    let width = done
        .pattern
        .measured(&Measure::line_girth("elbow"))
        .unwrap();
    assert!((width - 300.0).abs() < 0.02, "{width}");
    let line = &sleeve(&done.pattern).line("elbow").unwrap().curve;
    assert!(((line.end() - line.start()) - Vec2::new(300.0, 0.0)).hypot() < 1.0);
}

#[test]
fn they_go_with_a_wider_upper_arm() {
    for (what, old) in garments() {
        for make in [elbow as Make, forearm, pitch] {
            let arm: fn() -> Box<dyn Alteration> = || Box::new(UpperArm { amount: 12.0 });
            for chain in [[make(8.0), arm()], [arm(), make(8.0)]] {
                let done = alter(&old, &chain);
                let done = done.unwrap_or_else(|why| panic!("{what}: {why}"));
                assert!((change(&old, &done.pattern, "upper_arm finished") - 12.0).abs() < 0.01);
            }
        }
    }
}

#[test]
fn too_much_and_no_long_sleeve_are_refused() {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    let long = drafted(&body, Block::Dress, SleeveLength::Long).unwrap();
    let short = drafted(&body, Block::Dress, SleeveLength::Short).unwrap();
    let skirt = drafted(&body, Block::Skirt, SleeveLength::Long).unwrap();
    for make in [elbow as Make, forearm, pitch] {
        for amount in [60.0, -60.0, 1e9, f64::NAN, f64::INFINITY] {
            assert!(alter(&long, &[make(amount)]).is_err(), "{amount}");
        }
        assert!(alter(&skirt, &[make(5.0)]).is_err());
    }
    for make in [elbow as Make, forearm] {
        let refused = alter(&short, &[make(8.0)]).unwrap_err();
        assert!(refused.to_string().contains("a long sleeve"), "{refused}");
    }
    assert!(alter(&short, &[pitch(8.0)]).is_ok());
}
