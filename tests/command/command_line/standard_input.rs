//! Jobs that another program writes to standard input, and the document it gets back.

use std::io::Write as _;
use std::process::Stdio;

use crate::support::command::{BODY, Place, Ran};

fn given(place: &Place, args: &[&str], job: &str) -> Ran {
    let mut child = place
        .command(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // What is too large is not read to its end, so that writing it may fail.
    let sent = child.stdin.take().unwrap().write_all(job.as_bytes());
    assert!(sent.is_ok() || job.len() > 1_000_000, "{sent:?}");
    Ran::from(&child.wait_with_output().unwrap())
}

const DOCUMENT: [&str; 3] = ["check", "-", "--document"];

#[test]
fn the_document_is_that_of_the_folder() {
    let place = Place::new();
    let job =
        format!("title: A block\nblock: dress\nsleeve: long\nallowance: usual\nbody: {BODY}\n");
    let message = given(&place, &DOCUMENT, &job).done();
    place.write("job.yaml", &job);
    place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let written = std::fs::read_to_string(place.path().join("out/pattern.json")).unwrap();
    assert_eq!(message, written);
    // A job in a file has its document too.
    assert_eq!(
        place.run(&["check", "job.yaml", "--document"]).done(),
        written
    );
}

#[test]
fn a_job_may_be_json() {
    let job = r#"{"title": "A", "block": "skirt", "length": "25 1/2 in", "body": {"unit": "cm",
        "measurements": {"height": 168, "bust_girth": 92, "waist_girth": 76, "hip_girth": 100}}}"#;
    let message = given(&Place::new(), &DOCUMENT, job).done();
    let document: serde_json::Value = serde_json::from_str(&message).unwrap();
    assert_eq!(document["format"], "blockwright-pattern");
    assert_eq!(document["body"]["bust_girth"]["value"], 920.0);
    let report = given(&Place::new(), &["check", "-"], job).done();
    assert!(report.starts_with("A\n"), "{report}");
}

#[test]
fn paths_are_meant_from_the_current_folder() {
    let place = Place::new();
    place.write("sets/ada.yaml", BODY);
    let job = "title: A\nblock: skirt\nbody: sets/ada.yaml\n";
    given(&place, &DOCUMENT, job).done();
    let message = given(
        &place,
        &DOCUMENT,
        "title: A\nblock: skirt\nbody: bea.yaml\n",
    )
    .failed(2);
    assert!(message.contains("bea.yaml"), "{message}");
}

#[test]
fn what_is_wrong_goes_to_standard_error() {
    let place = Place::new();
    let job = format!("title: A\nblock: skrit\nbody: {BODY}\n");
    let message = given(&place, &DOCUMENT, &job).failed(2);
    assert!(message.contains("standard input:2:8"), "{message}");
    assert!(message.contains("did you mean `skirt`?"), "{message}");
    let body = BODY.replace("waist_girth: 76", "waist_girth: 7");
    let message = given(
        &place,
        &DOCUMENT,
        &format!("title: A\nblock: skirt\nbody: {body}\n"),
    )
    .failed(1);
    assert!(message.contains("waist_girth"), "{message}");
    let json = ["check", "-", "--document", "--json"];
    let message = given(&place, &json, &job).failed(2);
    let errors: serde_json::Value = serde_json::from_str(&message).unwrap();
    assert_eq!(errors["errors"][0]["code"], "unknown_word");
    given(&place, &DOCUMENT, "").failed(2);
    given(&place, &DOCUMENT, &"a".repeat(1_100_000)).failed(2);
}
