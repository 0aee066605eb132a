//! Shoulder points that stand forward.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use blockwright::alterations::{Alteration, ForwardShoulder};

fn by(amount: f64) -> Box<dyn Alteration> {
    Box::new(ForwardShoulder::by(amount))
}

#[test]
fn what_the_back_gains_the_front_gives() {
    on_all(
        by,
        &[5.0, 12.0, -6.0],
        |_, _, _| false,
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            let (back, front) = (
                change("back armscye length"),
                change("front armscye length"),
            );
            assert!(
                (back + front).abs() < 1e-3,
                "{}: {back} {front}",
                garment.what
            );
            assert!(
                (back - amount).abs() < 0.1 * amount.abs(),
                "{}: {back}",
                garment.what
            );
            if let Some(sleeve) = garment.pattern.piece("sleeve") {
                let at = |p: &blockwright::piece::Piece| {
                    p.notches()
                        .iter()
                        .find(|n| n.name == "shoulder")
                        .unwrap()
                        .at
                };
                let moved = at(done.pattern.piece("sleeve").unwrap()) - at(sleeve);
                assert!(
                    (moved - back).abs() < 0.5,
                    "{}: {moved} {back}",
                    garment.what
                );
            }
        },
    );
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(by, |_| true);
    undone(by, 8.0, |_| true);
    too_much_is_refused(by);
}
