//! A job that was read can be written, and reads as the same job.

#![allow(clippy::unwrap_used, clippy::panic)]

use crate::extremes::cases::Case;
use blockwright::draft::Block;
use blockwright::job::{Job, JobFile};
use blockwright::measurements::{Body, Measurement, MeasurementSet, SizeTable};
use blockwright::piece::Warning;
use blockwright::units::Unit;
use serde_json::Value;

/// How many random jobs are written.
const SAMPLE: u64 = 400;

/// The job file written as JSON and read again, and what was written.
fn again(file: &JobFile) -> (JobFile, String) {
    let text = serde_json::to_string_pretty(file).unwrap();
    let read = JobFile::from_json(&text).unwrap_or_else(|errors| panic!("{errors}\n{text}"));
    (read, text)
}

#[test]
fn random_jobs_are_read_as_they_were_written() {
    let (mut read, mut units, mut alterations) = (0, [0, 0, 0], 0);
    for seed in 0..SAMPLE {
        let case = Case::of(seed);
        let Ok(file) = JobFile::parse(&case.job) else {
            continue;
        };
        let (back, text) = again(&file);
        let mut job = file.resolve(None).unwrap();
        // What is written says that it is in mm.
        let bare = |note: &Warning| note.code == "bare_lengths";
        job.recipe.notes.retain(|note| !bare(note));
        // The whole job, by itself and by its file.
        assert_eq!(
            back.clone().resolve(None).unwrap(),
            job,
            "seed {seed}\n{text}"
        );
        let alone = serde_json::to_string_pretty(&job).unwrap();
        assert_eq!(
            serde_json::from_str::<Job>(&alone).unwrap(),
            job,
            "seed {seed}\n{alone}"
        );
        // Written again it is the same text, key by key.
        assert_eq!(again(&back).1, text, "seed {seed}");
        assert_eq!(alone, text, "seed {seed}");
        let yaml = job.to_yaml();
        let read_again = JobFile::parse(&yaml).unwrap_or_else(|errors| panic!("{errors}\n{yaml}"));
        assert_eq!(
            read_again.resolve(None).unwrap(),
            job,
            "seed {seed}\n{yaml}"
        );
        // And the set by itself.
        let set = serde_json::to_string(&job.set).unwrap();
        assert_eq!(MeasurementSet::from_json(&set).unwrap(), job.set, "{set}");
        read += 1;
        units[(seed % 3) as usize] += 1;
        alterations += job.recipe.alterations.len();
    }
    assert!(read > SAMPLE / 2 && alterations > 100, "{read} read");
    assert!(units.iter().all(|count| *count > 20), "{units:?}");
}

