//! What of the Rust API guidelines can be held by machine: every public type can be sent to other
//! threads and shared, every error is one, and every public item shows how it is used and hands
//! errors on with `?`. The rest of the list stands in DEVELOPERS.md, "API checklist".

mod threads;

use std::fs;
use std::path::{Path, PathBuf};

/// Every source file of the library, by its path below `src`.
fn sources() -> Vec<(String, String)> {
    let root = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut found = Vec::new();
    let mut folders = vec![root.clone()];
    while let Some(at) = folders.pop() {
        for entry in fs::read_dir(&at).into_iter().flatten().flatten() {
            let path = entry.path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|e| e == "rs") {
                found.push((
                    below(&path, &root),
                    fs::read_to_string(&path).expect("text"),
                ));
            }
        }
    }
    found.retain(|(path, _)| {
        !path.starts_with("cli/") && !path.starts_with("page/") && path != "main.rs"
    });
    found.sort();
    assert!(found.len() > 100, "the sources are there");
    found
}

fn below(path: &Path, root: &Path) -> String {
    let parts = path.strip_prefix(root).expect("below").iter();
    let parts: Vec<_> = parts.map(|part| part.to_string_lossy()).collect();
    parts.join("/")
}

/// A public item at the top of a file, with the comment above it.
struct Item {
    kind: String,
    name: String,
    doc: String,
}

fn items(text: &str) -> Vec<Item> {
    let mut doc = String::new();
    let mut found = Vec::new();
    for line in text.lines() {
        if line.starts_with("///") {
            doc += line;
            doc.push('\n');
            continue;
        }
        if let Some(rest) = line.strip_prefix("pub ") {
            let rest = rest
                .strip_prefix("const fn")
                .map_or_else(|| rest.to_owned(), |r| format!("fn{r}"));
            let (kind, rest) = rest.split_once(' ').unwrap_or((&rest, ""));
            let name = rest
                .split(|c: char| c != '_' && !c.is_alphanumeric())
                .next();
            found.push(Item {
                kind: kind.to_owned(),
                name: name.unwrap_or_default().to_owned(),
                doc: std::mem::take(&mut doc),
            });
        } else if !line.starts_with([' ', '#', ')', ']', '"']) {
            doc.clear();
        }
    }
    found
}

/// What is wrong with the examples of a file.
fn example_faults(text: &str) -> Vec<String> {
    let mut faults = Vec::new();
    for item in items(text) {
        let shown = ["struct", "enum", "trait", "type", "fn"].contains(&item.kind.as_str());
        if shown && !item.doc.contains("/// ```\n") {
            faults.push(format!("{} {} has no example", item.kind, item.name));
        }
    }
    for (number, line) in text.lines().enumerate() {
        let comment = line.trim_start();
        let documents = comment.starts_with("///") || comment.starts_with("//!");
        if documents && (comment.contains(".unwrap()") || comment.contains(".expect(")) {
            faults.push(format!(
                "line {}: an example that panics, not `?`",
                number + 1
            ));
        }
    }
    faults
}

#[test]
fn every_public_item_has_an_example_that_hands_errors_on() {
    let faults: Vec<String> = sources()
        .iter()
        .flat_map(|(path, text)| {
            let message = example_faults(text).into_iter();
            message.map(move |fault| format!("src/{path}: {fault}"))
        })
        .collect();
    assert!(faults.is_empty(), "\n  {}\n", faults.join("\n  "));
}

#[test]
fn a_missing_example_and_one_that_panics_are_found() {
    let fine = "/// A.\n/// ```\n/// f()?;\n/// ```\n#[derive(Debug)]\npub struct A;\nfn b() {}\n";
    assert!(example_faults(fine).is_empty());
    let bare = format!("{fine}/// B.\npub enum B {{}}\n");
    assert_eq!(example_faults(&bare), ["enum B has no example"]);
    let stray = format!("{fine}}}\npub fn c() {{}}\n");
    assert_eq!(example_faults(&stray), ["fn c has no example"]);
    let panics = fine.replace("f()?", "f().unwrap()");
    assert_eq!(example_faults(&panics).len(), 1);
}

/// The module by which users name what stands in a file: folders that their parent keeps to itself
/// only sort its files.
fn public_module(path: &str, all: &[(String, String)]) -> String {
    let (folders, _) = path.rsplit_once('/').unwrap_or_default();
    let mut names = Vec::new();
    let mut parent = String::new();
    for folder in folders.split('/') {
        let root = if parent.is_empty() {
            "lib.rs".to_owned()
        } else {
            format!("{parent}mod.rs")
        };
        let declared = format!("pub mod {folder};");
        let is_public = all
            .iter()
            .any(|(path, text)| *path == root && text.lines().any(|line| line == declared));
        if is_public {
            names.push(folder);
        }
        parent = format!("{parent}{folder}/");
    }
    names.join("::")
}

/// Every public type was looked at, so that a new one cannot be forgotten.
#[test]
fn every_public_type_can_go_to_another_thread() {
    let looked_at = threads::looked_at();
    if !cfg!(all(feature = "lay", feature = "pdf", feature = "yaml")) {
        return;
    }
    let mut faults = Vec::new();
    let all = sources();
    for (path, text) in &all {
        let module = public_module(path, &all);
        for item in items(text) {
            let name = format!("{module}::{}", item.name);
            let is_type = item.kind == "struct" || item.kind == "enum";
            if is_type && !looked_at.contains(&name) {
                faults.push(format!("add {name} to tests/codebase/api/threads.rs"));
            }
        }
    }
    assert!(faults.is_empty(), "\n  {}\n", faults.join("\n  "));
}

/// Names that are there twice make a reader guess which is meant.
#[test]
fn no_public_type_has_the_name_of_another() {
    let mut named = std::collections::BTreeMap::<String, Vec<String>>::new();
    for (path, text) in sources() {
        for item in items(&text) {
            if ["struct", "enum", "trait", "type"].contains(&item.kind.as_str()) {
                named.entry(item.name).or_default().push(path.clone());
            }
        }
    }
    assert!(named.len() > 200, "{} types", named.len());
    named.retain(|_, paths| paths.len() > 1);
    assert!(named.is_empty(), "{named:#?}");
}

/// A word of the trade is written as it is named in files.
#[test]
fn words_are_written_by_their_names() {
    use blockwright::{alterations, draft, grading, job, measurements, piece};
    macro_rules! message {
        ($($word:expr),+) => { $(assert_eq!($word.to_string(), $word.name());)+ };
    }
    message!(
        draft::Block::Tunic,
        draft::Side::Straight,
        draft::SleeveLength::Short,
        draft::Fit::Loose,
        piece::EdgeRole::Hem,
        piece::BodySide::Left,
        alterations::Hinge::Shared,
        grading::Align::Nape,
        job::PaperSize::Roll914,
        job::PageTurn::FewerPages,
        measurements::MeasuredBlock::Sleeve
    );
}

/// An error tells its cause once asked, and what it says is no sentence of its own: lower case,
/// no full stop, so that it can stand in another one.
#[test]
fn an_error_can_stand_in_the_sentence_of_another() {
    use blockwright::measurements::{Body, Measurement};
    let error: Box<dyn std::error::Error + Send + Sync> =
        match Body::from_taken([(Measurement::BustGirth, f64::NAN)]) {
            Ok(_) => panic!("a bust that is no number"),
            Err(error) => error.into(),
        };
    for line in error.to_string().lines() {
        assert!(line.starts_with(char::is_lowercase), "{line}");
        assert!(!line.ends_with('.'), "{line}");
    }
}
