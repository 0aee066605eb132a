//! Every woman of the survey, from what was measured on her.

use super::people::{body_of, tell, women};
use super::tally::{FITS, Tally};
use blockwright::draft::Block;
use blockwright::measurements::Body;

/// At least so many of the women must come to a pattern, at every fit and for every block.
const LEAST_DRAFTED: f64 = 0.99;

fn draft_all(block: Block) {
    let Some(table) = women(&format!("{} for the survey", block.name())) else {
        return;
    };
    let bodies: Vec<(&str, Body)> = table
        .rows
        .iter()
        .map(|row| (row.text("id"), body_of(row)))
        .collect();
    let mut faults = Vec::new();
    for fit in FITS {
        let tally = Tally::of(block, fit, bodies.iter().map(|(who, body)| (*who, body)));
        let what = format!("women, {}, {}", block.name(), fit.name());
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
    draft_all(Block::Bodice);
}

#[test]
fn a_skirt_for_each() {
    draft_all(Block::Skirt);
}

#[test]
fn bodice_and_skirt_for_each() {
    draft_all(Block::BodiceAndSkirt);
}
