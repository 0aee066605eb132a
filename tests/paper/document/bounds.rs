//! Documents made to exhaust: each is refused within a moment.

use super::garments::rich;
use blockwright::render::json::{DocumentError, PatternDocument, ShapeFault};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// Reads within a few seconds, in a build without optimisation on a busy machine.
fn quickly(text: &[u8]) -> DocumentError {
    let start = Instant::now();
    let error = PatternDocument::read_proved(text).unwrap_err();
    assert!(start.elapsed() < Duration::from_secs(20), "{error}");
    error
}

#[test]
fn a_hundred_megabytes_are_not_looked_at() {
    let mut text = rich().text().into_bytes();
    text.resize(100_000_000, b' ');
    assert!(matches!(quickly(&text), DocumentError::TooLong { .. }));
}

#[test]
fn nesting_has_an_end() {
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let text = open.repeat(500_000) + "1" + &close.repeat(500_000);
        let error = quickly(text.as_bytes());
        assert!(matches!(
            error,
            DocumentError::NotJson { .. } | DocumentError::TooLong { .. }
        ));
    }
}

#[test]
fn lists_and_paths_have_a_most() {
    let value: Value = serde_json::from_str(&rich().text()).unwrap();
    let with = |change: &dyn Fn(&mut Value)| {
        let mut changed = value.clone();
        change(&mut changed);
        quickly(changed.to_string().as_bytes())
    };
    let many = |d: &mut Value| {
        d["warnings"] = (0..100_000).map(|_| json!({})).collect();
    };
    let error = with(&many);
    let too_many = ShapeFault::TooMany {
        found: 100_000,
        most: 1000,
    };
    assert!(matches!(error, DocumentError::Shape { fault, .. } if fault == too_many));
    let long = |d: &mut Value| {
        let path = &mut d["pieces"][0]["edges"][0]["path"];
        let mut text = path.as_str().unwrap().to_owned();
        text.push_str(&"L1 1L2 2".repeat(100_000));
        *path = json!(text);
    };
    let error = with(&long);
    assert!(error.to_string().contains("/pieces"), "{error}");
    // No one edge is too long, but all together are.
    let lines = |d: &mut Value| {
        let line = |n: u32| json!({"name": format!("l{n}"), "path": "M0 0".to_owned() + &"L9 9".repeat(40)});
        d["pieces"][0]["lines"] = (0..900).map(line).collect();
    };
    let error = with(&lines);
    assert!(error.to_string().contains("/pieces"), "{error}");
}
