//! The same input gives the same bytes: in another folder, environment and process, and on any
//! number of threads. What a hash orders differs from process to process.

use std::fs;
use std::path::Path;

use crate::support::command::{Place, Ran};

const JOB: &str = "print: {orientation: portrait}\ntitle: Costume\nsize: 40\ndate: 2026-03-14\nblock: dress\nsleeve: long\n\
    body: {name: Ada, unit: cm, measurements: {height: 168, bust_girth: 92, waist_girth: 76, \
    hip_girth: 100}}\nalterations:\n  - back_length_reduction: {amount: 12, hips_checked: true}\n  \
    - shoulder_slope: {degrees: 2, side: left}\nallowance: {default: 10, hem: 40}\ndxf: true\n";

const TABLE: &str = "name: A range\nunit: cm\ncommon: {height: 168}\nsizes:\n  \
    '38': {bust_girth: 88, waist_girth: 72, hip_girth: 96}\n  \
    '44': {bust_girth: 100, waist_girth: 84, hip_girth: 107}\n";

/// Every file below a folder by its path from there, with its bytes.
fn files(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        found.push((name, fs::read(path).unwrap()));
    }
    found.sort();
    found
}

/// Where and how a command runs.
struct Setting {
    below: &'static str,
    environment: &'static [(&'static str, &'static str)],
    threads: &'static str,
}

const SETTINGS: [Setting; 4] = [
    Setting {
        below: ".",
        environment: &[],
        threads: "1",
    },
    Setting {
        below: "a b/ü/deeper",
        environment: &[
            ("TZ", "Pacific/Auckland"),
            ("LANG", "tr_TR.UTF-8"),
            ("LC_ALL", "de_DE.UTF-8"),
        ],
        threads: "2",
    },
    Setting {
        below: "x",
        environment: &[
            ("TZ", "America/Lima"),
            ("LC_ALL", "C"),
            ("HOME", "/nowhere"),
        ],
        threads: "7",
    },
    Setting {
        below: "y",
        environment: &[
            ("HOME", ""),
            ("RAYON_NUM_THREADS", "3"),
            ("NO_COLOR", "1"),
            ("COLUMNS", "20"),
        ],
        threads: "2",
    },
];

/// The files and the report of a command in a setting. The folder the command names is the same.
fn made(setting: &Setting, args: &[&str]) -> (Vec<(String, Vec<u8>)>, String) {
    let place = Place::new();
    let file = |name: &str, text: &str| {
        place.write(&format!("{}/{name}", setting.below), text);
    };
    file("job.yaml", JOB);
    file("table.yaml", TABLE);
    let mut people = "id,height,bust_girth,waist_girth,hip_girth\n".to_owned();
    for n in 0..12 {
        people.push_str(&format!("p{n},{},920,760,1000\n", 1600 + 5 * n));
    }
    file("people.csv", &people);
    let mut command = place.command(args);
    if args[0] == "batch" {
        command.args(["--threads", setting.threads]);
    }
    let folder = place.path().join(setting.below);
    let output = command
        .args(["-o", "out"])
        .current_dir(&folder)
        .envs(setting.environment.iter().copied())
        .output()
        .unwrap();
    let report = Ran::from(&output).done();
    // How long it took is told, and nothing else that changes.
    let report = match report.rsplit_once(", in ") {
        Some((before, _)) if args[0] == "batch" => before.to_owned(),
        _ => report,
    };
    (files(&folder.join("out")), report)
}

#[test]
fn the_same_input_gives_the_same_bytes_wherever_it_is_made() {
    for args in [
        &["draft", "job.yaml"][..],
        &["grade", "job.yaml", "table.yaml", "--dxf"],
        &[
            "lay", "job.yaml", "--width", "140cm", "--seed", "5", "--rounds", "40",
        ],
        &["batch", "job.yaml", "people.csv", "--patterns"],
    ] {
        let all = SETTINGS.each_ref().map(|setting| made(setting, args));
        let (first, report) = &all[0];
        let count = if args[0] == "batch" { 1 } else { 3 };
        assert!(first.len() >= count);
        for (files, message) in &all[1..] {
            assert_eq!(message, report, "{args:?}");
            for ((name, bytes), (also, others)) in files.iter().zip(first) {
                assert_eq!(name, also);
                assert!(bytes == others, "{args:?}: {name}");
            }
            assert_eq!(files.len(), first.len());
        }
    }
}

#[test]
fn no_file_tells_where_or_when_it_was_made() {
    let (files, _) = made(&SETTINGS[1], &["draft", "job.yaml"]);
    for (name, bytes) in files {
        let text = String::from_utf8_lossy(&bytes);
        for message in [
            "deeper",
            "/nowhere",
            "CreationDate",
            "ModDate",
            env!("CARGO_TARGET_TMPDIR"),
        ] {
            assert!(!text.contains(message), "{name} tells {message}");
        }
    }
}
