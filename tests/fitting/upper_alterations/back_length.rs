//! Backs rounder or flatter than the block's.

use super::rules::{none_changes_nothing, on_all, read, too_much_is_refused, undone};
use super::wardrobe::{Garment, eased};
use blockwright::alterations::{Alteration, BackLengthIncrease, Fullness};
use blockwright::piece::Pattern;
use std::cell::Cell;

fn by(amount: f64) -> Box<dyn Alteration> {
    Box::new(BackLengthIncrease::by(amount))
}

fn into_dart(amount: f64) -> Box<dyn Alteration> {
    Box::new(BackLengthIncrease {
        amount,
        fullness: Fullness::Dart,
    })
}

fn darted(garment: &Garment) -> bool {
    !eased(&garment.pattern)
}

#[test]
fn a_rounded_back_opens_the_shoulder_dart() {
    on_all(
        by,
        &[4.0, 8.0, 15.0, -3.0],
        |garment, amount, why| eased(&garment.pattern) && amount > 6.0 && why.contains("eased"),
        |garment, amount, done| {
            let change = |what: &str| read(&done.pattern, what) - read(&garment.pattern, what);
            if darted(garment) {
                let wider = change("back shoulder dart intake");
                assert!(wider * amount > 0.0, "{}: {wider}", garment.what);
            } else {
                let longer = change("back shoulder length");
                assert!(longer * amount > 0.0, "{}: {longer}", garment.what);
            }
        },
    );
}

/// A mouth of 16 to 20 mm for a dart of 60 to 80 lies flat on a back shoulder (a Russian drafting
/// text, read); what a rounder back needs more is eased onto the front beside the dart, up to 13 mm
/// (value from memory).
#[test]
fn a_dart_over_the_blade_stays_narrow_enough_to_lie_flat() {
    let (widest, most_eased) = (Cell::new(0.0_f64), Cell::new(0.0_f64));
    on_all(
        by,
        &[8.0, 15.0, 22.0],
        |garment, amount, _| eased(&garment.pattern) || amount > 20.0,
        |garment, amount, done| {
            if !darted(garment) {
                return;
            }
            let shoulder = |p: &Pattern| read(p, "back shoulder length");
            let longer = shoulder(&done.pattern) - shoulder(&garment.pattern);
            let intake = read(&done.pattern, "back shoulder dart intake");
            assert!(intake < 20.5, "{}: {intake}", garment.what);
            assert!((0.0..13.0).contains(&longer), "{}: {longer}", garment.what);
            if amount > 14.0 {
                assert!(longer > 1.0, "{}: {longer} for {amount}", garment.what);
            }
            widest.set(widest.get().max(intake));
            most_eased.set(most_eased.get().max(longer));
        },
    );
    let most = (widest.get(), most_eased.get());
    assert!(most.0 > 19.0 && most.1 > 3.0, "{most:?}");
}

#[test]
fn an_eased_shoulder_may_be_given_a_dart() {
    on_all(
        into_dart,
        &[6.0, 12.0],
        |_, _, _| false,
        |garment, _, done| {
            assert!(
                read(&done.pattern, "back shoulder dart intake") > 3.0,
                "{}",
                garment.what
            );
        },
    );
}

#[test]
fn none_is_none_and_there_and_back_is_none() {
    none_changes_nothing(by, |_| true);
    undone(by, 5.0, |_| true);
    too_much_is_refused(by);
    too_much_is_refused(into_dart);
}
