//! Allowances asked for in a job: drawn, written and told.

use std::fs;

use serde_json::Value;

use crate::support::command::{Place, job};

fn made(extra: &str) -> (String, Value, String) {
    let place = Place::with_job(&format!(
        "{}sleeve: short\n{extra}",
        job("bodice and skirt")
    ));
    let report = place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let read = |name: &str| fs::read_to_string(place.path().join("out").join(name)).unwrap();
    let document = serde_json::from_str(&read("pattern.json")).unwrap();
    (report, document, read("pattern.svg"))
}

#[test]
fn without_the_key_only_stitching_lines_are_drawn() {
    for extra in ["", "allowance: none\n", "allowance: {}\n"] {
        let (report, document, picture) = made(extra);
        for piece in document["pieces"].as_array().unwrap() {
            assert!(piece["cut_line"].is_null());
        }
        assert!(picture.contains("stitching line shown: add seam allowance"));
        assert!(!picture.contains("cutting lines"));
        assert!(report.contains("without seam allowance"), "{report}");
    }
}

#[test]
fn with_it_every_piece_has_a_cut_line() {
    let (report, document, picture) =
        made("allowance: {default: 15, neckline: 1 cm, hem: 1 1/2 in}\n");
    for piece in document["pieces"].as_array().unwrap() {
        let path = piece["cut_line"].as_str().unwrap();
        assert!(path.starts_with('M') && path.ends_with('Z'), "{path}");
        assert_eq!(path.matches('M').count(), 1);
    }
    assert!(picture.contains("cutting lines"));
    assert!(picture.contains("seam allowance 15, neckline 10,"));
    assert!(picture.contains("hem 38.1 mm included"));
    assert!(!picture.contains("add seam allowance"));
    assert!(report.contains("Seam allowance is included"), "{report}");
    assert!(!report.contains("allowance_unused"));
}

#[test]
fn the_usual_widths_have_a_name() {
    let (_, _, picture) = made("allowance: usual\n");
    assert!(picture.contains("seam allowance 15, neckline 10,"));
    assert!(
        picture.contains("hem 40,"),
        "the places stand in the order of the piece"
    );
}

#[test]
fn a_place_that_is_not_cut_is_told() {
    let (_, document, _) = made("allowance: {default: 15, centre_back: 20}\n");
    let warnings = document["warnings"].as_array().unwrap();
    let unused = warnings.iter().find(|w| w["code"] == "allowance_unused");
    assert!(
        unused.unwrap()["text"]
            .as_str()
            .unwrap()
            .contains("centre_back")
    );
}
