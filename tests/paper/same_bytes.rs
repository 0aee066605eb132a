//! The same job gives the same bytes on another machine.
//!
//! `.ci/same_bytes` builds the library as a WebAssembly module, with another compiler, word size
//! and mathematics of the system, and writes what it makes of seeded jobs to
//! `target/same-bytes/wasm.txt`; `BLOCKWRIGHT_OTHER_BYTES` names such a file from elsewhere.
#![cfg(all(
    feature = "lay",
    feature = "least-distortion",
    feature = "pdf",
    feature = "yaml"
))]
#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "../support/seeded_jobs.rs"]
mod seeded_jobs;

use seeded_jobs::{job_text, summary};
use std::path::PathBuf;

/// Jobs that are looked at without another machine's file.
const FEW: u32 = 24;

#[test]
fn another_machine_makes_the_same_files() {
    let other = std::env::var_os("BLOCKWRIGHT_OTHER_BYTES").map(PathBuf::from);
    let Some(path) = other else {
        eprintln!("SKIPPED: no files of another machine; make them with .ci/same_bytes");
        return;
    };
    let text = std::fs::read_to_string(&path).unwrap();
    let last = text.lines().last().unwrap().split(' ').next().unwrap();
    let count: u32 = last.parse::<u32>().unwrap() + 1;
    assert!(count >= 200, "{count} jobs in {}", path.display());
    let lays = text.lines().filter(|line| line.contains(" lay.svg "));
    assert!(lays.count() >= 30, "lays in {}", path.display());
    let here: String = (0..count).map(summary).collect();
    let different: Vec<String> = text
        .lines()
        .zip(here.lines())
        .filter(|(there, here)| there != here)
        .map(|(there, here)| format!("there {there}\n here {here}"))
        .collect();
    assert!(
        different.is_empty(),
        "{} of {} lines differ\n{}",
        different.len(),
        here.lines().count(),
        different.join("\n")
    );
    assert_eq!(text.lines().count(), here.lines().count());
}

/// The jobs are what they are meant to be: most are made, every block among them.
#[test]
fn seeded_jobs_are_made_and_differ() {
    let all: Vec<String> = (0..FEW).map(summary).collect();
    let refused: Vec<&String> = all
        .iter()
        .filter(|text| text.contains(" refused: "))
        .collect();
    assert!(refused.len() <= FEW as usize / 4, "{refused:?}");
    // A job that cannot even be read would compare nothing.
    let read = |text: &&&String| !text.contains("expected");
    assert_eq!(
        refused.iter().filter(read).count(),
        refused.len(),
        "{refused:?}"
    );
    let texts: std::collections::BTreeSet<String> = (0..FEW).map(job_text).collect();
    assert_eq!(texts.len(), FEW as usize);
}