#[test]
fn a_written_job_has_the_keys_and_numbers_of_the_file() {
    let text = r#"
title: Whole job
unit: mm
size: "40"
date: 2026-03-14
block: tunic
ease: {fit: close, bust: 3 in}
length: 25 1/2 in
sleeve: long
cap_ease: 28
waist_darts: false
side: straight
alterations:
  - back_length_reduction: {amount: 1 in, hinge: shared}
  - shoulder_slope: {to: body}
allowance: {default: 15, neckline: 10, hem: 4 cm}
body:
  name: Ines
  unit: in
  source: taken by a friend
  notes: sits much
  measurements: {height: 5'6", bust_girth: 36 1/2, waist_girth: 76 cm, hip_girth: 39.4, shoulder_slope: 22.5}
print: {paper: letter, margin: 15, overlap: 12, orientation: landscape}
dxf: true
"#;
    let file = JobFile::parse(text).unwrap();
    let (back, written) = again(&file);
    let written: Value = serde_json::from_str(&written).unwrap();
    let expected = serde_json::json!({
        "title": "Whole job", "unit": "mm", "size": "40", "date": "2026-03-14", "block": "tunic",
        "ease": {"fit": "close", "bust": 76.2}, "length": 647.7, "sleeve": "long",
        "cap_ease": 28.0, "waist_darts": false, "side": "straight",
        "alterations": [
            {"back_length_reduction": {"amount": 25.4, "hinge": "shared"}},
            {"shoulder_slope": {"to": "body"}},
        ],
        "allowance": {"default": 15.0, "hem": 40.0, "neckline": 10.0},
        "body": {
            "name": "Ines", "unit": "in", "source": "taken by a friend", "notes": "sits much",
            "measurements": {
                "height": 66.0, "bust_girth": 36.5, "waist_girth": 29.921_259_842_519_685,
                "hip_girth": 39.4, "shoulder_slope": 22.5,
            },
        },
        "print": {"paper": "letter", "margin": 15.0, "overlap": 12.0, "orientation": "landscape"},
        "dxf": true,
    });
    assert_eq!(written, expected);
    assert_eq!(back.resolve(None).unwrap(), file.resolve(None).unwrap());
    // A key more or less, or another number, is another job.
    for (spoil, value) in [("/length", 648.0), ("/body/measurements/bust_girth", 36.6)] {
        let mut other = expected.clone();
        *other.pointer_mut(spoil).unwrap() = value.into();
        let read = serde_json::from_value::<Job>(other).unwrap();
        let sound = serde_json::from_value::<Job>(expected.clone()).unwrap();
        assert_ne!(read, sound, "{spoil}");
    }
}

#[test]
fn a_body_in_another_file_is_named_as_it_was() {
    let head = "title: A\nblock: skirt\n";
    let set = "name: Ada\nunit: cm\nmeasurements: {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";
    let table = "name: T\nunit: cm\ncommon: {height: 168}\nsizes:\n  40: {bust_girth: 92, waist_girth: 76, hip_girth: 100}\n  44: {bust_girth: 100, waist_girth: 84, hip_girth: 108}\n";
    assert!(SizeTable::parse(table).is_ok());
    for (body, given, shape) in [
        ("body: ada.yaml\n", set, serde_json::json!("ada.yaml")),
        (
            "body: {table: range.yaml, size: 40, sizes: {hip_girth: 44}}\n",
            table,
            serde_json::json!({"table": "range.yaml", "size": "40", "sizes": {"hip_girth": "44"}}),
        ),
    ] {
        let file = JobFile::parse(&format!("{head}{body}")).unwrap();
        let (back, text) = again(&file);
        let written: Value = serde_json::from_str(&text).unwrap();
        assert_eq!(written["body"], shape);
        assert_eq!(again(&back), (back.clone(), text));
        let yaml = JobFile::parse(&back.to_yaml()).unwrap();
        assert_eq!(serde_json::to_value(&yaml).unwrap(), written);
        let (one, other) = (back.resolve(Some(given)), file.resolve(Some(given)));
        assert_eq!(one.unwrap(), other.unwrap());
    }
    // Nor does a block of one's own stand in the job.
    let own = "title: A\nblock: {file: mine.json}\nalterations: [{bust: {amount: 5}}]\nprint: {margin: 15}\n";
    let file = JobFile::parse(own).unwrap();
    let (back, text) = again(&file);
    let written: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(written["block"], serde_json::json!({"file": "mine.json"}));
    assert!(written.get("ease").is_none() && written.get("body").is_none());
    assert_eq!(back.block_path(), Some("mine.json"));
    assert_eq!(again(&back).1, text);
    // A job for a table of sizes has no body to be written.
    let bare = JobFile::parse_for_range(head).unwrap();
    assert!(serde_json::to_value(&bare).unwrap().get("body").is_none());
}

#[test]
fn texts_of_any_kind_come_back() {
    let body = || {
        Body::from_taken([
            (Measurement::Height, 1680.0),
            (Measurement::BustGirth, 920.0),
            (Measurement::WaistGirth, 760.0),
            (Measurement::HipGirth, 1000.0),
        ])
        .unwrap()
    };
    for name in [
        "yes",
        "No",
        "null",
        "~",
        "40",
        "1e3",
        "0x1f",
        "0o17",
        "1_000",
        ".nan",
        "-.inf",
        "12:30:45",
        "2026-03-14",
        "-",
        "- a",
        "?",
        "a: b",
        "a #b",
        "#",
        "'a'",
        "\"a\"",
        "@a",
        "%a",
        "`a`",
        "&a",
        "*a",
        "!a",
        "|",
        ">",
        "{a: b}",
        "[1, 2]",
        "<<",
        "=",
        "a\tb",
        "a\nb",
        "a\r\nb\n\nc",
        "\\n",
        "\u{e4} \u{6f22}",
        "\u{1f9f5}",
        "\u{feff}a",
        "a\u{85}b",
        "a\u{2028}b",
        "a\u{7}b",
        "---",
        "...",
        "--- a",
        "a:",
        "true",
    ] {
        let set = MeasurementSet::new(name, Unit::Cm, body());
        let job = Job::new(name, Block::Skirt, set.clone());
        let (json, yaml) = (serde_json::to_string(&set).unwrap(), set.to_yaml());
        assert_eq!(MeasurementSet::from_json(&json).unwrap(), set, "{json}");
        let read = MeasurementSet::parse(&yaml).unwrap_or_else(|errors| panic!("{errors}\n{yaml}"));
        assert_eq!(read, set, "{yaml}");
        // A title is one line; what is read as one is read so again.
        if let Ok(file) = JobFile::parse(&job.to_yaml()) {
            let title = file.clone().resolve(None).unwrap().recipe.title;
            assert_eq!(again(&file).0.resolve(None).unwrap().recipe.title, title);
            let breaks = |c: char| c.is_control() || c == '\u{2028}';
            assert!(
                title == name || name.chars().any(breaks),
                "{name:?} {title:?}"
            );
        }
    }
}
