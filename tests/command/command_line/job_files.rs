//! Every way a job file can be wrong, told with its place.

use serde_json::Value;

use crate::support::command::{BODY, Place, job};

/// The problems of a job file, which is wrong.
fn message(text: &str) -> String {
    Place::with_job(text).run(&["check", "job.yaml"]).failed(2)
}

#[test]
fn each_problem_is_reported_at_its_place_with_a_cure() {
    let skirt = job("skirt");
    let cases: [(String, &str); 36] = [
        (
            format!("{skirt}date: 2026-02-29\n"),
            "job.yaml:4:7: date: there is no day 2026-02-29",
        ),
        (
            format!("{skirt}date: ''\n"),
            "job.yaml:4:7: date: the date is empty",
        ),
        (
            format!("{skirt}size: {}\n", "4".repeat(41)),
            "job.yaml:4:7: size: the size is longer than 40 characters",
        ),
        (
            "block: skirt\nbody: a\n".into(),
            "job.yaml:1:1: `title` is missing; write `title:`",
        ),
        (
            "title: T\nbody: a\n".into(),
            "job.yaml:1:1: `block` is missing; write `block: bodice`",
        ),
        (
            "title: T\nblock: skirt\n".into(),
            "job.yaml:1:1: `body` is missing; write `body:`",
        ),
        (
            "- title\n".into(),
            "job.yaml:1:1: a list stands here; write a mapping with",
        ),
        (
            format!("{skirt}eese: close\n"),
            "job.yaml:4:1: `eese` is not known here; did you mean `ease`?",
        ),
        (
            format!("{skirt}colour: red\n"),
            "job.yaml:4:1: `colour` is not known here; known are `title`",
        ),
        (
            skirt.replace("A block", "[a]"),
            "job.yaml:1:8: title: a list stands here; write a text",
        ),
        (
            skirt.replace("A block", "''"),
            "job.yaml:1:8: title: the title is empty",
        ),
        (
            skirt.replace("A block", &"x".repeat(121)),
            "job.yaml:1:8: title: the title is longer than 120",
        ),
        (
            skirt.replace("block: skirt", "block: skrit"),
            "job.yaml:2:8: block: `skrit` is no block; did you mean `skirt`?",
        ),
        (
            skirt.replace("block: skirt", "block: 7"),
            "job.yaml:2:8: block: a number stands here",
        ),
        (
            skirt.replace("block: skirt", "block: [skirt, skirt]"),
            "job.yaml:2:8: block: skirt, skirt do not join",
        ),
        (
            skirt.replace("block: skirt", "block: []"),
            "job.yaml:2:8: block: the list of blocks is empty",
        ),
        (
            skirt.replace("block: skirt", "block: dres"),
            "job.yaml:2:8: block: `dres` is no block; did you mean `dress`?",
        ),
        (
            format!("{skirt}sleeve: lng\n"),
            "job.yaml:4:9: sleeve: `lng` is no sleeve; did you mean `long`?",
        ),
        (
            format!("{skirt}alterations:\n  - chest: 20\n"),
            "job.yaml:5:5: alterations: `chest` is no alteration; ",
        ),
        (
            format!("{skirt}allowance: 15 ells\n"),
            "job.yaml:4:12: allowance: `ells` in `15 ells` is not a known unit",
        ),
        (
            format!("{skirt}allowance: [15]\n"),
            "job.yaml:4:12: allowance: a list stands here; write a length such as `15`",
        ),
        (
            format!("{skirt}allowance: -1\n"),
            "job.yaml:4:12: allowance: -1 mm is out of reach; write 0 to 100 mm",
        ),
        (
            format!("{skirt}allowance: {{hem: 5 in}}\n"),
            "allowance.hem: 5 in is out of reach; write 0 to 3 7/8 in",
        ),
        (
            format!("{skirt}allowance: {{hems: 40}}\n"),
            "job.yaml:4:13: allowance: `hems` is not known here; did you mean `hem`?",
        ),
        (
            format!("{skirt}allowance: {{default: .nan}}\n"),
            "allowance.default: the value is not a finite number",
        ),
        (
            format!("{skirt}ease: tight\n"),
            "job.yaml:4:7: ease: `tight` is no fit; write one of",
        ),
        (
            format!("{skirt}ease: {{hips: 40}}\n"),
            "job.yaml:4:8: ease: `hips` is not known here; did you mean `hip`?",
        ),
        (
            format!("{skirt}ease: {{hip: 4 ells}}\n"),
            "job.yaml:4:13: ease.hip: `ells` in `4 ells` is not a known unit",
        ),
        (
            format!("{skirt}ease: {{hip: -10}}\n"),
            "ease.hip: -10 mm is out of reach; write 0 to 400 mm",
        ),
        (
            format!("{skirt}ease: {{hip: .nan}}\n"),
            "ease.hip: the value is not a finite number",
        ),
        (
            format!("{skirt}length: 1e999\n"),
            "length: the value is larger than 100000 mm",
        ),
        (
            format!("{skirt}print: {{paper: foolscap}}\n"),
            "job.yaml:4:16: print.paper: `foolscap` is no paper; write one of `a4`",
        ),
        (
            format!("{skirt}print: {{paper: rol-914}}\n"),
            "print.paper: `rol-914` is no paper; did you mean `roll-914`? write one of `a4`, \
             `letter`, `a3`, `legal`, `a0`, `roll-594`, `roll-610`, `roll-841`, `roll-914`, \
             `roll-1067`",
        ),
        (
            format!("{skirt}print: {{paper: roll-610, orientation: landscape}}\n"),
            "print.orientation: a roll is not turned, and the paper is roll-610; leave",
        ),
        (
            format!("{skirt}print: {{margin: 5}}\n"),
            "print.margin: 5 mm is out of reach; write 12 to 50 mm",
        ),
        (
            format!("{skirt}print: a4\n"),
            "job.yaml:4:8: print: a text stands here; write a mapping",
        ),
    ];
    for (text, expected) in cases {
        let message = message(&text);
        assert!(message.contains(expected), "{text}\n{message}\n{expected}");
        assert_eq!(message.matches("error: ").count(), 1, "{message}");
        assert!(
            message.contains("\n    | ") && message.contains('^'),
            "{message}"
        );
    }
}

