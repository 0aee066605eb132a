//! Jobs and size tables that are well-formed and ask for what cannot be.

use std::time::{Duration, Instant};

use super::files::{TABLE, place};
use super::guard::{guarded, refused};
use crate::support::command::job;

#[test]
fn numbers_and_units_that_cannot_be_are_reported_at_their_line() {
    let place = place();
    for value in [
        ".nan",
        "-.inf",
        ".inf",
        "1e999",
        "-92",
        "0",
        "1e308",
        "99999999999999999999999",
        "92 ells",
        "92 kg",
        "0x5c cm",
        "92 cm cm",
        "[92]",
        "{cm: 92}",
        "~",
        "true",
        "\"\"",
        "\"9\\0 2\"",
    ] {
        let body = format!(
            "{{unit: cm, measurements: {{height: 168, bust_girth: {value}, waist_girth: 76, \
             hip_girth: 100}}}}"
        );
        place.write(
            "bad.yaml",
            format!("title: T\nblock: skirt\nbody: {body}\n"),
        );
        for args in [
            &["draft", "bad.yaml", "-o", "out"][..],
            &[
                "lay", "bad.yaml", "--width", "1m", "--seed", "1", "-o", "out",
            ],
        ] {
            let message = refused(&place, args);
            assert!(
                message.contains("bad.yaml:3:") && message.contains("bust_girth"),
                "{message}"
            );
        }
        let table = TABLE.replace("bust_girth: 92", &format!("bust_girth: {value}"));
        place.write("bad.yaml", table);
        let message = refused(&place, &["grade", "job.yaml", "bad.yaml", "-o", "out"]);
        assert!(
            message.contains("bad.yaml:6:") && message.contains("bust_girth"),
            "{message}"
        );
    }
}

#[test]
fn settings_that_cannot_be_are_reported_at_their_line() {
    let place = place();
    for setting in [
        "length: .nan",
        "length: 1e300",
        "length: -5 cm",
        "cap_ease: .inf",
        "ease: {hip: 1e999}",
        "ease: {hip: .nan}",
        "allowance: .inf",
        "allowance: -1",
        "allowance: {default: 1e300}",
        "print: {margin: 105}",
        "print: {margin: 1e300}",
        "print: {margin: .nan}",
        "print: {overlap: 0}",
        "print: {overlap: 300}",
        "print: {paper: roll}",
        "print: {paper: 0x0}",
        "alterations: [{waist_girth: {amount: .nan}}]",
        "alterations: [{waist_girth: {amount: 1e300}}]",
        "alterations: [{waist_girth: {amount: -1e300}}]",
        "alterations: [{seat: {to: 1e300}}]",
        "alterations: [{seat: {to: -1}}]",
        "alterations: [{seat: {amount: 1e12}}]",
        "alterations: [{back_length_reduction: {amount: 25, amount: 26}}]",
    ] {
        place.write("bad.yaml", format!("{}{setting}\n", job("skirt")));
        let message = refused(&place, &["draft", "bad.yaml", "-o", "out"]);
        let of_file = message.starts_with("error: bad.yaml:4:");
        // What only the pattern can refuse has no line, and names the step.
        let of_step = message.starts_with("error: bad.yaml: ") && message.contains("step 1");
        assert!(of_file || of_step, "{setting}: {message}");
    }
}

/// A job with so many small alterations that all can be made.
fn with_alterations(count: usize) -> String {
    let one = "  - waist_girth: {amount: 0.1}\n  - waist_girth: {amount: -0.1}\n";
    format!("{}alterations:\n{}", job("skirt"), one.repeat(count / 2))
}

#[test]
fn a_hundred_alterations_are_made_and_ten_thousand_refused() {
    let place = place();
    place.write("many.yaml", with_alterations(100));
    guarded(&place, &["check", "many.yaml"]).done();
    for count in [102, 10_000] {
        place.write("many.yaml", with_alterations(count));
        let message = refused(&place, &["draft", "many.yaml", "-o", "out"]);
        assert!(
            message.contains(&format!("{count} alterations")) && message.contains("100"),
            "{message}"
        );
    }
}

