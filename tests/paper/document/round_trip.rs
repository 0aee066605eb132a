//! Writing, reading, writing again.

use super::garments::{garment, rich};
use blockwright::invariants::{Tolerances, check_all};
use blockwright::render::json::PatternDocument;
use serde_json::Value;

const GARMENTS: u64 = 150;

#[test]
fn every_garment_comes_back_equal_and_is_written_the_same() {
    let (mut made, mut altered, mut one_sided, mut to_cut) = (0, 0, 0, 0);
    for seed in 0..GARMENTS {
        let Some(document) = garment(seed) else {
            continue;
        };
        let text = document.text();
        let again = PatternDocument::read_proved(text.as_bytes())
            .unwrap_or_else(|error| panic!("garment {seed}: {error}"));
        assert_eq!(again.pattern, document.pattern, "garment {seed}");
        assert_eq!(again.cut, document.cut, "garment {seed}");
        assert_eq!(again.title, document.title);
        assert_eq!(again.body, document.body);
        assert!(again.text() == text, "garment {seed}: other bytes");
        let tolerances = Tolerances::altered();
        assert_eq!(
            check_all(&again.pattern, &tolerances),
            check_all(&document.pattern, &tolerances)
        );
        made += 1;
        altered += usize::from(!document.accounts.is_empty());
        one_sided += usize::from(document.pattern.pieces().iter().any(|p| p.side().is_some()));
        to_cut += usize::from(document.cut.is_some());
    }
    eprintln!(
        "documents: {made} garments, {altered} altered, {one_sided} unlike on both sides, {to_cut} with allowance"
    );
    assert!(made > 100 && altered > 50 && one_sided > 10 && to_cut > 30);
}

/// The reader is this library's own; that the numbers are exact is checked by another parser of
/// numbers, that of the standard library.
#[test]
fn every_number_of_a_path_is_the_number_of_the_curve() {
    let document = rich();
    let value: Value = serde_json::from_str(&document.text()).unwrap();
    for (index, piece) in document.pattern.pieces().iter().enumerate() {
        for (place, edge) in piece.outline().edges().iter().enumerate() {
            let path = &value["pieces"][index]["edges"][place]["path"];
            let numbers: Vec<f64> = path
                .as_str()
                .unwrap()
                .split(|c: char| c.is_alphabetic() || c == ' ')
                .filter(|number| !number.is_empty())
                .map(|number| number.parse().unwrap())
                .collect();
            let (first, last) = (edge.curve().start(), edge.curve().end());
            assert_eq!(numbers[..2], [first.x, first.y]);
            assert_eq!(numbers[numbers.len() - 2..], [last.x, last.y]);
        }
    }
}

/// The keys of version 1, by name, with their meaning: others read them.
#[test]
fn the_keys_of_the_first_version_are_still_there() {
    let document = rich();
    let value: Value = serde_json::from_str(&document.text()).unwrap();
    let keys =
        |value: &Value| -> Vec<String> { value.as_object().unwrap().keys().cloned().collect() };
    let has = |value: &Value, wanted: &[&str]| {
        let found = keys(value);
        for key in wanted {
            assert!(found.iter().any(|k| k == key), "{key} in {found:?}");
        }
    };
    let top = "format version units title block body pieces seams girths account warnings";
    has(&value, &top.split(' ').collect::<Vec<_>>());
    assert_eq!(value["units"], "mm");
    let piece = &value["pieces"][0];
    has(
        piece,
        &[
            "name", "cut", "edges", "darts", "grain", "notches", "lines", "cut_line",
        ],
    );
    has(&piece["edges"][0], &["name", "role", "path"]);
    has(&piece["darts"][0], &["name", "edge", "legs", "apexes"]);
    has(&piece["notches"][0], &["name", "edge", "at"]);
    has(&piece["lines"][0], &["name", "path"]);
    has(&value["seams"][0], &["name", "a", "b", "ease", "ease_on"]);
    has(&value["seams"][0]["a"][0], &["piece", "edge"]);
    has(&value["girths"]["bust"], &["body", "ease", "finished"]);
    has(
        &value["account"][0],
        &["alteration", "amount", "changes", "kept"],
    );
    has(
        &value["account"][0]["changes"][0],
        &["what", "before", "after"],
    );
    let cuts = value["pieces"].as_array().unwrap().iter();
    let cuts: Vec<&str> = cuts.map(|piece| piece["cut"].as_str().unwrap()).collect();
    for cut in cuts {
        assert!(["fold", "pair", "single"].contains(&cut));
    }
    assert!(piece["cut_line"].as_str().unwrap().ends_with('Z'));
}
