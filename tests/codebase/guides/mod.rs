//! What README.md, the guides and DEVELOPERS.md promise: every alteration is listed with settings that can
//! be read, and the example programs run and are as short as they are said to be.
#![allow(clippy::unwrap_used)]

use blockwright::alterations::CATALOGUE;
use std::fs;
use std::path::Path;
use std::process::Command;

fn text(file: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(file)).unwrap()
}

/// The rows of the guide's table of alterations: name and settings, as they are in code marks.
fn listed() -> Vec<(String, String)> {
    let guide = text("src/guide/alterations.md");
    let rows = guide.lines().filter(|line| line.starts_with("| `"));
    rows.map(|row| {
        let parts: Vec<_> = row.split('`').collect();
        (parts[1].to_owned(), parts[parts.len() - 2].to_owned())
    })
    .collect()
}

/// The way in, not the manual: that is in the guides.
#[test]
fn the_readme_has_at_most_200_lines_and_names_every_guide() {
    let readme = text("README.md");
    assert!(readme.lines().count() <= 200, "{}", readme.lines().count());
    for line in text("src/guide/mod.rs").lines() {
        if let Some(name) = line.strip_prefix("pub mod ") {
            let file = format!("](src/guide/{}.md)", name.trim_end_matches(';'));
            assert!(readme.contains(&file), "{file}");
        }
    }
}

#[test]
fn the_guide_lists_every_alteration_once_in_the_order_of_the_catalogue() {
    let names: Vec<_> = listed().into_iter().map(|(name, _)| name).collect();
    let catalogue: Vec<_> = CATALOGUE.iter().map(|entry| entry.name).collect();
    assert_eq!(names, catalogue);
}

#[cfg(feature = "yaml")]
#[test]
fn the_settings_that_the_guide_shows_can_be_read() {
    for (name, settings) in listed() {
        let job = format!(
            "title: A\nblock: tunic\nbody: ines.yaml\nalterations:\n  - {name}: {settings}\n"
        );
        let read = blockwright::job::JobFile::parse(&job);
        assert!(read.is_ok(), "{name}: {settings}: {}", read.unwrap_err());
    }
}

#[test]
fn the_example_programs_run_and_are_short() {
    for (name, most, message) in [
        ("own_alteration", 60, "back side_seam length"),
        ("draft_and_alter", 15, "</svg>"),
        ("graded_skirts", 25, "</svg>"),
    ] {
        let lines = text(&format!("examples/{name}.rs")).lines().count();
        assert!(lines <= most, "{name} has {lines} lines");
        let out = Command::new(env!("CARGO"))
            // With the features of the tests, so that they are not built twice.
            .args(["run", "--quiet", "--example", name])
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .output()
            .unwrap();
        let (out, err) = [out.stdout, out.stderr].map(String::from_utf8).into();
        let (out, err) = (out.unwrap(), err.unwrap());
        assert!(out.contains(message), "{name}: {out}{err}");
    }
}

/// Developers who embed the library asked for fewer than 25 crates in all.
#[test]
fn without_features_few_crates_are_needed() {
    let out = Command::new(env!("CARGO"))
        .args(["tree", "--no-default-features", "--edges", "normal"])
        .args(["--prefix", "none", "--offline"])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .unwrap();
    let message = String::from_utf8(out.stdout).unwrap();
    let crates: std::collections::BTreeSet<&str> = message
        .lines()
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    assert!(
        crates.contains("blockwright") && crates.contains("kurbo"),
        "{message}"
    );
    assert!(crates.len() < 25, "{}: {crates:?}", crates.len());
}

/// kurbo takes sine and its kin from the system as soon as anything that it is built on brings
/// the standard library, and systems differ in the last bits.
#[test]
fn nothing_gives_kurbo_the_mathematics_of_the_system() {
    for name in ["kurbo", "polycool", "arrayvec", "smallvec", "libm"] {
        let out = Command::new(env!("CARGO"))
            .args(["tree", "--edges", "features", "--prefix", "none"])
            .args(["--offline", "--invert", name])
            .current_dir(env!("CARGO_MANIFEST_DIR"))
            .output()
            .unwrap();
        let message = String::from_utf8(out.stdout).unwrap();
        assert!(message.starts_with(name), "{name}: {message}");
        assert!(
            !message.contains(&format!("{name} feature \"std\"")),
            "{message}"
        );
    }
}