#[test]
fn names_with_parts_of_paths_name_no_file() {
    let place = place();
    for name in [
        "../../up",
        "/etc/up",
        "a/../../up",
        "..",
        "C:\\up",
        "-o",
        "up\\..\\up",
    ] {
        let text = job("skirt").replace("A block", &format!("'{name}'"));
        let text = format!("{text}size: '{name}'\ndate: '{name}'\ndxf: true\n");
        place.write("job.yaml", text);
        guarded(&place, &["draft", "job.yaml", "-o", "out", "--force"]).done();
        let lay = [
            "lay", "job.yaml", "--width", "140cm", "--rounds", "1", "-o", "laid",
        ];
        guarded(&place, &[&lay[..], &["--force"]].concat()).done();
        assert_eq!(place.names("out").len(), 6);
        assert_eq!(place.names("laid"), ["lay.json", "lay.pdf", "lay.svg"]);
        place.write("bad.yaml", TABLE.replace("'40'", &format!("'{name}'")));
        let ran = guarded(&place, &["grade", "job.yaml", "bad.yaml", "-o", "range"]);
        if ran.code == 0 {
            // Its strokes became hyphens.
            let names = place.names("range");
            assert_eq!(names.len(), 10, "{names:?}");
            std::fs::remove_dir_all(place.path().join("range")).unwrap();
        }
        let names = [
            "bad.yaml",
            "job.yaml",
            "laid",
            "out",
            "people.csv",
            "table.yaml",
        ];
        assert_eq!(place.names("."), names, "{name}");
    }
}

#[test]
fn tables_of_too_much_are_refused() {
    let place = place();
    let sizes = |count: usize| -> String {
        let one = |n| format!("  s{n}: {{bust_girth: 88, waist_girth: 72, hip_girth: 96}}\n");
        (0..count).map(one).collect()
    };
    for (count, expected) in [(1_001, "at most 1000 are taken"), (37, "at most 36 can")] {
        let head = "name: T\nunit: cm\ncommon: {height: 168}\nsizes:\n";
        place.write("bad.yaml", format!("{head}{}", sizes(count)));
        let message = refused(&place, &["grade", "job.yaml", "bad.yaml", "-o", "out"]);
        assert!(
            message.contains(&format!("{count} sizes")) && message.contains(expected),
            "{message}"
        );
    }
    let labels: Vec<String> = (0..10_000).map(|n| n.to_string()).collect();
    place.write(
        "bad.yaml",
        format!(
            "name: T\nunit: cm\nbase: {{label: 0, measurements: {{height: 168, bust_girth: 88, \
             waist_girth: 72, hip_girth: 96}}}}\nsteps: {{labels: [{}], per_size: {{bust_girth: 0.001}}}}\n",
            labels.join(", ")
        ),
    );
    let message = refused(&place, &["grade", "job.yaml", "bad.yaml", "-o", "out"]);
    assert!(message.contains("at most a thousand labels"), "{message}");
}

#[test]
fn a_file_of_too_many_parts_is_refused_before_it_is_looked_at() {
    let place = place();
    let keys: String = (0..110_000).map(|n| format!("k{n:x}: 1\n")).collect();
    place.write("bad.yaml", keys);
    let begun = Instant::now();
    let message = refused(&place, &["check", "bad.yaml"]);
    assert!(message.contains("too large or too complex"), "{message}");
    // Some 15 s when every name was compared with those that are known.
    assert!(
        begun.elapsed() < Duration::from_secs(10),
        "{:?}",
        begun.elapsed()
    );
}

#[test]
fn paper_that_its_margins_eat_is_refused_with_the_least() {
    let place = place();
    for (paper, done) in [
        ("a4", false),
        ("letter", false),
        ("legal", false),
        ("a3", true),
        ("roll-594", true),
    ] {
        let print = format!("print: {{paper: {paper}, margin: 50, overlap: 50}}\n");
        place.write("bad.yaml", job("skirt") + &print);
        let args = ["draft", "bad.yaml", "-o", paper];
        if done {
            guarded(&place, &args).done();
        } else {
            let message = refused(&place, &args);
            assert!(message.contains("it must be at least"), "{message}");
        }
    }
}
