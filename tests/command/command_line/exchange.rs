//! `--dxf` and the key `dxf`, `--demonstration` and its key.

use std::fs;

use crate::support::command::{Place, job};

const TABLE: &str = "name: A range\nunit: cm\ncommon: {height: 168}\nsizes:\n  \
    '38': {bust_girth: 88, waist_girth: 72, hip_girth: 96}\n  \
    '40': {bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";

#[test]
fn pieces_are_written_as_dxf_when_asked_either_way() {
    let asked = |key: &str, more: &[&str]| {
        let place = Place::with_job(&format!("{}{key}", job("skirt")));
        let mut args = vec!["draft", "job.yaml", "-o", "out"];
        args.extend(more);
        let message = place.run(&args).done();
        let file = fs::read(place.path().join("out/pattern.dxf")).ok();
        assert_eq!(
            message.contains(" pattern.dxf,"),
            file.is_some(),
            "{message}"
        );
        // It is an earlier result like any other.
        args.push("--force");
        place.run(&args).done();
        file
    };
    assert_eq!(asked("", &[]), None);
    assert_eq!(asked("dxf: false\n", &[]), None);
    assert_eq!(asked("dxf:\n", &[]), None);
    let by_flag = asked("", &["--dxf"]).unwrap();
    assert!(by_flag.starts_with(b"  0\r\nSECTION\r\n"));
    assert_eq!(asked("dxf: true\n", &[]).unwrap(), by_flag);
    assert_eq!(asked("dxf: false\n", &["--dxf"]).unwrap(), by_flag);
}

#[test]
fn alterations_are_shown_on_paper_when_asked_either_way() {
    let asked = |key: &str, more: &[&str]| {
        let altered = "alterations:\n  - hip_girth: {amount: 12}\n";
        let place = Place::with_job(&format!("{}{altered}{key}", job("skirt")));
        let mut args = vec!["draft", "job.yaml", "-o", "out"];
        args.extend(more);
        place.run(&args).done();
        let file = fs::read(place.path().join("out/demonstration.pdf")).ok();
        args.push("--force");
        place.run(&args).done();
        file
    };
    assert_eq!(asked("", &[]), None);
    let by_flag = asked("", &["--demonstration"]).unwrap();
    assert!(by_flag.starts_with(b"%PDF-"));
    assert_eq!(asked("demonstration: true\n", &[]).unwrap(), by_flag);
}

#[test]
fn so_are_the_pieces_of_a_range() {
    let asked = |key: &str, more: &[&str]| {
        let place = Place::with_job(&format!("title: A skirt\nblock: skirt\n{key}"));
        place.write("table.yaml", TABLE);
        let mut args = vec!["grade", "job.yaml", "table.yaml", "-o", "out"];
        args.extend(more);
        place.run(&args).done();
        let file = fs::read_to_string(place.path().join("out/range.dxf")).ok();
        args.push("--force");
        place.run(&args).done();
        file
    };
    assert_eq!(asked("", &[]), None);
    let by_flag = asked("", &["--dxf"]).unwrap();
    assert!(by_flag.contains("BACK-40") && by_flag.contains("Size: 38"));
    assert_eq!(asked("dxf: true\n", &[]), Some(by_flag));
}

#[test]
fn anything_but_yes_or_no_is_reported() {
    let place = Place::with_job(&format!("{}dxf: r13\n", job("skirt")));
    let message = place.run(&["draft", "job.yaml", "-o", "out"]).failed(2);
    assert!(message.contains("job.yaml:4:6"), "{message}");
    assert!(
        message.contains("dxf") && message.contains("`true` or `false`"),
        "{message}"
    );
}
