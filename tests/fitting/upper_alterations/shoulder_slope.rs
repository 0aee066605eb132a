//! Shoulders that slope more or less.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use blockwright::alterations::{Alteration, ShoulderSlope, Underarm};

fn follow(degrees: f64) -> Box<dyn Alteration> {
    Box::new(ShoulderSlope::by(degrees))
}

fn keep(degrees: f64) -> Box<dyn Alteration> {
    Box::new(ShoulderSlope {
        degrees,
        underarm: Underarm::Keep,
    })
}

#[test]
fn the_armscye_follows_and_the_side_seams_match() {
    on_all(
        follow,
        &[-3.0, 2.0, 4.0],
        |_, _, _| false,
        |garment, degrees, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            let (back, front) = (
                change("back side_seam length"),
                change("front side_seam length"),
            );
            assert!(
                (back - front).abs() < 1e-3,
                "{}: {back} {front}",
                garment.what
            );
            // About as much as the shoulder point drops: 124 mm by an angle.
            let drop = 124.0 * degrees.to_radians();
            assert!(
                (back + drop).abs() < 0.35 * drop.abs() + 0.5,
                "{}: {back} {drop}",
                garment.what
            );
        },
    );
}

#[test]
fn a_kept_underarm_shortens_the_armscye() {
    on_all(
        keep,
        &[-3.0, 3.0],
        |_, _, _| false,
        |garment, degrees, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            for piece in ["back", "front"] {
                let armscye = change(&format!("{piece} armscye length"));
                assert!(
                    armscye * degrees < 0.0 && (3.0..9.0).contains(&armscye.abs()),
                    "{}: {armscye}",
                    garment.what
                );
            }
        },
    );
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(follow, |_| true);
    none_changes_nothing(keep, |_| true);
    undone(follow, 3.0, |_| true);
    undone(keep, 3.0, |_| true);
    too_much_is_refused(follow);
    too_much_is_refused(keep);
}