#[test]
fn all_problems_of_a_file_are_reported_at_once() {
    let message = message(
        "title: ''\n\
         block: dres\n\
         body:\n  unit: ells\n  measurements: {bust_grith: 92}\n\
         ease: {fit: snug, bust: 2 ells}\n\
         sleeve: shrt\n\
         print: {paper: b4, overlap: 70}\n",
    );
    let heads: Vec<&str> = message
        .lines()
        .filter(|line| line.starts_with("error: "))
        .collect();
    assert_eq!(heads.len(), 9, "{message}");
    let places: Vec<Vec<u32>> = heads
        .iter()
        .map(|head| {
            head.split(':')
                .skip(2)
                .take(2)
                .map(|n| n.parse().unwrap())
                .collect()
        })
        .collect();
    assert!(places.is_sorted(), "{places:?}");
    assert!(
        message.contains("body.measurements: there is no measurement `bust_grith`; did you mean")
    );
    assert!(message.contains("  5 |   measurements: {bust_grith: 92}\n    |                  ^"));
}

#[test]
fn problems_for_machines_are_json() {
    let place = Place::with_job(&format!("{}colour: red\n", job("skirt")));
    for args in [
        &["check", "job.yaml", "--json"],
        &["--json", "check", "job.yaml"],
    ] {
        let message: Value = serde_json::from_str(&place.run(args).failed(2)).unwrap();
        assert_eq!(message["status"], "wrong");
        assert_eq!(message["exit"], 2);
        let error = &message["errors"][0];
        assert_eq!(error["code"], "unknown_key");
        assert_eq!(error["file"], "job.yaml");
        assert_eq!((&error["line"], &error["column"]), (&4.into(), &1.into()));
        assert_eq!(error["source"], "colour: red");
    }
    let message: Value = serde_json::from_str(&place.run(&["chekc", "--json"]).failed(2)).unwrap();
    assert_eq!(message["errors"][0]["code"], "usage");
}

