//! The floors of the crate, and what a source file may be.
//!
//! A module may use what stands below it, nothing beside or above it; inside a module no file
//! may reach itself through others. Read from the sources themselves: comments, strings and
//! test modules are left out, everything else counts, also paths written inside a function.

mod graph;
mod scan;

use graph::{Sources, cycles, floor_faults};
use scan::scan;
use std::fs;
use std::path::{Path, PathBuf};

/// Module and floor. A module that is not here may not be used; one not yet written is fine.
const FLOORS: &[(&str, i8)] = &[
    ("guide", -1),
    ("explain", -1),
    ("units", 0),
    ("geometry", 0),
    ("progress", 0),
    ("measurements", 1),
    ("piece", 1),
    ("invariants", 2),
    ("alterations", 3),
    ("allowance", 3),
    ("demonstration", 4),
    ("signs", 4),
    ("silhouette", 2),
    ("toile", 3),
    ("draft", 4),
    ("drawing", 4),
    ("recipe", 5),
    ("fit", 6),
    ("fit_map", 3),
    ("form", 2),
    ("grading", 6),
    ("lay", 6),
    ("render", 6),
    ("job", 7),
    ("measuring_form", 7),
    ("message", 8),
    ("whole_file", 8),
    ("page", 9),
    ("cli", 10),
];

/// Longest source file, in lines.
const MOST_LINES: usize = 500;

/// Folders at the top level.
const FOLDERS: &[&str] = &[
    "src",
    "benches",
    "tests",
    "examples",
    "measurement-sets",
    ".ci",
];

/// Files that gather their whole kind in one table, so that whatever they list reaches back to
/// them: the laws in `LAWS`, and the error of every law in `Violation`. Both list and are listed
/// by design; nothing else may reach itself.
const TABLES: &[&str] = &["invariants/law.rs", "invariants/violation.rs"];

/// Cycles that are known and wait for a mend. One that is no longer there is reported, so that
/// this list only shrinks.
const KNOWN_CYCLES: &[&[&str]] = &[];

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// Every Rust file below a folder: its path from there, with `/`, and its text.
fn rust_files(folder: &Path) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(at) = folders.pop() {
        for entry in fs::read_dir(&at).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|e| e == "rs") {
                let parts: Vec<_> = path
                    .strip_prefix(folder)
                    .expect("below the folder")
                    .iter()
                    .map(|part| part.to_string_lossy().into_owned())
                    .collect();
                found.push((
                    parts.join("/"),
                    fs::read_to_string(&path).expect("readable"),
                ));
            }
        }
    }
    found.sort();
    found
}

fn sources() -> Sources {
    let files = rust_files(&root().join("src"));
    assert!(files.len() > 20, "the sources are there");
    Sources::new(files.iter().map(|(path, text)| (path.as_str(), scan(text))))
}

fn none(faults: &[String]) {
    assert!(faults.is_empty(), "\n  {}\n", faults.join("\n  "));
}

#[test]
fn nothing_is_used_beside_or_above() {
    none(&floor_faults(&sources(), FLOORS));
}

#[test]
fn no_file_reaches_itself_inside_its_module() {
    let found = cycles(&sources(), TABLES);
    let mut faults: Vec<String> = found
        .iter()
        .filter(|cycle| !KNOWN_CYCLES.iter().any(|known| cycle.files == *known))
        .map(ToString::to_string)
        .collect();
    for known in KNOWN_CYCLES {
        if !found.iter().any(|cycle| cycle.files == *known) {
            faults.push(format!("no longer a cycle: {}", known.join(", ")));
        }
    }
    none(&faults);
}

#[test]
fn no_file_is_too_long() {
    let mut faults = Vec::new();
    for folder in ["src", "tests", "examples", "benches"] {
        for (path, text) in rust_files(&root().join(folder)) {
            let lines = text.lines().count();
            if lines > MOST_LINES {
                faults.push(format!("{folder}/{path}: {lines} lines"));
            }
        }
    }
    none(&faults);
}

#[test]
fn modules_are_named_for_what_they_hold() {
    let vague = ["utils", "util", "helpers", "common", "misc"];
    let faults: Vec<String> = rust_files(&root().join("src"))
        .into_iter()
        .filter(|(path, _)| {
            path.trim_end_matches(".rs")
                .split('/')
                .any(|part| vague.contains(&part))
        })
        .map(|(path, _)| format!("src/{path}"))
        .collect();
    none(&faults);
}

#[test]
fn mod_files_hold_doc_mod_and_use_only() {
    let faults: Vec<String> = rust_files(&root().join("src"))
        .into_iter()
        .filter(|(path, _)| path.ends_with("mod.rs"))
        .filter_map(|(path, text)| {
            let other = scan(&text).other_item()?;
            Some(format!("src/{path}: holds `{other}`"))
        })
        .collect();
    none(&faults);
}

