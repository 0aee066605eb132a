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
        "15 taken, 9 estimated.",
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
