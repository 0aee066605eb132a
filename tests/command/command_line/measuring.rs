//! The command `measurements`.

use serde_json::Value;

use crate::support::command::{Place, repository};

#[test]
fn the_catalogue_tells_what_each_measurement_is() {
    let place = Place::new();
    let text = place.run(&["measurements"]).done();
    assert!(
        text.contains("back_waist_length (estimated if not taken)"),
        "{text}"
    );
    assert!(text.contains(" cm"));
    let inches = place.run(&["measurements", "--unit", "in"]).done();
    assert!(
        inches.contains(" in;") && !inches.contains(" cm"),
        "{inches}"
    );
    let json: Value = serde_json::from_str(&place.run(&["measurements", "--json"]).done()).unwrap();
    assert_eq!(json.as_array().unwrap().len(), 33);
    assert_eq!(json[0]["name"], "height");
}

#[test]
fn a_set_is_reported_in_its_own_unit_or_another() {
    let place = Place::new();
    let ines = repository("measurement-sets/ines.yaml");
    let ines = ines.to_str().unwrap();
    let text = place.run(&["measurements", ines]).done();
    assert!(
        text.contains("96 cm  taken") && text.contains("23 taken, 7 estimated."),
        "{text}"
    );
    let text = place.run(&["measurements", ines, "--unit", "mm"]).done();
    assert!(text.contains("960 mm  taken"), "{text}");
    let json = place.run(&["measurements", ines, "--json"]).done();
    let json: Value = serde_json::from_str(&json).unwrap();
    assert_eq!(json["measurements"]["bust_girth"]["value"], 960.0);
}

#[test]
fn a_size_table_is_reported_size_by_size() {
    let place = Place::new();
    let table = repository("measurement-sets/workshop-range.yaml");
    let table = table.to_str().unwrap();
    let text = place.run(&["measurements", table]).done();
    let json: Value =
        serde_json::from_str(&place.run(&["measurements", table, "--json"]).done()).unwrap();
    let sizes = json["sizes"].as_array().unwrap();
    assert!(sizes.len() > 1);
    for size in sizes {
        assert!(text.contains(&format!("Size {}", size["name"].as_str().unwrap())));
    }
}

#[test]
fn a_doubtful_set_is_reported_and_an_impossible_one_refused() {
    let place = Place::new();
    let set = "name: Ada\nunit: cm\nmeasurements:\n  height: 168\n  bust_girth: 92\n  \
               waist_girth: 76\n  hip_girth: 100\n  back_waist_length: 50\n";
    place.write("set.yaml", set);
    let text = place.run(&["measurements", "set.yaml"]).done();
    assert!(
        text.contains("Doubtful:\n  back_waist_length 50 cm is"),
        "{text}"
    );
    place.write("set.yaml", set.replace("92", "920"));
    let message = place.run(&["measurements", "set.yaml"]).failed(1);
    assert!(message.contains("set.yaml:5:3: "), "{message}");
    assert!(message.contains("was it meant in mm?"), "{message}");
}
