//! The JSON Schemas under `examples/schemas`: they are those of the types, and a validator of
//! another make (python's `jsonschema`) finds sound files sound and spoiled ones spoiled, as the
//! reader does.
#![cfg(feature = "cli")]

use super::garments::{garment, rich};
use crate::support::bodies::repository_file;
use blockwright::job::{self, JobFile};
use blockwright::measurements::{MeasurementSet, SizeTable, set_schema, table_schema};
use blockwright::render::{self, json::PatternDocument};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use std::process::Command;

/// The schemas of the types, by the names of their files.
fn schemas() -> [(&'static str, Value); 4] {
    [
        ("job", job::schema()),
        ("measurement-set", set_schema()),
        ("pattern", render::json::schema()),
        ("size-table", table_schema()),
    ]
}

/// Those kept are written anew with `BLOCKWRIGHT_REWRITE_SCHEMAS=1`.
#[test]
fn the_schemas_are_those_of_the_types() {
    for (name, schema) in schemas() {
        let text = serde_json::to_string_pretty(&schema).unwrap() + "\n";
        let file = format!("examples/schemas/{name}.json");
        if std::env::var_os("BLOCKWRIGHT_REWRITE_SCHEMAS").is_some() {
            fs::write(Path::new(env!("CARGO_MANIFEST_DIR")).join(&file), text).unwrap();
        } else {
            assert!(
                text == repository_file(&file),
                "{name} changed: write the schemas again (DEVELOPERS.md)"
            );
        }
    }
}

/// The python to validate with, if it has jsonschema: `BLOCKWRIGHT_PYTHON`, or `python3`.
fn python() -> Option<String> {
    let named = std::env::var("BLOCKWRIGHT_PYTHON").ok();
    let found = named
        .into_iter()
        .chain(["python3".to_owned()])
        .find(|python| {
            let has = Command::new(python)
                .args(["-c", "import jsonschema"])
                .output();
            has.is_ok_and(|output| output.status.success())
        });
    if found.is_none() {
        eprintln!("SKIPPED: no python with jsonschema, the schemas were not tried; install it");
    }
    found
}

/// Which of the documents the schema finds sound.
fn sound(python: &str, schema: &str, documents: &[Value]) -> Vec<bool> {
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap();
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut command = Command::new(python);
    command
        .arg("-B")
        .arg(root.join("tests/paper/document/validate.py"))
        .arg(root.join(format!("examples/schemas/{schema}.json")));
    for (index, document) in documents.iter().enumerate() {
        let path = folder.path().join(format!("{index}.json"));
        fs::write(&path, document.to_string()).unwrap();
        command.arg(path);
    }
    let output = command.output().unwrap();
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    assert_eq!(said.lines().count(), documents.len(), "{said}");
    said.lines().map(|line| line == "sound").collect()
}

fn yaml(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap()
}

/// The first example of a job in README.md that has this key: it shows every key.
fn job_of_the_readme() -> Value {
    let readme = repository_file("README.md");
    let mut blocks = readme.split("```yaml\n").skip(1);
    let block = blocks
        .find(|block| block.starts_with("title: Dress block"))
        .unwrap();
    yaml(block.split("```").next().unwrap())
}

#[test]
fn documents_are_sound_by_the_schema() {
    let Some(python) = python() else { return };
    let made = (0..12).filter_map(garment).chain([rich()]);
    let documents: Vec<Value> = made
        .map(|document| serde_json::from_str(&document.text()).unwrap())
        .collect();
    let found = sound(&python, "pattern", &documents);
    assert!(found.iter().all(|sound| *sound), "{found:?}");
}

/// Each key left out or misspelt, each word exchanged: the schema and the reader agree.
#[test]
fn the_schema_and_the_reader_agree_on_spoiled_documents() {
    let Some(python) = python() else { return };
    let whole: Value = serde_json::from_str(&rich().text()).unwrap();
    let mut spoiled = Vec::new();
    let objects = [
        "",
        "/pieces/0",
        "/pieces/0/edges/0",
        "/pieces/0/darts/0",
        "/pieces/0/notches/0",
        "/pieces/0/lines/0",
        "/pieces/0/drill_points/0",
        "/seams/0",
        "/seams/0/a/0",
        "/girths/bust",
        "/girths/bust/runs/0",
        "/account/0",
        "/account/0/changes/0",
        "/allowance",
        "/body/bust_girth",
    ];
    for at in objects {
        let object = whole.pointer(at).unwrap().as_object().unwrap();
        for (key, value) in object {
            // What may be null may also be left out.
            let mut without = whole.clone();
            let part = without.pointer_mut(at).unwrap().as_object_mut().unwrap();
            part.remove(key);
            let nullable = value.is_null()
                || [
                    "side",
                    "edge",
                    "ease_on",
                    "spread",
                    "allowance",
                    "cut_line",
                    "amount",
                    "before",
                    "after",
                ]
                .contains(&key.as_str());
            if !nullable {
                spoiled.push((format!("{at} without {key}"), without));
            }
            let mut odd = whole.clone();
            odd.pointer_mut(at).unwrap()[key] = json!({"odd": [true]});
            spoiled.push((format!("{at} with an odd {key}"), odd));
        }
        let mut more = whole.clone();
        more.pointer_mut(at).unwrap()["colour"] = json!("red");
        spoiled.push((format!("{at} with a colour"), more));
    }
    let documents: Vec<Value> = spoiled
        .iter()
        .map(|(_, document)| document.clone())
        .collect();
    let found = sound(&python, "pattern", &documents);
    assert!(found.len() > 100);
    for ((what, document), sound) in spoiled.iter().zip(found) {
        assert!(!sound, "the schema finds nothing wrong: {what}");
        let read = PatternDocument::read(document.to_string().as_bytes());
        assert!(read.is_err(), "the reader finds nothing wrong: {what}");
    }
}

#[test]
fn jobs_sets_and_tables_are_sound_by_their_schemas() {
    let Some(python) = python() else { return };
    let jobs = ["company", "dress", "first-block", "linen-tunic"];
    let mut jobs: Vec<Value> = jobs
        .iter()
        .map(|name| yaml(&repository_file(&format!("examples/jobs/{name}.yaml"))))
        .collect();
    let of_readme = job_of_the_readme();
    assert!(JobFile::from_json(&of_readme.to_string()).is_ok());
    assert!(of_readme.get("dxf").is_some() && of_readme.get("allowance").is_some());
    jobs.push(of_readme.clone());
    let found = sound(&python, "job", &jobs);
    assert!(found.iter().all(|sound| *sound), "{found:?}");

    let sets = ["ines", "maren", "odile", "tilde"];
    let sets = sets.map(|name| yaml(&repository_file(&format!("measurement-sets/{name}.yaml"))));
    let found = sound(&python, "measurement-set", &sets);
    assert!(found.iter().all(|sound| *sound), "{found:?}");
    let tables = ["en-13402-3-women", "workshop-range"];
    let tables =
        tables.map(|name| yaml(&repository_file(&format!("measurement-sets/{name}.yaml"))));
    let found = sound(&python, "size-table", &tables);
    assert!(found.iter().all(|sound| *sound), "{found:?}");

    // Every key with something odd under it, and one key more: neither reader nor schema takes it.
    let spoil = |whole: &Value| -> Vec<Value> {
        let keys: Vec<&String> = whole.as_object().unwrap().keys().collect();
        let with = |key: &str, value: Value| {
            let mut spoiled = whole.clone();
            spoiled[key] = value;
            spoiled
        };
        let odd = keys.iter().map(|key| with(key, json!({"odd": [true]})));
        odd.chain([with("colour", json!("red"))]).collect()
    };
    let spoiled = spoil(&of_readme);
    let found = sound(&python, "job", &spoiled);
    for (job, sound) in spoiled.iter().zip(found) {
        assert!(!sound, "the schema finds nothing wrong: {job}");
        assert!(JobFile::from_json(&job.to_string()).is_err(), "{job}");
    }
    let spoiled = spoil(&sets[0]);
    let found = sound(&python, "measurement-set", &spoiled);
    for (set, sound) in spoiled.iter().zip(found) {
        assert!(!sound, "the schema finds nothing wrong: {set}");
        assert!(
            MeasurementSet::from_json(&set.to_string()).is_err(),
            "{set}"
        );
    }
    for table in tables {
        let spoiled = spoil(&table);
        let found = sound(&python, "size-table", &spoiled);
        for (table, sound) in spoiled.iter().zip(found) {
            assert!(!sound, "the schema finds nothing wrong: {table}");
            assert!(SizeTable::from_json(&table.to_string()).is_err(), "{table}");
        }
    }
}
