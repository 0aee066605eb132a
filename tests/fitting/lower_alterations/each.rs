//! What each alteration says it does, measured.

use super::{body, drafted};
use crate::support::measures::reading;
use blockwright::alterations::{
    Abdomen, Alteration, Bust, HipGirth, LengthAt, LengthChange, Seat, UpperArm, WaistGirth,
    WristWidth, alter,
};
use blockwright::draft::{Block, SleeveLength};
use blockwright::piece::{EdgeName, Pattern};

fn before(block: Block) -> Pattern {
    let body = body(1680.0, 940.0, 780.0, 1020.0);
    drafted(&body, block, SleeveLength::Long).unwrap()
}

fn after(pattern: &Pattern, step: impl Alteration + 'static) -> Pattern {
    alter(pattern, &[Box::new(step)]).unwrap().pattern
}

fn change(before: &Pattern, after: &Pattern, what: &str) -> f64 {
    reading(after, what).unwrap() - reading(before, what).unwrap()
}

#[test]
fn a_longer_bodice_keeps_its_apexes_and_its_waist() {
    let old = before(Block::Bodice);
    let at = LengthAt::Bodice;
    let new = after(&old, LengthChange { at, amount: 20.0 });
    for name in ["back", "front"] {
        let (old, new) = (old.piece(name).unwrap(), new.piece(name).unwrap());
        let (was, is) = (old.dart("waist").unwrap(), new.dart("waist").unwrap());
        assert!(was.apex().distance(is.apex()) < 0.5);
        assert!((was.intake() - is.intake()).abs() < 0.5);
        assert!((is.legs[0].y - was.legs[0].y - 20.0).abs() < 2.0);
    }
    assert_eq!(
        old.piece("front").unwrap().dart("bust"),
        new.piece("front").unwrap().dart("bust")
    );
    let (back, front) = ("back side_seam length", "front side_seam length");
    assert!((change(&old, &new, back) - change(&old, &new, front)).abs() < 0.01);
}

#[test]
fn a_longer_skirt_and_sleeve() {
    let old = before(Block::BodiceAndSkirt);
    let at = LengthAt::Skirt;
    let new = after(&old, LengthChange { at, amount: 30.0 });
    let side = change(&old, &new, "skirt back side_seam length");
    assert!((side - 30.0).abs() < 1e-6);
    assert!(change(&old, &new, "bodice back side_seam length").abs() < 1e-9);
    for block in [Block::Dress, Block::Tunic] {
        let old = before(block);
        let at = LengthAt::Sleeve;
        let new = after(&old, LengthChange { at, amount: 20.0 });
        for seam in [
            "sleeve underarm_back length",
            "sleeve underarm_front length",
        ] {
            let by = change(&old, &new, seam);
            assert!((by - 20.0).abs() < 0.6, "{seam}: {by}");
        }
        assert!(change(&old, &new, "sleeve wrist length").abs() < 0.01);
    }
}

#[test]
fn hips_are_wider_from_the_hip_line_down_and_the_waist_stays() {
    let old = before(Block::Skirt);
    let new = after(&old, HipGirth { amount: 32.0 });
    for name in ["back", "front"] {
        let side = |p: &Pattern| {
            let edge = p.piece(name).unwrap().outline().edge(&EdgeName::SIDE_SEAM);
            edge.unwrap().curve().clone()
        };
        assert!(side(&old).start().distance(side(&new).start()) < 1e-9);
        let hem = side(&new).end() - side(&old).end();
        assert!((hem.x - 8.0).abs() < 1e-9 && hem.y.abs() < 1e-9);
    }
    assert!((change(&old, &new, "back hem length") - 8.0).abs() < 1e-6);
}

#[test]
fn a_third_of_the_waist_goes_to_the_side() {
    let old = before(Block::Dress);
    let new = after(&old, WaistGirth { amount: 24.0 });
    for name in ["back", "front"] {
        let dart = change(&old, &new, &format!("{name} waist dart intake"));
        assert!((dart + 4.0).abs() < 1e-9, "{dart}");
    }
    // Joined blocks change alike, and say so under both names.
    let old = before(Block::BodiceAndSkirt);
    let new = after(&old, WaistGirth { amount: -16.0 });
    for girth in ["waist finished", "skirt_waist finished"] {
        assert!((change(&old, &new, girth) + 16.0).abs() < 1e-6);
    }
}

