//! Backs and fronts broader and narrower.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use super::wardrobe::eased;
use blockwright::alterations::{Alteration, BackShoulder, BackWidth, FrontWidth};

fn back(amount: f64) -> Box<dyn Alteration> {
    Box::new(BackWidth::by(amount))
}

fn front(amount: f64) -> Box<dyn Alteration> {
    Box::new(FrontWidth::by(amount))
}

#[test]
fn a_broader_back_goes_into_dart_or_ease() {
    on_all(
        back,
        &[10.0, 20.0, -8.0],
        |garment, amount, why| eased(&garment.pattern) && amount > 12.0 && why.contains("eased"),
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            let what = if eased(&garment.pattern) {
                "back shoulder length"
            } else {
                "back shoulder dart intake"
            };
            assert!(change(what) * amount > 0.0, "{}", garment.what);
            assert!(change("back_width finished") - amount < 1e-6);
        },
    );
}

fn back_below(amount: f64) -> Box<dyn Alteration> {
    Box::new(BackWidth {
        shoulder: BackShoulder::Keep,
        ..BackWidth::by(amount)
    })
}

#[test]
fn a_back_broader_below_a_shoulder_that_fits_keeps_it_and_its_dart() {
    on_all(
        back_below,
        &[8.0, 16.0, -8.0],
        |_, _, _| false,
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            assert!(
                change("back shoulder length").abs() < 1e-6,
                "{}",
                garment.what
            );
            if !eased(&garment.pattern) {
                assert!(change("back shoulder dart intake").abs() < 1e-6);
            }
            assert!((change("back_width finished") - amount).abs() < 1e-6);
        },
    );
}

#[test]
fn a_broader_front_keeps_its_shoulder() {
    on_all(front, &[8.0, 16.0, -8.0], |_, _, _| false, |_, _, _| {});
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    for make in [back, back_below, front] {
        none_changes_nothing(make, |_| true);
        undone(make, 8.0, |_| true);
        too_much_is_refused(make);
    }
}
