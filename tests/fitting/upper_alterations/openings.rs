//! The armhole lower and higher, the neckline deeper and wider.

use super::rules::{none_changes_nothing, on_all, too_much_is_refused, undone};
use blockwright::alterations::{Alteration, ArmscyeDepth, NecklineDepth, NecklineWidth};

fn lower(amount: f64) -> Box<dyn Alteration> {
    Box::new(ArmscyeDepth::by(amount))
}

fn deeper(amount: f64) -> Box<dyn Alteration> {
    Box::new(NecklineDepth::by(amount))
}

fn wider(amount: f64) -> Box<dyn Alteration> {
    Box::new(NecklineWidth::by(amount))
}

#[test]
fn the_armhole_moves_along_the_side_seams() {
    on_all(lower, &[6.0, 10.0, -6.0], |_, _, _| false, |_, _, _| {});
    none_changes_nothing(lower, |_| true);
    undone(lower, 8.0, |_| true);
    too_much_is_refused(lower);
}

#[test]
fn the_neckline_gets_deeper() {
    on_all(
        deeper,
        &[5.0, 15.0, 40.0, -8.0],
        |_, _, _| false,
        |_, _, _| {},
    );
    none_changes_nothing(deeper, |_| true);
    undone(deeper, 10.0, |_| true);
    too_much_is_refused(deeper);
}

#[test]
fn the_neckline_gets_wider() {
    on_all(wider, &[4.0, 10.0, -4.0], |_, _, _| false, |_, _, _| {});
    none_changes_nothing(wider, |_| true);
    undone(wider, 6.0, |_| true);
    too_much_is_refused(wider);
}
