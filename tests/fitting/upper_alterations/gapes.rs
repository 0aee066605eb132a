//! Necklines and armscyes that stand off.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use super::wardrobe::eased;
use blockwright::alterations::{Alteration, ArmscyeGape, GapeSide, NecklineGape};

fn neckline(amount: f64) -> Box<dyn Alteration> {
    Box::new(NecklineGape::by(amount))
}

fn front(amount: f64) -> Box<dyn Alteration> {
    Box::new(ArmscyeGape {
        amount,
        side: GapeSide::Front,
    })
}

fn back(amount: f64) -> Box<dyn Alteration> {
    Box::new(ArmscyeGape {
        amount,
        side: GapeSide::Back,
    })
}

#[test]
fn a_neckline_is_taken_into_the_bust_dart() {
    on_all(
        neckline,
        &[4.0, 8.0, -4.0],
        |_, _, _| false,
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            assert!(
                change("front bust dart angle") * amount > 0.0,
                "{}",
                garment.what
            );
            let bust = change("bust finished");
            assert!(bust.abs() < 2.0 * amount.abs(), "{}: {bust}", garment.what);
        },
    );
}

#[test]
fn an_armscye_is_taken_into_a_dart() {
    on_all(
        front,
        &[4.0, 8.0, -4.0],
        |_, _, _| false,
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            assert!(
                change("front bust dart angle") * amount > 0.0,
                "{}",
                garment.what
            );
            let bust = change("bust finished");
            assert!(bust.abs() < 2.0 * amount.abs(), "{}: {bust}", garment.what);
        },
    );
    on_all(
        back,
        &[4.0, 8.0, -3.0],
        |garment, _, why| eased(&garment.pattern) && why.contains("shoulder dart"),
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            assert!(
                change("back shoulder dart angle") * amount > 0.0,
                "{}",
                garment.what
            );
        },
    );
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    for make in [neckline, front] {
        none_changes_nothing(make, |_| true);
        undone(make, 5.0, |_| true);
        too_much_is_refused(make);
    }
    none_changes_nothing(back, |g| !eased(&g.pattern));
    undone(back, 4.0, |g| !eased(&g.pattern));
    too_much_is_refused(back);
}
