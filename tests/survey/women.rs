//! Women of the survey, from what was measured on them: a sample, or everybody with `BLOCKWRIGHT_WHOLE=1`.

use super::tally::{FITS, Garment, Tally};
use crate::support::survey::{body_of, sample, tell};
use blockwright::draft::{Block, Fit};
use blockwright::measurements::Body;

/// Every woman of the survey comes to a pattern, at every fit and for every block.
const LEAST_DRAFTED: f64 = 1.0;

fn draft_all(garment: Garment, fits: &[Fit]) {
    let table = sample(400, 46);
    let bodies: Vec<(&str, Body)> = table
        .rows
        .iter()
        .map(|row| (row.text("id"), body_of(row)))
        .collect();
    let mut faults = Vec::new();
    for &fit in fits {
        let tally = Tally::of(garment, fit, bodies.iter().map(|(who, body)| (*who, body)));
        let what = format!("women, {}, {}", garment.name(), fit.name());
        tell(&tally.report(&what));
        if tally.share_drafted() < LEAST_DRAFTED {
            faults.push(format!("{what}: {} drafted", tally.drafted));
        }
        faults.extend(
            tally
                .laws_broken()
                .iter()
                .map(|law| format!("{what}: {law}")),
        );
        faults.extend(
            tally
                .panicked
                .iter()
                .map(|who| format!("{what}: {who} panicked")),
        );
    }
    assert!(faults.is_empty(), "\n  {}\n", faults.join("\n  "));
}

#[test]
fn a_bodice_for_each() {
    draft_all(Garment::plain(Block::Bodice), &FITS);
}

#[test]
fn a_skirt_for_each() {
    draft_all(Garment::plain(Block::Skirt), &FITS);
}

#[test]
fn bodice_and_skirt_for_each() {
    draft_all(Garment::plain(Block::BodiceAndSkirt), &FITS);
}

#[test]
fn a_dress_for_each() {
    draft_all(Garment::plain(Block::Dress), &FITS);
}

#[test]
fn a_tunic_for_each() {
    draft_all(Garment::plain(Block::Tunic), &FITS);
}

#[test]
fn a_shirt_for_each() {
    draft_all(Garment::plain(Block::Shirt), &FITS);
}

#[test]
fn a_bodice_with_sleeves_for_each() {
    draft_all(Garment::sleeved(Block::Bodice), &[Fit::Regular]);
}

#[test]
fn a_dress_with_sleeves_for_each() {
    draft_all(Garment::sleeved(Block::Dress), &[Fit::Regular]);
}

#[test]
fn a_tunic_with_sleeves_for_each() {
    draft_all(Garment::sleeved(Block::Tunic), &[Fit::Regular]);
}

#[test]
fn a_shirt_with_sleeves_for_each() {
    draft_all(Garment::sleeved(Block::Shirt), &[Fit::Regular]);
}
