//! Every command that README.md and the guides show is run as it stands, in a folder that has the
//! examples, by the shell that would run it.
#![cfg(unix)]
#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::support::command::{Place, repository};

/// The commands in a text's blocks marked `sh`: a line each, or the block whole where it quotes.
fn blocks(text: &str) -> Vec<String> {
    let blocks = text.split("```sh\n").skip(1);
    let blocks = blocks.filter_map(|block| block.split("```").next());
    let lines = blocks.flat_map(|block| {
        let whole = block.contains('\'');
        let lines: Vec<&str> = if whole {
            vec![block]
        } else {
            block.lines().collect()
        };
        lines
    });
    lines.map(str::to_owned).collect()
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let place = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &place);
        } else {
            fs::copy(entry.path(), place).unwrap();
        }
    }
}

#[test]
fn every_command_that_is_shown_does_what_it_says() {
    let guides = fs::read_dir(repository("src/guide")).unwrap();
    let mut files: Vec<_> = guides.map(|entry| entry.unwrap().path()).collect();
    files.retain(|path| path.extension().is_some_and(|name| name == "md"));
    files.push(repository("README.md"));
    files.sort();
    let mut seen = Vec::new();
    let program = Path::new(env!("CARGO_BIN_EXE_blockwright"));
    let paths = std::env::var("PATH").unwrap_or_default();
    let path = format!("{}:{paths}", program.parent().unwrap().display());
    for file in files {
        // Each begins with the same folder.
        let place = Place::new();
        for folder in ["examples", "measurement-sets"] {
            copy(&repository(folder), &place.path().join(folder));
        }
        for command in blocks(&fs::read_to_string(&file).unwrap()) {
            // Setting up, and the tests themselves; the page is used in `tests/page`, batches in parts
            // in `tests/command/batch`.
            let elsewhere = [
                "parallel ",
                "git clone",
                "cargo ",
                "blockwright page",
                "examples/web/build",
            ];
            if !elsewhere.iter().any(|start| command.starts_with(start)) && !seen.contains(&command)
            {
                runs_well(&command, &path, &place);
                seen.push(command);
            }
        }
    }
    assert!(seen.len() >= 8, "{seen:?}");
}

fn runs_well(command: &str, path: &str, place: &Place) {
    let output = Command::new("sh")
        .args(["-e", "-c", command])
        .env("PATH", path)
        .current_dir(place.path())
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{command}\n{said}");
    assert!(!said.contains("panicked"), "{command}\n{said}");
    assert!(
        !output.stdout.is_empty() || command.contains('>'),
        "{command} says nothing"
    );
}
