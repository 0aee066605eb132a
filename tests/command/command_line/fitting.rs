//! Blocks fitted to wearers from the command line.

use serde_json::Value;

use crate::support::command::{Place, repository};

/// A dress from the published table, for a wearer of the workshop.
fn fit(place: &Place, size: &str, more: &[&str]) -> crate::support::command::Ran {
    let table = repository("measurement-sets/en-13402-3-women.yaml");
    let text = format!(
        "title: Fitted dress\nblock: dress\nsleeve: long\nbody: {{table: {}{size}}}\n",
        table.display()
    );
    place.write("job.yaml", text);
    let maren = repository("measurement-sets/maren.yaml");
    let mut args = vec!["fit", "job.yaml", maren.to_str().unwrap()];
    args.extend(more);
    place.run(&args)
}

#[test]
fn the_nearest_size_is_taken_and_every_step_has_its_reason() {
    let place = Place::new();
    let text = fit(&place, "", &[]).done();
    assert!(text.contains("dress block of EN 13402-3 women"), "{text}");
    assert!(
        text.contains("nearest by upper chest and back width first"),
        "{text}"
    );
    assert!(text.contains("for hip_girth"), "{text}");
    let report: Value = serde_json::from_str(&fit(&place, "", &["--json"]).done()).unwrap();
    let steps = report["steps"].as_array().unwrap();
    assert!(steps.len() > 5);
    let waist: f64 = steps
        .iter()
        .filter(|step| step["alteration"] == "waist_girth")
        .map(|step| step["amount"].as_f64().unwrap())
        .sum();
    let size = report["size"]["differences"].as_array().unwrap();
    let waist_more = size
        .iter()
        .find(|d| d["measurement"] == "waist_girth")
        .unwrap();
    assert!(
        (waist - waist_more["more"].as_f64().unwrap()).abs() <= 1.5,
        "{waist}"
    );
    let first = steps
        .iter()
        .find(|s| s["alteration"] == "waist_girth")
        .unwrap();
    assert_eq!(first["asked"][0]["measurement"], "waist_girth");
    // Her girths with the block's ease.
    let bust = &report["girths"].as_array().unwrap()[0];
    assert_eq!(bust["body"], 985.0);
    assert!(
        (bust["ease"].as_f64().unwrap() - 60.0).abs() < 1.5,
        "{bust}"
    );
}

#[test]
fn nothing_below_what_is_asked_for_is_made() {
    let place = Place::new();
    let report = fit(&place, ", size: 100", &["--json", "--least", "1/2 in"]).done();
    let report: Value = serde_json::from_str(&report).unwrap();
    assert!(report["size"].is_null());
    for step in report["steps"].as_array().unwrap() {
        let amount = step["amount"].as_f64().unwrap().abs();
        assert!(step["unit"] == "deg" || amount >= 12.7, "{step}");
    }
    assert!(!report["left"].as_array().unwrap().is_empty());
}

#[test]
fn files_are_written_as_by_draft() {
    let place = Place::new();
    let text = fit(&place, ", size: 100", &["-o", "out"]).done();
    assert!(text.contains("Written to out: pattern-a4.pdf"), "{text}");
    let document = std::fs::read_to_string(place.path().join("out/pattern.json")).unwrap();
    let document: Value = serde_json::from_str(&document).unwrap();
    let account = document["account"].as_array().unwrap();
    assert!(
        account
            .iter()
            .any(|step| step["alteration"] == "waist_girth")
    );
    // The job with its steps, as a person goes on with it, makes the same pattern.
    let job = std::fs::read_to_string(place.path().join("out/fitted-job.yaml")).unwrap();
    assert!(job.starts_with("# The block fitted to Maren"), "{job}");
    place
        .run(&["draft", "out/fitted-job.yaml", "-o", "again"])
        .done();
    let again = std::fs::read_to_string(place.path().join("again/pattern.json")).unwrap();
    let again: Value = serde_json::from_str(&again).unwrap();
    assert_eq!(again["pieces"], document["pieces"]);
    fit(&place, ", size: 100", &["-o", "out", "--force"]).done();
}

#[test]
fn what_cannot_be_is_refused_with_its_cure() {
    let place = Place::new();
    let text = fit(&place, ", size: 101", &[]).failed(2);
    assert!(text.contains("no size `101`"), "{text}");
    place.write(
        "flat.yaml",
        "name: Flat\nunit: cm\nmeasurements: {height: 168}\n",
    );
    let text = place.run(&["fit", "job.yaml", "flat.yaml"]).failed(2);
    assert!(text.contains("bust_girth"), "{text}");
    // Elsewhere a table still needs a size.
    fit(&place, "", &[]).done();
    let text = place.run(&["check", "job.yaml"]).failed(2);
    assert!(text.contains("write `size:`"), "{text}");
    let text = fit(&place, "", &["--least-angle", "90"]).failed(2);
    assert!(text.contains("degrees from 0 to 45"), "{text}");
}

#[test]
fn a_table_of_people_is_fitted_row_by_row() {
    let place = Place::new();
    fit(&place, "", &[]).done();
    let people = "id,height (cm),bust_girth (cm),waist_girth (cm),hip_girth (cm)\n\
        ines,166,96,80,104\nmaren,181.5,98.5,72.2,105.8\ntypo,166,9600,80,104\n";
    place.write("people.csv", people);
    let report = place
        .run(&["batch", "job.yaml", "people.csv", "--fit", "-o", "out"])
        .done();
    assert!(report.contains("3 wearers: 2 made, 1 refused"), "{report}");
    let lines = std::fs::read_to_string(place.path().join("out/results.jsonl")).unwrap();
    let lines: Vec<Value> = lines
        .lines()
        .map(|l| serde_json::from_str(l).unwrap())
        .collect();
    assert_eq!(lines[0]["size"], "96");
    assert!(!lines[1]["steps"].as_array().unwrap().is_empty());
    assert!(lines[1]["left"].is_array());
    assert_eq!(lines[2]["status"], "refused");
    assert!(lines[2].get("steps").is_none());
    let patterns = [
        "batch",
        "job.yaml",
        "people.csv",
        "--fit",
        "--patterns",
        "-o",
        "all",
    ];
    place.run(&patterns).done();
    let lines = std::fs::read_to_string(place.path().join("all/results.jsonl")).unwrap();
    let first: Value = serde_json::from_str(lines.lines().next().unwrap()).unwrap();
    let steps = first["steps"].as_array().unwrap().len();
    assert_eq!(first["pattern"]["account"].as_array().unwrap().len(), steps);
}
