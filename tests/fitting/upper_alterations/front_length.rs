//! Fronts longer and shorter above the chest.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use blockwright::alterations::{Alteration, FrontLength};
use blockwright::piece::EdgeName;

fn front(amount: f64) -> Box<dyn Alteration> {
    Box::new(FrontLength::by(amount))
}

#[test]
fn neckline_and_shoulder_go_up_whole_and_the_armscye_follows() {
    on_all(
        front,
        &[8.0, 15.0, -10.0],
        |_, _, _| false,
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            assert!((change("front centre_front length") - amount).abs() < 1e-6);
            assert!(
                change("front armscye length") / amount > 0.5,
                "{}",
                garment.what
            );
            assert!(
                change("back armscye length").abs() < 0.5,
                "{}",
                garment.what
            );
            let [old, new] = [&garment.pattern, &done.pattern]
                .map(|p| p.piece("bodice front").or(p.piece("front")).unwrap());
            for edge in [EdgeName::NECKLINE, EdgeName::SHOULDER] {
                let [was, is] =
                    [old, new].map(|piece| piece.outline().edge(&edge).unwrap().curve());
                for (was, is) in [(was.start(), is.start()), (was.end(), is.end())] {
                    assert!((was.y - is.y - amount).abs() < 1e-9 && (was.x - is.x).abs() < 1e-9);
                }
            }
        },
    );
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(front, |_| true);
    undone(front, 10.0, |_| true);
    too_much_is_refused(front);
}
