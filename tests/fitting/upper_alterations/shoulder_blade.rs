//! One prominent shoulder blade, or both.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use super::wardrobe::{eased, pattern};
use blockwright::alterations::{Alteration, OneSided, ShoulderBlade, alter};
use blockwright::draft::Block;
use blockwright::piece::{BodySide, EdgeName, Pattern, Piece};

fn blade(amount: f64) -> Box<dyn Alteration> {
    Box::new(ShoulderBlade::by(amount))
}

fn back(pattern: &Pattern) -> &Piece {
    let mut pieces = pattern.pieces().iter();
    let found = pieces.find(|p| p.outline().edge(&EdgeName::SHOULDER).is_some());
    found.unwrap()
}

#[test]
fn the_blade_gets_room_and_centre_and_neck_stay() {
    on_all(
        blade,
        &[3.0, 6.0, -3.0],
        |_, _, _| false,
        |garment, amount, done| {
            let what = &garment.what;
            let change = |of: &str| read(&done.pattern, of) - read(&garment.pattern, of);
            let (was, is) = (back(&garment.pattern), back(&done.pattern));
            let edge = |p: &Piece, name: &EdgeName| p.outline().edge(name).unwrap().clone();
            assert_eq!(
                edge(was, &EdgeName::CENTRE_BACK),
                edge(is, &EdgeName::CENTRE_BACK)
            );
            let tip = |p: &Piece| edge(p, &EdgeName::SHOULDER).curve().end();
            let out = tip(is).x - tip(was).x;
            assert!(
                out * amount > 0.0 && out.abs() < 1.6 * amount.abs(),
                "{what}: {out}"
            );
            if eased(&garment.pattern) {
                let longer = change("back shoulder length");
                assert!(
                    longer * amount > 0.0 && longer.abs() < 1.4 * amount.abs(),
                    "{what}"
                );
                return;
            }
            assert_eq!(
                edge(was, &EdgeName::NECKLINE),
                edge(is, &EdgeName::NECKLINE)
            );
            let (before, after) = (was.dart("shoulder").unwrap(), is.dart("shoulder").unwrap());
            // Its first leg stands on the shoulder beside the neck, which does not move.
            assert!(before.legs[0].distance(after.legs[0]) < 1e-9, "{what}");
            let wider = after.intake() - before.intake();
            assert!(
                wider * amount > 0.0 && wider.abs() < 1.6 * amount.abs(),
                "{what}: {wider}"
            );
            let moved = after.apex() - before.apex();
            assert!(
                moved.x * amount > 0.0 && moved.hypot() < 45.0,
                "{what}: {moved:?}"
            );
        },
    );
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(blade, |_| true);
    undone(blade, 5.0, |_| true);
    too_much_is_refused(blade);
}

#[test]
fn one_blade_alone() {
    for block in [Block::Dress, Block::Tunic, Block::Bodice] {
        let before = pattern(block, true, 1);
        let step = OneSided::new(BodySide::Left, blade(5.0));
        let after = alter(&before, &[Box::new(step)]).unwrap().pattern;
        let centre = |side: &str| {
            let piece = after.piece(&format!("back {side}")).unwrap();
            piece.seam_length(&EdgeName::CENTRE_BACK).unwrap()
        };
        assert!((centre("left") - centre("right")).abs() < 1e-6);
        assert!(
            after.piece("front").is_some(),
            "the front stays on the fold"
        );
    }
}
