//! Side seams let out and taken in under the arm.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use blockwright::alterations::{Alteration, BustGirth};
use blockwright::piece::EdgeName;

fn bust(amount: f64) -> Box<dyn Alteration> {
    Box::new(BustGirth::by(amount))
}

#[test]
fn side_seams_are_let_out_under_the_arm_alone() {
    on_all(
        bust,
        &[16.0, 40.0, -12.0],
        |_, _, _| false,
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            assert!(
                (change("bust finished") - amount).abs() < 1e-6,
                "{}",
                garment.what
            );
            for name in ["back", "front"] {
                // Over a skirt the pieces are those of the bodice.
                let bodice = format!("bodice {name}");
                let [old, new] = [&garment.pattern, &done.pattern]
                    .map(|p| p.piece(&bodice).or(p.piece(name)).unwrap());
                let ends = |edge: &EdgeName| {
                    [old, new].map(|piece| piece.outline().edge(edge).unwrap().curve().clone())
                };
                let [was, is] = ends(&EdgeName::SIDE_SEAM);
                // A quarter at each side edge, but for a dart that reaches up to the underarm line.
                let out = is.start().x - was.start().x;
                assert!(
                    (out - amount / 4.0).abs() < 0.1,
                    "{}: {name} {out}",
                    garment.what
                );
                // Along with the slant of the seam, whose length stays.
                let down = is.start().y - was.start().y;
                assert!(
                    down.abs() < 0.5 * out.abs(),
                    "{}: {name} {out} {down}",
                    garment.what
                );
                let off = is.end().distance(was.end());
                assert!(off < 1e-6, "{}: {name} {off}", garment.what);
                // Legs run on in their own direction.
                for (dart, before) in new.darts().iter().zip(old.darts()) {
                    assert!(dart.apex().distance(before.apex()) < 1e-9);
                    let angle = dart.angle() - before.angle();
                    assert!(before.edge != Some(EdgeName::SIDE_SEAM) || angle.abs() < 1e-9);
                }
            }
        },
    );
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(bust, |_| true);
    undone(bust, 24.0, |_| true);
    too_much_is_refused(bust);
}
