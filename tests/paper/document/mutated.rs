//! Documents mutated at random: read or refused with words, never a panic; whatever is read is
//! written and read again.

use super::garments::rich;
use blockwright::render::json::PatternDocument;
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use serde_json::{Value, json};
use std::cell::Cell;

fn runner(cases: u32) -> TestRunner {
    let config = Config {
        cases,
        failure_persistence: None,
        ..Config::default()
    };
    TestRunner::new_with_rng(config, TestRng::from_seed(RngAlgorithm::ChaCha, &[11; 32]))
}

/// Reads it; what is read must come back the same.
fn is_read(bytes: &[u8]) -> Result<bool, TestCaseError> {
    match PatternDocument::read(bytes) {
        Ok(document) => {
            let text = document.text();
            let again = PatternDocument::read(text.as_bytes());
            prop_assert!(again.is_ok(), "{:?}", again.err());
            let again = again.unwrap();
            prop_assert_eq!(&again.pattern, &document.pattern);
            prop_assert_eq!(again.text(), text);
            Ok(true)
        }
        Err(error) => {
            let said = error.to_string();
            prop_assert!(
                said.len() > 20 && !super::own_words(&said).contains("NaN"),
                "{said}"
            );
            Ok(false)
        }
    }
}

/// The places of all parts of a value, as JSON pointers.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    found.push(at.to_owned());
    match value {
        Value::Array(parts) => {
            for (index, part) in parts.iter().enumerate() {
                places(part, &format!("{at}/{index}"), found);
            }
        }
        Value::Object(entries) => {
            for (key, part) in entries {
                let key = key.replace('~', "~0").replace('/', "~1");
                places(part, &format!("{at}/{key}"), found);
            }
        }
        _ => {}
    }
}

#[test]
fn parts_exchanged_for_others_are_read_or_refused_with_words() {
    let value: Value = serde_json::from_str(&rich().text()).unwrap();
    let mut all = Vec::new();
    places(&value, "", &mut all);
    let odd = prop_oneof![
        Just(json!(null)),
        Just(json!(true)),
        Just(json!("")),
        Just(json!([])),
        Just(json!({})),
        Just(json!("odd")),
        Just(json!(-0.0)),
        Just(json!(1e308)),
        Just(json!(-1e-308)),
        (-2e3..2e3f64).prop_map(|number| json!(number)),
        (0..all.len()).prop_map(|place| json!({ "copy": place })),
    ];
    let cases = (prop::collection::vec((0..all.len(), odd), 1..4),);
    let (read, tried) = (Cell::new(0), Cell::new(0));
    runner(400)
        .run(&cases, |(changes,)| {
            let mut changed = value.clone();
            for (place, odd) in changes {
                let odd = match odd.get("copy").and_then(Value::as_u64) {
                    Some(from) => value.pointer(&all[from as usize]).unwrap().clone(),
                    None => odd,
                };
                if let Some(part) = changed.pointer_mut(&all[place]) {
                    *part = odd;
                }
            }
            tried.set(tried.get() + 1);
            read.set(read.get() + usize::from(is_read(changed.to_string().as_bytes())?));
            Ok(())
        })
        .unwrap();
    eprintln!(
        "mutated documents: {} of {} were read",
        read.get(),
        tried.get()
    );
}

#[test]
fn bytes_exchanged_at_random_are_read_or_refused_with_words() {
    let text = rich().text().into_bytes();
    let change = (0..text.len(), any::<u8>(), 0..3u8);
    runner(400)
        .run(&prop::collection::vec(change, 1..6), |changes| {
            let mut bytes = text.clone();
            for (at, byte, how) in changes {
                let at = at.min(bytes.len() - 1);
                match how {
                    0 => bytes[at] = byte,
                    1 => bytes.insert(at, byte),
                    _ => drop(bytes.remove(at)),
                }
            }
            is_read(&bytes).map(drop)
        })
        .unwrap();
}

#[test]
fn arbitrary_bytes_are_refused() {
    runner(400)
        .run(&prop::collection::vec(any::<u8>(), 0..400), |bytes| {
            prop_assert!(!is_read(&bytes)?);
            Ok(())
        })
        .unwrap();
}
