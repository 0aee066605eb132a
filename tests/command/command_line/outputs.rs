//! Outputs that are gone or full.

use std::fs::OpenOptions;
use std::process::Stdio;

use crate::support::command::{Place, Ran, job, skip};

#[test]
fn a_reader_that_leaves_early_is_no_failure() {
    let place = Place::with_job(&job("[bodice, skirt]"));
    for args in [&["measurements"][..], &["check", "job.yaml"], &["--help"]] {
        let mut child = place
            .command(args)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        drop(child.stdout.take());
        Ran::from(&child.wait_with_output().unwrap()).done();
    }
    // Nor is it worse when nobody listens to problems.
    let mut child = place
        .command(&["check", "missing.yaml"])
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stderr.take());
    assert_eq!(child.wait().unwrap().code(), Some(2));
}

#[test]
fn a_full_output_is_reported() {
    let Ok(full) = OpenOptions::new().write(true).open("/dev/full") else {
        return skip("there is no /dev/full");
    };
    let place = Place::with_job(&job("skirt"));
    let output = place
        .command(&["check", "job.yaml"])
        .stdout(full.try_clone().unwrap())
        .output()
        .unwrap();
    let message = Ran::from(&output).failed(2);
    assert!(
        message.contains("the report cannot be written to standard output"),
        "{message}"
    );
    let output = place
        .command(&["check", "missing.yaml"])
        .stderr(full)
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
}