#[test]
fn seat_and_abdomen_touch_their_own_half_only() {
    for block in [Block::Skirt, Block::Dress, Block::BodiceAndSkirt] {
        let old = before(block);
        let seat = after(&old, Seat::by(15.0));
        let abdomen = after(&old, Abdomen { amount: 10.0 });
        for piece in old.pieces() {
            let name = piece.name();
            if !name.ends_with("back") {
                assert_eq!(Some(piece), seat.piece(name));
            }
            if !name.ends_with("front") {
                assert_eq!(Some(piece), abdomen.piece(name));
            }
        }
    }
    let old = before(Block::Skirt);
    let seat = after(&old, Seat::by(15.0));
    let waist = |p: &Pattern| {
        let edge = p.piece("back").unwrap().outline().edge(&EdgeName::WAIST);
        edge.unwrap().curve().clone()
    };
    assert!((waist(&old).start().y - waist(&seat).start().y - 15.0).abs() < 1e-9);
    assert!(waist(&old).end().distance(waist(&seat).end()) < 1e-9);
    assert!(change(&old, &seat, "back waist length").abs() < 1e-6);
}

#[test]
fn a_wider_sleeve_keeps_its_cap_length_and_notches() {
    for block in [Block::Dress, Block::Tunic, Block::Bodice] {
        let old = before(block);
        let new = after(&old, UpperArm { amount: 20.0 });
        let (was, is) = (old.piece("sleeve"), new.piece("sleeve"));
        let Some((was, is)) = was.zip(is) else {
            continue;
        };
        for (a, b) in was.notches().iter().zip(is.notches()) {
            assert!((a.at - b.at).abs() < 1e-6, "{}", a.name);
        }
        assert!(change(&old, &new, "sleeve cap height") < -3.0);
        let seams = [
            "sleeve underarm_back length",
            "sleeve underarm_front length",
        ];
        let [back, front] = seams.map(|s| change(&old, &new, s));
        assert!((back - front).abs() < 0.02, "{back} {front}");
        assert!(
            new.warnings()
                .iter()
                .any(|w| w.code == "cap_height_changed")
        );
    }
}

#[test]
fn hips_and_forearms_go_down_whole() {
    let old = before(Block::Dress);
    for amount in [12.0, -10.0] {
        let at = LengthAt::Hips;
        let new = after(&old, LengthChange { at, amount });
        for name in ["back", "front"] {
            let (was, is) = (old.piece(name).unwrap(), new.piece(name).unwrap());
            let level =
                |p: &blockwright::piece::Piece, line: &str| p.line(line).unwrap().curve.end().y;
            assert_eq!(level(was, "waist"), level(is, "waist"));
            assert!((level(is, "hip") - level(was, "hip") - amount).abs() < 1e-9);
            assert_eq!(
                was.dart("waist").unwrap().legs,
                is.dart("waist").unwrap().legs
            );
        }
        let sides = ["back side_seam length", "front side_seam length"];
        let [back, front] = sides.map(|side| change(&old, &new, side));
        assert!((back - front).abs() < 0.01, "{back} {front}");
        let at = LengthAt::Forearm;
        let new = after(&old, LengthChange { at, amount });
        let (was, is) = (old.piece("sleeve").unwrap(), new.piece("sleeve").unwrap());
        assert_eq!(was.dart("elbow"), is.dart("elbow"));
        let seams = [
            "sleeve underarm_back length",
            "sleeve underarm_front length",
        ];
        let [back, front] = seams.map(|seam| change(&old, &new, seam));
        assert!(
            (back - front).abs() < 0.01 && (back - amount).abs() < 2.0,
            "{back} {front}"
        );
        assert!(change(&old, &new, "sleeve wrist length").abs() < 0.01);
    }
}

