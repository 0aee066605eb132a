//! Reports for people and programs.

use blockwright::measurements::{Measurement as M, MeasurementSet, SetReport, catalogue_text};
use blockwright::units::Unit;

use super::known::*;

#[test]
fn the_report_tells_taken_estimated_and_doubtful() {
    let text = set_file("tilde.yaml").replace("back_waist_length: 13 5/8", "back_waist_length: 18");
    let set = MeasurementSet::parse(&text).unwrap();
    let report = SetReport::new(&set);
    let text = report.text();
    for expected in [
        "bust_girth                   31 5/8 in  taken",
        "estimated, ±1/2 in",
        "taken, doubtful",
        "back_waist_length 18 in is",
        "15 taken, 15 estimated.",
    ] {
        assert!(text.contains(expected), "{expected} in\n{text}");
    }
    let json = serde_json::to_value(&report).unwrap();
    assert_eq!(json["measurements"]["bust_girth"]["value"], 803.275);
    assert_eq!(json["measurements"]["shoulder_slope"]["unit"], "deg");
    assert_eq!(json["doubts"][0]["code"], "far_from_estimate");
    assert!(json["measurements"]["wrist_girth"]["spread"].is_number());
}

#[test]
fn the_catalogue_tells_every_measurement() {
    let text = catalogue_text(Unit::Mm);
    for measurement in M::ALL {
        assert!(text.contains(&format!("{measurement} (")));
        assert!(measurement.definition().ends_with('.'));
        assert!(!measurement.needed_by().is_empty());
    }
    assert!(text.lines().all(|line| line.chars().count() <= 80));
}

/// Beyond the women surveyed the report says how far they reached, in the user's unit, and asks
/// for the four measurements that help most; within, it asks for nothing.
#[test]
fn beyond_the_survey_four_measurements_are_asked_for() {
    let text = "name: Grete\nunit: cm\nmeasurements:\n  height: 168\n  bust_girth: 140\n  \
                waist_girth: 124\n  hip_girth: 142\n";
    let set = MeasurementSet::parse(text).unwrap();
    let report = SetReport::new(&set);
    let notes = report.beyond_survey_texts();
    assert!(
        notes[0].contains("bust_girth 140 cm lies outside the 71.1 cm to 117.6 cm"),
        "{notes:?}"
    );
    let asked = notes.last().unwrap().split("take ").nth(1).unwrap();
    assert_eq!(asked.split(", ").count(), 4, "{asked}");
    let json = serde_json::to_value(&report).unwrap();
    assert_eq!(json["take_next"].as_array().unwrap().len(), 4);
    // One as round as she is wide at the bust: each girth in range, the four together not.
    let round = text
        .replace("140", "105")
        .replace("124", "98")
        .replace("142", "98");
    let report = SetReport::new(&MeasurementSet::parse(&round).unwrap());
    let notes = report.beyond_survey_texts();
    assert!(
        notes.len() == 1 && notes[0].contains("go together"),
        "{notes:?}"
    );
    let within = text
        .replace("140", "96")
        .replace("124", "80")
        .replace("142", "102");
    let report = SetReport::new(&MeasurementSet::parse(&within).unwrap());
    assert!(report.beyond_survey_texts().is_empty());
    assert!(
        serde_json::to_value(&report)
            .unwrap()
            .get("take_next")
            .is_none()
    );
}
