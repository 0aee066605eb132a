//! A block of one's own from a drawing.
#![cfg(feature = "own-block")]

use serde_json::Value;

use crate::support::command::{Place, repository};

/// The drawing of the examples, and a job for it.
fn place(drawing: &str, block: &str, rest: &str) -> Place {
    let place = Place::new();
    place.write("my-block.svg", drawing);
    let ines = repository("measurement-sets/ines.yaml");
    let text = format!(
        "title: Mine\nblock: {block}\nbody: {}\n{rest}",
        ines.display()
    );
    place.write("job.yaml", text);
    place
}

fn example() -> String {
    std::fs::read_to_string(repository("examples/own-block.svg")).unwrap()
}

const BLOCK: &str = "{file: my-block.svg, kind: skirt}";

#[test]
fn the_example_is_drafted_altered_graded_and_fitted() {
    let example_job = repository("examples/jobs/own-block.yaml");
    let place = place(&example(), BLOCK, "");
    let job = example_job.to_str().unwrap();
    let text = place.run(&["draft", job, "-o", "out"]).done();
    assert!(text.contains("skirt block for Ines"), "{text}");
    assert!(text.contains("Altered: hip_girth by 1.2 cm"), "{text}");
    assert!(!text.contains("drawn_unequal"), "{text}");
    let document = std::fs::read_to_string(place.path().join("out/pattern.json")).unwrap();
    let document: Value = serde_json::from_str(&document).unwrap();
    // Twice 273 mm and the 12 mm, measured on the drawing.
    let hip = document["girths"]["hip"]["finished"].as_f64().unwrap();
    assert!((hip - (4.0 * 273.0 + 12.0)).abs() < 0.1, "{hip}");
    let named: Vec<&str> = document["account"]
        .as_array()
        .unwrap()
        .iter()
        .map(|account| account["alteration"].as_str().unwrap())
        .collect();
    assert_eq!(named, ["own_block", "hip_girth"]);
    // What was written is read again.
    place.write(
        "again.yaml",
        "title: Again\nblock: {file: out/pattern.json}\n",
    );
    place.run(&["check", "again.yaml"]).done();
    let table = repository("measurement-sets/workshop-range.yaml");
    place
        .run(&["grade", "job.yaml", table.to_str().unwrap(), "-o", "sizes"])
        .done();
    let maren = repository("measurement-sets/maren.yaml");
    place
        .run(&["fit", "job.yaml", maren.to_str().unwrap()])
        .done();
}

#[test]
fn what_is_wrong_with_a_drawing_is_said_with_its_place() {
    let failed = |drawing: &str, block: &str, code: i32| {
        place(drawing, block, "")
            .run(&["check", "job.yaml"])
            .failed(code)
    };
    let whole = example();
    let err = failed(&whole, "{file: my-block.svg}", 2);
    assert!(
        err.contains("job.yaml:2:") && err.contains("write `kind:`"),
        "{err}"
    );
    let err = failed(&whole.replace("front.hem", "front.hen"), BLOCK, 1);
    assert!(
        err.contains("my-block.svg") && err.contains("did you mean `front.hem`?"),
        "{err}"
    );
    let err = failed(
        &whole.replace("id=\"back.waist\"", "id=\"path7\""),
        BLOCK,
        1,
    );
    assert!(err.contains("the drawing has no `back.waist`"), "{err}");
    let block = "{file: my-block.svg, kind: skirt, edges: {path7: back.waist}}";
    let named = place(
        &whole.replace("id=\"back.waist\"", "id=\"path7\""),
        block,
        "",
    );
    named.run(&["check", "job.yaml"]).done();
    let err = failed(&whole, "{file: my-block.svg, kind: skrt}", 2);
    assert!(err.contains("did you mean `skirt`?"), "{err}");
    // A side seam that is drawn 3 cm longer than the other is no rounding.
    let longer = whole.replace(
        "id=\"back.hem\" x1=\"273\" y1=\"595\" x2=\"0\" y2=\"595\"",
        "id=\"back.hem\" x1=\"273\" y1=\"625\" x2=\"0\" y2=\"625\"",
    );
    let longer = longer.replacen("v385", "v415", 1).replace(
        "x1=\"0\" y1=\"595\" x2=\"0\" y2=\"9.6\"",
        "x1=\"0\" y1=\"625\" x2=\"0\" y2=\"9.6\"",
    );
    let err = failed(&longer, BLOCK, 1);
    assert!(
        err.contains("cannot be sewn as it stands") && err.contains("seam side"),
        "{err}"
    );
    let place = Place::new();
    place.write("my-block.svg", &whole);
    place.write("job.yaml", format!("title: Mine\nblock: {BLOCK}\n"));
    let err = place.run(&["check", "job.yaml"]).failed(2);
    assert!(err.contains("for which body it was made"), "{err}");
}