#[test]
fn a_set_file_is_reported_under_its_own_name() {
    let place = Place::with_job("title: T\nblock: skirt\nbody: sets/ada.yaml\n");
    let message = place.run(&["check", "job.yaml"]).failed(2);
    assert!(
        message.contains("job.yaml:3:7: body: the file cannot be read"),
        "{message}"
    );
    assert!(message.contains("looked for sets/ada.yaml"), "{message}");
    place.write(
        "sets/ada.yaml",
        "name: Ada\nunit: cm\nmeasurements:\n  hight: 168\n",
    );
    let message = place.run(&["check", "job.yaml"]).failed(2);
    let typo =
        "sets/ada.yaml:4:3: measurements: there is no measurement `hight`; did you mean `height`?";
    assert!(message.contains(typo), "{message}");
    assert!(message.contains("bust_girth is missing"), "{message}");
}

#[test]
fn a_refused_measurement_or_pattern_ends_with_one() {
    let short = BODY.replace("bust_girth: 92", "bust_girth: 9.2");
    let place = Place::with_job(&format!("title: T\nblock: skirt\nbody: {short}\n"));
    let message = place.run(&["draft", "job.yaml", "-o", "out"]).failed(1);
    assert!(
        message.contains("bust_girth 9.2 cm is impossible: it lies between"),
        "{message}"
    );
    // Beside a wrong key it is a wrong file.
    place.write(
        "both.yaml",
        format!("title: T\nblock: skirt\nbody: {short}\nfoo: 1\n"),
    );
    place.run(&["check", "both.yaml"]).failed(2);
    // Each value is possible, the bodice is not.
    let odd = BODY.replace(
        "hip_girth: 100",
        "hip_girth: 100, scye_depth: 30, back_waist_length: 34",
    );
    place.write(
        "odd.yaml",
        format!("title: T\nblock: bodice\nbody: {odd}\n"),
    );
    let message = place.run(&["draft", "odd.yaml", "-o", "out"]).failed(1);
    assert!(
        message.contains("odd.yaml: the block cannot be drafted for this body"),
        "{message}"
    );
    let message = place.run(&["check", "odd.yaml", "--json"]).failed(1);
    let message: Value = serde_json::from_str(&message).unwrap();
    assert_eq!(message["status"], "refused");
    assert!(
        message["errors"][0]["code"]
            .as_str()
            .unwrap()
            .ends_with("out_of_reach")
    );
    assert_eq!(place.names("."), ["both.yaml", "job.yaml", "odd.yaml"]);
}

#[test]
fn pages_that_are_too_small_are_a_wrong_job() {
    let text = format!(
        "{}print: {{paper: letter, margin: 50, overlap: 50}}\n",
        job("skirt")
    );
    let message = message(&text);
    assert!(
        message.contains("cannot be printed as asked under `print`"),
        "{message}"
    );
}

#[test]
fn a_wrong_command_ends_with_two() {
    let place = Place::with_job(&job("skirt"));
    for args in [
        &["draft", "job.yaml"][..],
        &["draft", "job.yaml", "-o", "out", "--paper", "b4"],
        &["measurements", "--unit", "ell"],
        &["check"],
        &["grade", "job.yaml"],
        &[],
    ] {
        let ran = place.run(args);
        assert_eq!(ran.code, 2, "{args:?}");
        assert!(!ran.err.is_empty());
    }
    assert!(place.run(&["--help"]).done().contains("draft"));
    assert!(place.run(&["--version"]).done().starts_with("blockwright "));
}
