//! What is handed on and what is compared: private files, an earlier document, charts of sizes, lines
//! for many machines, many garments on one cloth.

use std::io::Write as _;
use std::process::{Command, Stdio};

use crate::support::command::{Place, skip};
use serde_json::Value;

const JOB: &str = "title: Dress to sell\nunit: cm\nblock: dress\nsleeve: long\ndxf: true\nbody: {name: \
                   Maren Ferrywoman, unit: mm, measurements: {height: 1683, bust_girth: 923, \
                   waist_girth: 757, hip_girth: 1009, back_waist_length: 407}}\n";

const TABLE: &str = "name: Chorus\nunit: in\ncommon: {height: 66}\nsizes:\n  \
    '8': {bust_girth: 34, waist_girth: 27, hip_girth: 37}\n  \
    '10': {bust_girth: 36, waist_girth: 29, hip_girth: 39}\n";

/// All that a reader of the files can read, PDF streams unpacked.
fn readable(place: &Place, folder: &str) -> String {
    let mut all = String::new();
    for name in place.names(folder) {
        let bytes = std::fs::read(place.path().join(folder).join(&name)).unwrap();
        if name.ends_with(".pdf") {
            let mut pdf = lopdf::Document::load_mem(&bytes).unwrap();
            pdf.decompress();
            let mut plain = Vec::new();
            pdf.save_to(&mut plain).unwrap();
            all.push_str(&String::from_utf8_lossy(&plain));
        } else {
            all.push_str(&String::from_utf8_lossy(&bytes));
        }
    }
    all
}

#[test]
fn private_files_say_nothing_of_the_wearer() {
    let place = Place::with_job(JOB);
    place.run(&["draft", "job.yaml", "-o", "open"]).done();
    place.write("private.yaml", format!("{JOB}private: true\n"));
    place
        .run(&["draft", "private.yaml", "-o", "private"])
        .done();
    let (open, private) = (readable(&place, "open"), readable(&place, "private"));
    // Her name, and her measurements in mm, cm or to the tenth.
    let names = ["Maren", "Ferrywoman"];
    let values = [
        "1683", "168.3", "923", "92.3", "757.0", "75.7", "1009", "100.9", "40.7",
    ];
    let quoted = |text: &str, value: &str| {
        let ends = |c: Option<char>| c.is_none_or(|c| !c.is_ascii_digit() && c != '.');
        text.match_indices(value).any(|(at, _)| {
            let before = text[..at].chars().next_back();
            let number = before.is_none_or(|c| !c.is_ascii_digit() && c != '.' && c != '-');
            number && ends(text[at + value.len()..].chars().next())
        })
    };
    for name in names {
        assert!(open.contains(name) && !private.contains(name), "{name}");
    }
    let document = |folder: &str| -> Value {
        let path = place.path().join(folder).join("pattern.json");
        serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap()
    };
    let (known, unknown) = (document("open"), document("private"));
    assert_eq!(unknown["body"], serde_json::json!({}));
    assert_eq!(unknown["pieces"], known["pieces"]);
    let text = unknown.to_string();
    for value in values {
        assert!(!quoted(&text, value), "{value}");
    }
    assert!(quoted(&known.to_string(), "923.0"));
    let files = place.names("private");
    assert!(!files.contains(&"fitting.html".to_owned()), "{files:?}");
}

#[test]
fn what_changed_since_a_document_is_listed() {
    let place = Place::with_job(&JOB.replace("dxf: true\n", ""));
    place.run(&["draft", "job.yaml", "-o", "old"]).done();
    let against = ["check", "job.yaml", "--against", "old/pattern.json"];
    let report = place.run(&against).done();
    assert_eq!(report, "Every measure is as it was.\n");
    place.write(
        "job.yaml",
        JOB.replace(
            "dxf: true\n",
            "alterations:\n  - hip_girth: {amount: 1.2}\n",
        ),
    );
    let report = place.run(&against).done();
    let hip = report.lines().find(|line| line.contains("hip finished"));
    assert!(hip.is_some_and(|line| line.contains("+12 mm")), "{report}");
    assert!(!report.contains("bust finished"), "{report}");
    let message = place
        .run(&["check", "job.yaml", "--against", "job.yaml"])
        .failed(2);
    assert!(message.contains("job.yaml"), "{message}");
}

/// The lines for a table on standard input.
fn lines(place: &Place, table: &str) -> String {
    let mut command = place.command(&["batch", "job.yaml", "-"]);
    let pipes = command.stdin(Stdio::piped()).stdout(Stdio::piped());
    let mut running = pipes.stderr(Stdio::inherit()).spawn().unwrap();
    running
        .stdin
        .take()
        .unwrap()
        .write_all(table.as_bytes())
        .unwrap();
    let done = running.wait_with_output().unwrap();
    assert!(done.status.success());
    String::from_utf8(done.stdout).unwrap()
}

