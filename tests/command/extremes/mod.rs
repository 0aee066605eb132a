//! Random jobs, many of them with bodies and settings at the ends of what may be written: nothing
//! panics, no file, report or message holds what is no number, and messages speak the unit in which
//! the body was measured.
//!
//! A seeded sample runs with the tests. The wide search, in as many cases as are asked for, prints
//! what it found and how much it made:
//!
//! ```sh
//! BLOCKWRIGHT_EXTREMES=20000 cargo test --release --test command extremes -- --nocapture
//! ```
//!
//! `BLOCKWRIGHT_EXTREMES_FROM` is the first seed, by default 0: a case can be run alone by its own.

pub mod cases;
mod made;
mod numbers;
mod unit;

use cases::Case;
use made::{Tally, ask};
use std::collections::BTreeMap;
use std::time::Instant;

/// How many cases run with the tests.
const SAMPLE: u64 = 120;

/// How many faults are shown in full.
const SHOWN: usize = 20;

fn asked(name: &str, usual: u64) -> u64 {
    std::env::var(name).map_or(usual, |text| text.parse().expect("a whole number"))
}

#[test]
fn random_jobs_neither_panic_nor_write_what_is_no_number() {
    let count = asked("BLOCKWRIGHT_EXTREMES", SAMPLE);
    let from = asked("BLOCKWRIGHT_EXTREMES_FROM", 0);
    let begun = Instant::now();
    let mut tally = Tally::default();
    // Faults of one kind, by the words that say it without their numbers.
    let mut faults: BTreeMap<String, (u64, String)> = BTreeMap::new();
    made::listen_to_panics();
    for seed in from..from + count {
        let case = Case::of(seed);
        for fault in ask(&case, &mut tally) {
            let kind: String = fault.chars().filter(|c| !c.is_ascii_digit()).collect();
            let kind = kind.chars().take(120).collect();
            let first = || (0, format!("seed {seed}: {fault}\n{}", case.describe()));
            faults.entry(kind).or_insert_with(first).0 += 1;
        }
    }
    eprintln!(
        "{count} cases from {from} in {:.0?}: {tally}",
        begun.elapsed()
    );
    let reply: Vec<String> = faults
        .values()
        .take(SHOWN)
        .map(|(times, first)| format!("{times} times, first {first}"))
        .collect();
    assert!(
        faults.is_empty(),
        "{} kinds of faults\n{}",
        faults.len(),
        reply.join("\n\n")
    );
    // A search that makes nothing finds nothing.
    assert!(tally.patterns > count / 5, "{tally}");
    assert!(tally.spoken > count / 5, "{} spoken", tally.spoken);
}
