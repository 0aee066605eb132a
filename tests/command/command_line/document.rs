//! The pattern document has the keys that others rely on.

use std::fs;

use serde_json::Value;

use crate::support::command::{Place, job};

/// The document of a job, as written.
pub(crate) fn document(job: &str) -> Value {
    let place = Place::with_job(job);
    place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let text = fs::read_to_string(place.path().join("out/pattern.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

fn keys(value: &Value) -> Vec<&str> {
    let mut keys: Vec<&str> = value
        .as_object()
        .unwrap()
        .keys()
        .map(String::as_str)
        .collect();
    keys.sort_unstable();
    keys
}

#[test]
fn every_part_has_its_keys() {
    let document = document(&job("[bodice, skirt]"));
    assert_eq!(
        keys(&document),
        [
            "account",
            "allowance",
            "block",
            "body",
            "format",
            "girths",
            "pieces",
            "seams",
            "title",
            "units",
            "version",
            "warnings"
        ]
    );
    assert_eq!(document["format"], "blockwright-pattern");
    assert_eq!(document["version"], 2);
    assert_eq!(document["units"], "mm");
    assert_eq!(document["title"], "A block");
    assert_eq!(document["body"]["bust_girth"]["value"], 920.0);
    assert_eq!(document["body"]["bust_girth"]["source"], "taken");
    assert!(document["body"]["back_width"]["spread"].is_f64());
    let pieces = document["pieces"].as_array().unwrap();
    assert_eq!(pieces.len(), 4);
    for piece in pieces {
        assert_eq!(
            keys(piece),
            [
                "cut",
                "cut_line",
                "darts",
                "drill_points",
                "edges",
                "face_down",
                "grain",
                "lines",
                "name",
                "notches",
                "points",
                "side"
            ]
        );
        assert_eq!(keys(&piece["edges"][0]), ["name", "path", "role"]);
        assert_eq!(
            keys(&piece["darts"][0]),
            ["apexes", "edge", "legs", "name", "press"]
        );
        assert_eq!(keys(&piece["notches"][0]), ["at", "edge", "kind", "name"]);
        assert_eq!(keys(&piece["lines"][0]), ["name", "path"]);
    }
    for seam in document["seams"].as_array().unwrap() {
        assert_eq!(keys(seam), ["a", "b", "ease", "ease_on", "name", "side"]);
        assert_eq!(keys(&seam["a"][0]), ["against", "edge", "piece"]);
    }
    for girth in document["girths"].as_object().unwrap().values() {
        assert_eq!(
            keys(girth),
            ["body", "ease", "finished", "limb", "runs", "side"]
        );
        let [body, ease, finished] =
            ["body", "ease", "finished"].map(|key| girth[key].as_f64().unwrap());
        assert!((body + ease - finished).abs() < 0.01, "{girth}");
    }
}