#[test]
fn rows_from_standard_input_give_the_same_lines_in_any_pieces() {
    let place = Place::with_job("title: Skirt\nblock: skirt\n");
    let head = "id,height,bust_girth,waist_girth,hip_girth\n";
    let row = |n: u32| {
        format!(
            "w{n},{},920,{},1000\n",
            1600 + n,
            if n % 7 == 3 { 90 } else { 760 }
        )
    };
    let rows: Vec<String> = (0..30).map(row).collect();
    place.write("people.csv", format!("{head}{}", rows.concat()));
    place
        .run(&["batch", "job.yaml", "people.csv", "-o", "out"])
        .done();
    let whole = std::fs::read_to_string(place.path().join("out/results.jsonl")).unwrap();
    let parts = rows
        .chunks(11)
        .map(|rows| lines(&place, &format!("{head}{}", rows.concat())));
    assert_eq!(parts.collect::<Vec<_>>().concat(), whole);
    // As an engine spreads them.
    let version = Command::new("parallel").arg("--version").output();
    if !version.is_ok_and(|out| String::from_utf8_lossy(&out.stdout).contains("GNU parallel")) {
        return skip("GNU parallel is not installed");
    }
    let spread = Command::new("parallel")
        .args([
            "--will-cite",
            "--pipepart",
            "-a",
            "people.csv",
            "--header",
            ":",
            "-k",
            "--block",
            "300",
        ])
        .arg(format!(
            "{} batch job.yaml -",
            env!("CARGO_BIN_EXE_blockwright")
        ))
        .current_dir(place.path())
        .output()
        .unwrap();
    assert_eq!(String::from_utf8(spread.stdout).unwrap(), whole);
}

#[test]
fn a_batch_without_a_folder_needs_standard_input() {
    let place = Place::with_job("title: Skirt\nblock: skirt\n");
    place.write("people.csv", "id,height,bust_girth,waist_girth,hip_girth\n");
    let message = place.run(&["batch", "job.yaml", "people.csv"]).failed(2);
    assert!(message.contains("`-o DIR`"), "{message}");
}

#[test]
fn charts_of_a_range_are_in_centimetres_and_inches() {
    let place = Place::with_job("title: Dress\nblock: dress\nsleeve: long\nease: {bust: 3 in}\n");
    place.write("table.yaml", TABLE);
    place
        .run(&["grade", "job.yaml", "table.yaml", "-o", "out"])
        .done();
    let read = |name: &str| std::fs::read_to_string(place.path().join("out").join(name)).unwrap();
    let chart = read("size-chart.csv");
    for line in [
        "chart,measure,unit,8,10",
        "Body measurements,bust girth,in,34.00,36.00",
        "Body measurements,bust girth,cm,86.36,91.44",
        // The body and three inches.
        "Finished measurements,bust,in,37.00,39.00",
    ] {
        assert!(chart.lines().any(|found| found == line), "{line}\n{chart}");
    }
    assert!(
        chart.contains("hem, all round") && chart.contains("sleeve wrist"),
        "{chart}"
    );
    let page = read("size-chart.html");
    roxmltree::Document::parse(
        &page
            .replace("<!doctype html>", "")
            .replace("<meta charset=\"utf-8\">", ""),
    )
    .unwrap();
    assert!(page.contains("<caption>Body measurements, inches</caption>"));
    assert!(page.contains("<td>37</td><td>39</td>"), "{page}");
    // And the table of increments speaks the unit of the table.
    let head = read("increments.csv").lines().next().unwrap().to_owned();
    assert_eq!(head, "piece,measure (in),8,10,8 to 10");
}

#[test]
fn several_garments_are_laid_on_one_cloth() {
    let place = Place::with_job("title: Chorus skirts\nblock: skirt\nallowance: 5/8 in\n");
    place.write("table.yaml", TABLE);
    let lay = |more: &[&str]| {
        let args = [
            "lay",
            "job.yaml",
            "--table",
            "table.yaml",
            "--width",
            "60in",
            "--seed",
            "1",
        ];
        let args = [&args[..], &["--rounds", "60", "-o", "out", "--force"], more].concat();
        place.run(&args)
    };
    let report = lay(&["--size", "8=2", "--size", "10"]).done();
    assert!(
        report.contains(" yd and what the cloth shrinks by"),
        "{report}"
    );
    let text = std::fs::read_to_string(place.path().join("out/lay.json")).unwrap();
    let document: Value = serde_json::from_str(&text).unwrap();
    let pieces = document["stretches"][0]["pieces"].as_array().unwrap();
    let count = |name: &str| pieces.iter().filter(|piece| piece["name"] == name).count();
    assert_eq!(
        (count("8 back"), count("8 front"), count("10 back")),
        (2, 2, 1)
    );
    let message = lay(&["--size", "9"]).failed(2);
    assert!(message.contains("no size `9`"), "{message}");
    let message = lay(&["--size", "8=none"]).failed(2);
    assert!(message.contains("number of copies"), "{message}");
    // Each once, where none is named.
    lay(&[]).done();
}
