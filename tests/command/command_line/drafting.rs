//! Jobs that are done.

use std::fs;

use serde_json::Value;

use crate::support::command::{BODY, Place, job, repository};

const FILES: [&str; 5] = [
    "fitting.html",
    "pattern-a4.pdf",
    "pattern-sheet.pdf",
    "pattern.json",
    "pattern.svg",
];

#[test]
fn the_example_is_drafted_into_its_files() {
    let place = Place::new();
    let example = repository("examples/jobs/first-block.yaml");
    let report = place
        .run(&["draft", example.to_str().unwrap(), "-o", "out"])
        .done();
    assert_eq!(place.names("."), ["out"]);
    assert_eq!(place.names("out"), FILES);
    for pdf in &FILES[1..3] {
        let bytes = fs::read(place.path().join("out").join(pdf)).unwrap();
        assert!(bytes.starts_with(b"%PDF-"), "{pdf}");
        let document = lopdf::Document::load_mem(&bytes).unwrap();
        let pages = document.get_pages().len();
        if pdf.contains("a4") {
            assert!(report.contains("pattern-a4.pdf on a4"), "{report}");
            let message =
                format!("the first page with the plan: {pages} pages; a plain grid would take ");
            assert!(report.contains(&message), "{report}");
        } else {
            assert_eq!(pages, 1);
        }
    }
    let svg = fs::read_to_string(place.path().join("out/pattern.svg")).unwrap();
    roxmltree::Document::parse(&svg).unwrap();
    assert!(svg.contains("First block") && svg.contains("for Ines"));
    for part in [
        "First block\nbodice and skirt block for Ines\n",
        "bust_girth                       96 cm  taken",
        "armscye_girth",
        "estimated, ±",
        "Finished girths",
        "Seams, darts closed",
        "skirt side: skirt back side_seam",
        "bodice front bust dart, on side_seam: intake",
        "Print at 100 %",
        "Sew a toile",
        "Written to out: pattern-a4.pdf, pattern-sheet.pdf, pattern.svg, pattern.json, fitting.html",
    ] {
        assert!(report.contains(part), "{part}\n{report}");
    }
}

#[test]
fn the_same_job_gives_the_same_bytes() {
    let place = Place::with_job(&job("[skirt, bodice]"));
    let first = place.run(&["draft", "job.yaml", "-o", "one"]).done();
    let second = place.run(&["draft", "job.yaml", "-o", "two"]).done();
    assert_eq!(first.replace("to one", "to two"), second);
    for name in FILES {
        let [one, two] =
            ["one", "two"].map(|folder| fs::read(place.path().join(folder).join(name)).unwrap());
        assert!(one == two, "{name} differs");
    }
}

#[test]
fn a_set_beside_the_job_is_found_through_spaces_and_any_script() {
    let place = Place::new();
    place.write(
        "my jobs/jupe à plis.yaml",
        "title: Jupe d’été — 夏のスカート Ω\nblock: skirt\nbody: ../her sizes/Ænne.yaml\n",
    );
    let set = "name: Ænne Žižková\nunit: in\nmeasurements:\n  height: 5'6\"\n  \
               bust_girth: 36 1/2\n  waist_girth: 29\n  hip_girth: 39\n";
    place.write("her sizes/Ænne.yaml", set);
    let report = place
        .run(&[
            "draft",
            "my jobs/jupe à plis.yaml",
            "-o",
            "her patterns – 1",
        ])
        .done();
    assert!(report.starts_with("Jupe d’été — 夏のスカート Ω\nskirt block for Ænne Žižková\n"));
    assert!(report.contains("36 1/2 in  taken"), "{report}");
    assert_eq!(place.names("her patterns – 1"), FILES);
    let text = fs::read_to_string(place.path().join("her patterns – 1/pattern.json")).unwrap();
    let document: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(document["title"], "Jupe d’été — 夏のスカート Ω");
}

#[test]
fn a_roll_gives_one_long_page_and_its_plan() {
    let text = format!("{}print: {{paper: roll-594}}\n", job("skirt"));
    let place = Place::with_job(&text);
    let report = place.run(&["draft", "job.yaml", "-o", "out", "--json"]);
    let report: Value = serde_json::from_str(&report.done()).unwrap();
    assert_eq!(report["pages"]["paper"], "roll-594");
    assert_eq!(report["pages"]["pages"], 2);
    let bytes = fs::read(place.path().join("out/pattern-roll-594.pdf")).unwrap();
    let document = lopdf::Document::load_mem(&bytes).unwrap();
    assert_eq!(document.get_pages().len(), 2);
}

#[test]
fn paper_ease_and_length_are_obeyed() {
    let text = format!(
        "{}ease: {{fit: close, waist: 1 in, hip: 61}}\nlength: 70 cm\n\
         print: {{paper: A3, margin: 15, overlap: 12 mm, orientation: portrait}}\n",
        job("skirt")
    );
    let place = Place::with_job(&text);
    let report = place.run(&["check", "job.yaml", "--json"]).done();
    assert_eq!(place.names("."), ["job.yaml"]);
    let report: Value = serde_json::from_str(&report).unwrap();
    assert_eq!(report["status"], "ok");
    let girth = |name| {
        let mut girths = report["girths"].as_array().unwrap().iter();
        girths.find(|g| g["name"] == name).unwrap()["finished"]
            .as_f64()
            .unwrap()
    };
    assert!((girth("waist") - 785.4).abs() < 0.01);
    assert!((girth("hip") - 1061.0).abs() < 0.01);
    assert_eq!(report["pages"]["file"], "pattern-a3.pdf");
    assert_eq!(report["pages"]["landscape"], false);
    let count = |key: &str| report["pages"][key].as_u64().unwrap();
    assert!(count("pages") <= count("plain_grid"));
    assert_eq!(
        report["body"]["measurements"]["waist_girth"]["value"],
        760.0
    );
    let done = place.run(&[
        "draft", "job.yaml", "-o", "out", "--paper", "Letter", "--json",
    ]);
    let report: Value = serde_json::from_str(&done.done()).unwrap();
    assert_eq!(report["files"][0], "pattern-letter.pdf");
    assert_eq!(report["folder"], "out");
    assert!(
        place
            .names("out")
            .contains(&"pattern-letter.pdf".to_owned())
    );
}

#[test]
fn doubts_and_what_has_no_effect_become_warnings() {
    let body = BODY
        .replace("height: 168", "height: 212")
        .replace("hip_girth: 100", "hip_girth: 100, wrist_girth: 22");
    let place = Place::with_job(&format!(
        "title: T\nblock: bodice\nbody: {body}\nease: {{hip: 40}}\nlength: 600\n"
    ));
    let report = place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let text = fs::read_to_string(place.path().join("out/pattern.json")).unwrap();
    let document: Value = serde_json::from_str(&text).unwrap();
    let warnings = document["warnings"].as_array().unwrap();
    for code in [
        "far_from_estimate",
        "beyond_survey",
        "ease_unused",
        "length_unused",
    ] {
        let warning = warnings.iter().find(|w| w["code"] == code);
        let text = warning.unwrap_or_else(|| panic!("no {code}: {warnings:?}"))["text"]
            .as_str()
            .unwrap();
        assert!(report.contains(&format!("{code}: {text}")), "{report}");
    }
    assert!(report.contains("taken, doubtful"));
}

#[test]
fn keys_that_ask_for_nothing_are_no_fault() {
    let text = format!(
        "{}sleeve: none\nalterations: []\nallowance:\nlength:\n",
        job("bodice and skirt")
    );
    Place::with_job(&text).run(&["check", "job.yaml"]).done();
}
