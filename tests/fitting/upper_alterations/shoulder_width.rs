//! Shoulders broader and narrower.

use super::rules::{none_changes_nothing, on_all, too_much_is_refused, undone};
use blockwright::alterations::{Alteration, ShoulderWidth};

fn by(amount: f64) -> Box<dyn Alteration> {
    Box::new(ShoulderWidth::by(amount))
}

#[test]
fn shoulders_change_and_armscyes_stay() {
    on_all(by, &[6.0, 12.0, -6.0, -12.0], |_, _, _| false, |_, _, _| {});
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(by, |_| true);
    undone(by, 8.0, |_| true);
    too_much_is_refused(by);
}
