//! Marks and words on pieces: what must be there is there, and nothing lies on anything else.

#![cfg(feature = "yaml")]
#![allow(clippy::unwrap_used, clippy::panic)]

mod altered;
mod blocks;
mod faults;
mod jobs;
mod nested;
mod said;
mod sheet;
mod small;
mod spoiled;

use crate::support::bodies::{set, with_usual_sleeve as with_sleeve};
use blockwright::allowance::{Allowances, CutLines};
use blockwright::drawing::{Drawing, PatternLabels, pattern_sheet, pattern_sheet_to_cut};
use blockwright::piece::Pattern;

/// Labels as they usually are.
fn usual() -> PatternLabels {
    PatternLabels {
        wearer: Some("Ines".into()),
        size: Some("40".into()),
        date: Some("2026-03-14".into()),
        ..PatternLabels::new("Linen tunic, second toile")
    }
}

/// Labels as long as a job may have them.
fn longest() -> PatternLabels {
    PatternLabels {
        wearer: Some(format!("{}…", "Wilhelmine ".repeat(6).trim_end())),
        size: Some("W".repeat(40)),
        date: Some("the fourteenth of March, in the afternoon".into()),
        ..PatternLabels::new("WM".repeat(60))
    }
}

/// What lies on anything else or off its piece, with usual and with the longest labels, with and
/// without allowances.
fn faults_of(pattern: &Pattern, what: &str) -> Vec<String> {
    let mut faults = Vec::new();
    let mut look = |drawing: &Drawing, how: &str| {
        let found = faults::faults(drawing).into_iter();
        faults.extend(found.map(|fault| format!("{what}, {how}: {fault}")));
    };
    look(
        &pattern_sheet(pattern, &usual()).unwrap(),
        "stitching lines",
    );
    look(&pattern_sheet(pattern, &longest()).unwrap(), "long labels");
    // A piece may be too small for its allowances.
    if let Ok(cut) = CutLines::new(pattern, &Allowances::usual()) {
        let cut = pattern_sheet_to_cut(pattern, &usual(), &cut).unwrap();
        look(&cut, "to cut");
    }
    faults
}

fn none(faults: &[String]) {
    assert!(
        faults.is_empty(),
        "{} faults\n{}",
        faults.len(),
        faults.join("\n")
    );
}