#[test]
fn a_wider_wrist_runs_to_nothing_at_the_elbow() {
    for (block, amount) in [
        (Block::Dress, 16.0),
        (Block::Tunic, -12.0),
        (Block::Bodice, 8.0),
    ] {
        let old = before(block);
        let new = after(&old, WristWidth { amount });
        let (was, is) = (old.piece("sleeve").unwrap(), new.piece("sleeve").unwrap());
        let edge = |piece: &blockwright::piece::Piece, name: &'static str| {
            let edge = piece.outline().edge(&EdgeName::new(name)).unwrap();
            edge.curve().clone()
        };
        for (name, out) in [("underarm_front", 1.0), ("underarm_back", -1.0)] {
            let (a, b) = (edge(was, name), edge(is, name));
            let by = change(&old, &new, &format!("sleeve {name} length"));
            assert!(by.abs() < 1e-3, "{name} {by}");
            let [a, b] = [a, b].map(|c| {
                if c.start().y > c.end().y {
                    c.start()
                } else {
                    c.end()
                }
            });
            assert!(
                ((b.x - a.x) * out - amount / 2.0).abs() < 0.4,
                "{name}: {a:?} {b:?}"
            );
        }
        assert_eq!(was.dart("elbow"), is.dart("elbow"));
        let cap = |p| edge(p, "sleeve_cap");
        assert_eq!(cap(was), cap(is));
        let there_and_back = after(&new, WristWidth { amount: -amount });
        let back = there_and_back.piece("sleeve").unwrap();
        assert!(
            edge(was, "wrist")
                .start()
                .distance(edge(back, "wrist").start())
                < 0.01
        );
    }
    let short = drafted(
        &body(1680.0, 940.0, 780.0, 1020.0),
        Block::Dress,
        SleeveLength::Short,
    );
    let refused = alter(&short.unwrap(), &[Box::new(WristWidth { amount: 8.0 })]).unwrap_err();
    assert!(refused.to_string().contains("a long sleeve"), "{refused}");
}

#[test]
fn a_full_bust_deepens_its_dart_and_keeps_what_is_sewn_to_others() {
    for block in [Block::Bodice, Block::Dress, Block::Tunic] {
        let old = before(block);
        let new = after(&old, Bust { amount: 12.0 });
        let front = |p: &Pattern| p.piece("front").unwrap().clone();
        let (was, is) = (front(&old), front(&new));
        let apex = is.bust_point().unwrap() - was.bust_point().unwrap();
        assert!((apex.x - 12.0).abs() < 1e-6, "{apex:?}");
        assert!(apex.y > 0.0, "the side front drops: {apex:?}");
        let centre = change(&old, &new, "front centre_front length");
        assert!(
            (centre - apex.y).abs() < 1e-6,
            "the lower front is levelled"
        );
        assert!(change(&old, &new, "front bust dart angle") > 3.0);
        for edge in ["armscye", "side_seam", "shoulder", "neckline"] {
            let by = change(&old, &new, &format!("front {edge} length"));
            assert!(by.abs() < 1e-3, "{edge}: {by}");
        }
        assert_eq!(old.piece("back"), new.piece("back"));
        // Shoulder and neckline do not move at all.
        for edge in [EdgeName::SHOULDER, EdgeName::NECKLINE] {
            let line = |p: &blockwright::piece::Piece| p.outline().edge(&edge).unwrap().clone();
            assert_eq!(line(&was), line(&is));
        }
        // The underarm line lies between hinge and apex: it gains, but less than twice the amount.
        let gained = change(&old, &new, "bust finished");
        assert!(gained > 4.0 && gained < 24.0, "{gained}");
        assert!(new.warnings().iter().any(|w| w.code == "bust_point_girth"));
    }
    let old = before(Block::Bodice);
    let new = after(&old, Bust { amount: 12.0 });
    // The waist dart takes the width back.
    let dart = change(&old, &new, "front waist dart intake");
    assert!((dart - 12.0).abs() < 1.0, "{dart}");
}
