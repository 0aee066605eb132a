//! Every input that is kept in `tests/command/corpus/TARGET`: seeds, and what a fuzz target once fell
//! over. How to look for more stands in DEVELOPERS.md.
#![cfg(feature = "cli")]
#![allow(missing_docs, clippy::unwrap_used)]

mod targets;

use std::fs;
use std::path::PathBuf;
use std::thread;
use std::time::{Duration, Instant};

use targets::TARGETS;

/// The longest that one input may take: a hang is what is guarded against, in an unoptimised
/// build on a busy machine.
const LONGEST: Duration = Duration::from_secs(20);

/// The largest that all inputs may be together: they are kept small.
const LARGEST: usize = 200_000;

/// The inputs of a target, in the order of their names.
fn inputs(target: &str) -> Vec<(String, Vec<u8>)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/command/corpus")
        .join(target);
    let mut found: Vec<(String, Vec<u8>)> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            (name, fs::read(path).unwrap())
        })
        .collect();
    found.sort();
    found
}

#[test]
fn every_kept_input_is_answered_in_time() {
    let mut size = 0;
    for (target, ask) in TARGETS {
        let inputs = inputs(target);
        assert!(!inputs.is_empty(), "{target} has no inputs");
        size += inputs.iter().map(|(_, bytes)| bytes.len()).sum::<usize>();
        let begun = Instant::now();
        let count = inputs.len();
        // The stack of a thread, not the larger one of the program.
        let asked = thread::spawn(move || {
            for (name, bytes) in inputs {
                eprintln!("{target}/{name}");
                let begun = Instant::now();
                ask(&bytes);
                let took = begun.elapsed();
                assert!(took < LONGEST, "{target}/{name} took {took:?}");
            }
        });
        assert!(asked.join().is_ok(), "{target}: see the last name above");
        eprintln!("{target}: {count} inputs in {:?}", begun.elapsed());
    }
    assert!(size < LARGEST, "{size} bytes of inputs");
}

#[test]
fn every_target_can_be_fuzzed() {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/fuzz");
    if !root.exists() {
        return eprintln!("SKIPPED: the fuzz targets are not part of the published package");
    }
    let manifest = fs::read_to_string(root.join("Cargo.toml")).unwrap();
    for (target, _) in TARGETS {
        assert!(
            manifest.contains(&format!("path = \"targets/{target}.rs\"")),
            "{target}"
        );
        let text = fs::read_to_string(root.join(format!("targets/{target}.rs"))).unwrap();
        assert!(text.contains(&format!("targets::{target}(")), "{target}");
    }
    assert_eq!(manifest.matches("[[bin]]").count(), TARGETS.len());
}
