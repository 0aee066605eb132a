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

/// What stands on a drawing, line after line.
fn words_of(picture: &str) -> String {
    let texts = picture.split("</text>").filter_map(|t| t.rsplit_once('>'));
    texts.map(|(_, words)| words).collect::<Vec<_>>().join(" ")
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
    // In the unit of her set, as everything is that she reads.
    let words = words_of(&picture);
    let said = "seam allowance 1.5 cm, neckline 1 cm, hem 3.81 cm included";
    assert!(words.contains(said), "{words}");
    assert!(!picture.contains("add seam allowance"));
    assert!(report.contains("Seam allowance is included"), "{report}");
    assert!(!report.contains("allowance_unused"));
}

#[test]
fn the_usual_widths_have_a_name() {
    let (_, _, picture) = made("allowance: usual\n");
    let words = words_of(&picture);
    let said =
        "seam allowance 1.5 cm, neckline 1 cm, armscye 1 cm, hem 4 cm, sleeve cap 1 cm included";
    assert!(
        words.contains(said),
        "the places stand in the order of the piece: {words}"
    );
}

#[test]
fn a_place_that_is_not_cut_is_reported() {
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