#[test]
fn no_stray_folder_at_the_top() {
    let faults: Vec<String> = top_folders()
        .into_iter()
        .filter(|folder| !FOLDERS.contains(&folder.as_str()))
        .collect();
    none(&faults);
}

/// Folders of the files under version control, or where there is none, those that are seen.
fn top_folders() -> Vec<String> {
    let listed = std::process::Command::new("git")
        .args(["ls-files", "-z"])
        .current_dir(root())
        .output()
        .ok()
        .filter(|out| out.status.success() && !out.stdout.is_empty());
    let mut folders: Vec<String> = match listed {
        Some(out) => String::from_utf8_lossy(&out.stdout)
            .split('\0')
            .filter_map(|path| Some(path.split_once('/')?.0.to_owned()))
            .collect(),
        None => fs::read_dir(root())
            .expect("the crate's folder")
            .flatten()
            .filter(|entry| entry.path().is_dir())
            .map(|entry| entry.file_name().to_string_lossy().into_owned())
            .filter(|name| name != "target" && !name.starts_with('.'))
            .collect(),
    };
    folders.sort();
    folders.dedup();
    folders
}

/// The test can fail: on doctored sources every fault is found, and what only looks like one
/// is not.
mod doctored {
    use super::*;

    fn faults_of(files: &[(&str, &str)]) -> Vec<String> {
        let sources = Sources::new(files.iter().map(|(path, text)| (*path, scan(text))));
        let mut all = floor_faults(&sources, FLOORS);
        all.extend(cycles(&sources, &[]).iter().map(ToString::to_string));
        all
    }

    #[test]
    fn upward_and_sideways_uses_are_found_wherever_they_stand() {
        for (text, reply) in [
            ("use crate::draft::Block;", "draft"),
            (
                "pub use crate::{units::Length, draft::{Block, Fit}};",
                "draft",
            ),
            ("fn f() { let b = crate::draft::bodice(1); }", "draft"),
            ("fn f() { use crate::measurements::Body; }", "measurements"),
            ("use super::super::draft::Block;", "draft"),
            ("type B = Vec<crate::draft::Block>;", "draft"),
            ("use crate::surprise::Thing;", "surprise"),
        ] {
            let found = faults_of(&[("piece/mod.rs", "mod edge;"), ("piece/edge.rs", text)]);
            assert_eq!(found.len(), 1, "{text}: {found:?}");
            assert!(found[0].contains("piece/edge.rs"), "{found:?}");
            assert!(found[0].contains(reply), "{found:?}");
        }
    }

    #[test]
    fn what_only_looks_like_a_use_is_none() {
        let innocent = r###"
            //! [`Block`](crate::draft::Block)
            /// ```
            /// use crate::draft::Block;
            /// ```
            // crate::draft::Block
            /* crate::draft::Block /* crate::job::Job */ crate::draft */
            pub(crate) fn f<'a>(_: &'a str) -> char { let _ = "crate::draft::Block \" x"; '"' }
            const R: &str = r#"crate::draft::"Block""#;
            const B: &[u8] = b"crate::draft::Block";
            use crate::geometry::{Curve, Point as At};
            use crate::piece::edge::Edge;
            #[cfg(test)]
            #[allow(clippy::all)]
            mod tests { use crate::draft::Block; fn g() { { } } }
            #[cfg(test)]
            use crate::draft::Fit;
        "###;
        let found = faults_of(&[("piece/mod.rs", "mod edge;"), ("piece/edge.rs", innocent)]);
        none(&found);
    }

    #[test]
    fn a_cycle_is_reported_file_by_file() {
        let files = [
            (
                "draft/mod.rs",
                "mod a; mod b; mod c; pub use c::Made as Renamed;",
            ),
            ("draft/a.rs", "use super::b::B;"),
            ("draft/b.rs", "fn f() { super::Renamed::new(); }"),
            ("draft/c.rs", "use crate::draft::a;"),
        ];
        let found = faults_of(&files);
        assert_eq!(
            found,
            ["cycle: draft/a.rs -> draft/b.rs -> draft/c.rs -> draft/a.rs"]
        );
        let broken = [files[0], files[1], files[2], ("draft/c.rs", "struct Made;")];
        none(&faults_of(&broken));
    }

    #[test]
    fn a_mod_file_with_code_is_found() {
        let fine = "//! Doc.\n#[cfg(feature = \"pdf\")]\npub mod pdf;\nmod a;\npub use a::{A, B};\npub(crate) use a::C;";
        assert_eq!(scan(fine).other_item(), None);
        for bad in [
            "mod a; fn f() {}",
            "pub struct S;",
            "mod a { }",
            "const X: u8 = 1;",
        ] {
            assert!(scan(bad).other_item().is_some(), "{bad}");
        }
    }
}
