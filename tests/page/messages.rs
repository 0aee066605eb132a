//! The messages behind the page, against what the command makes of the same job.

use std::process::Command;

use blockwright::message::answer;
use serde_json::{Value, json};

use crate::support::command::Place;

fn ask(message: &Value) -> Value {
    serde_json::from_str(&answer(&message.to_string())).unwrap()
}

fn body() -> Value {
    json!({"name": "Ada", "unit": "cm", "measurements": {"height": "168 cm", "bust_girth": "92 cm", "waist_girth": 76, "hip_girth": "39 3/8 in"}})
}

fn dress(steps: &Value) -> Value {
    json!({"title": "Dress", "block": "dress", "sleeve": "long", "body": body(), "alterations": steps})
}

fn near(a: &Value, b: f64) -> bool {
    a.as_f64().is_some_and(|a| (a - b).abs() < 0.011)
}

#[test]
fn what_is_drawn_is_what_the_command_makes() {
    let job = dress(
        &json!([{"back_length_reduction": {"amount": 15, "hips_checked": true}}, {"waist_girth": {"amount": 12}}]),
    );
    let drawn = ask(&json!({"ask": "draft", "job": job, "report": true}));
    assert_eq!(drawn["status"], "ok");
    let place = Place::with_job(&job.to_string());
    let document = place.run(&["check", "job.yaml", "--document"]).done();
    let document: Value = serde_json::from_str(&document).unwrap();
    let pieces = document["pieces"].as_array().unwrap();
    assert_eq!(drawn["pieces"].as_array().unwrap().len(), pieces.len());
    for (pair, piece) in drawn["pieces"].as_array().unwrap().iter().zip(pieces) {
        assert_eq!(pair["name"], piece["name"]);
        let edges = |of: &Value| -> Vec<String> {
            of["edges"]
                .as_array()
                .unwrap()
                .iter()
                .map(|e| e["name"].to_string())
                .collect()
        };
        assert_eq!(edges(&pair["after"]), edges(piece));
        assert!(pair["before"].is_object() && pair["shift"]["waist"].is_array());
    }
    // Both name the same seams with the same ease.
    for (seam, written) in drawn["seams"]
        .as_array()
        .unwrap()
        .iter()
        .zip(document["seams"].as_array().unwrap())
    {
        assert_eq!(seam["name"], written["name"]);
        assert!(near(&seam["ease"], written["ease"].as_f64().unwrap()));
    }
    assert_eq!(drawn["report"]["account"].as_array().unwrap().len(), 2);
    assert_eq!(
        drawn["report"]["methods"][0]["rows"]
            .as_array()
            .unwrap()
            .len(),
        3
    );
    assert_eq!(drawn["amounts"][1]["amount"], 12.0);
}

#[test]
fn a_refused_step_leaves_the_pattern_before_it() {
    let job = dress(
        &json!([{"waist_girth": {"amount": 12}}, {"back_length_reduction": {"amount": 250, "hips_checked": true}}, {"bust": {"amount": 6}}]),
    );
    let drawn = ask(&json!({"ask": "draft", "job": job}));
    assert_eq!(
        (&drawn["status"], &drawn["refused"]["step"]),
        (&json!("ok"), &json!(2))
    );
    assert_eq!(drawn["amounts"].as_array().unwrap().len(), 1);
    let text = drawn["refused"]["problem"]["text"].as_str().unwrap();
    assert!(
        text.contains("cm") && !text.contains(" mm"),
        "in the wearer's unit: {text}"
    );
}

#[test]
fn the_end_of_a_slider_holds_and_what_lies_beyond_does_not() {
    for (name, key, more) in [
        ("back_length_reduction", "amount", 1.0),
        ("bust", "amount", 1.0),
        ("shoulder_slope", "degrees", 0.3),
    ] {
        let steps = |amount: f64| json!([{"waist_girth": {"amount": 8}}, {name: {key: amount}}]);
        let most = ask(&json!({"ask": "most", "job": dress(&steps(1.0)), "step": 2}));
        assert_eq!(most["status"], "ok", "{most}");
        for (end, beyond) in [("most", more), ("least", -more)] {
            let amount = most[end].as_f64().unwrap();
            assert!(amount * beyond >= 0.0, "{name} {end} {amount}");
            let holds = |amount| {
                ask(&json!({"ask": "draft", "job": dress(&steps(amount))}))
                    .get("refused")
                    .is_none()
            };
            assert!(holds(amount), "{name}: {amount}");
            assert!(!holds(amount + beyond), "{name}: {}", amount + beyond);
        }
    }
}

#[test]
fn a_wearer_is_known_while_she_is_being_measured() {
    let measure = |measurements: Value, unit: &str| {
        ask(
            &json!({"ask": "measure", "set": {"unit": "cm", "measurements": measurements}, "unit": unit, "focus": "waist_girth"}),
        )
    };
    let row = |known: &Value, name: &str| {
        known["rows"]
            .as_array()
            .unwrap()
            .iter()
            .find(|row| row["name"] == name)
            .unwrap()
            .clone()
    };
    let nobody = measure(json!({}), "cm");
    assert_eq!(nobody["complete"], false);
    assert_eq!(row(&nobody, "height")["state"], "likely");
    let tall = measure(json!({"height": "185 cm", "bust_girth": ""}), "cm");
    let arm = |known: &Value| {
        row(known, "arm_length")["shown"]
            .as_str()
            .unwrap()
            .parse::<f64>()
            .unwrap()
    };
    assert!(
        arm(&tall) > arm(&nobody) + 3.0,
        "whoever is tall has long arms"
    );
    assert_eq!(tall["stance"], "front");
    assert!(tall["figure"].as_str().unwrap().contains("class=\"tape\""));
    let four = json!({"height": "168 cm", "bust_girth": "92", "waist_girth": "76 cm", "hip_girth": "39 3/8 in", "back_waist_length": "48 cm"});
    let known = measure(four, "in");
    assert_eq!(known["complete"], true);
    assert_eq!(row(&known, "bust_girth")["shown"], "36 1/4");
    let doubt = row(&known, "back_waist_length")["doubts"][0]
        .as_str()
        .unwrap()
        .to_owned();
    assert!(doubt.contains(" in") && !doubt.contains("cm"), "{doubt}");
    // What cannot be is said beside its field, in the unit asked for, and nothing is lost of the rest.
    let wrong = measure(
        json!({"height": "168", "bust_girth": "9", "waist_girth": "much", "hip_girth": "100"}),
        "cm",
    );
    assert_eq!(wrong["complete"], false);
    assert!(
        row(&wrong, "bust_girth")["error"]
            .as_str()
            .unwrap()
            .contains("bust girth 9 cm is impossible: it lies between 65 cm and 175 cm")
    );
    assert_eq!(row(&wrong, "waist_girth")["state"], "wrong");
    assert_eq!(row(&wrong, "height")["state"], "taken");
}

#[test]
fn work_is_written_as_files_of_the_command_and_reads_as_it_was() {
    let job = dress(&json!([{"waist_girth": {"amount": 12}}, {"bust": {"amount": 6}}]));
    let off = json!([{"at": 1, "step": {"abdomen": {"amount": 8.0}}}]);
    let written = ask(&json!({"ask": "write", "job": job, "off": off}));
    let files: serde_json::Map<String, Value> = written["files"]
        .as_array()
        .unwrap()
        .iter()
        .map(|file| {
            (
                file["name"].as_str().unwrap().to_owned(),
                file["text"].clone(),
            )
        })
        .collect();
    assert_eq!(
        files.keys().collect::<Vec<_>>(),
        ["job.yaml", "wearer.yaml"]
    );
    let read =
        ask(&json!({"ask": "read", "text": files["job.yaml"], "name": "job.yaml", "files": files}));
    assert_eq!((&read["kind"], &read["off"]), (&json!("job"), &off));
    let again = ask(&json!({"ask": "write", "job": read["job"], "off": read["off"]}));
    assert_eq!(again, written);
    // The command makes the same of them, byte for byte, as the page hands out.
    let place = Place::new();
    for (name, text) in &files {
        place.write(name, text.as_str().unwrap());
    }
    place
        .run(&["draft", "job.yaml", "-o", "out", "--dxf"])
        .done();
    for (what, name) in [
        ("svg", "pattern.svg"),
        ("pages", "pattern-a4.pdf"),
        ("dxf", "pattern.dxf"),
        ("document", "pattern.json"),
    ] {
        let made = ask(&json!({"ask": "output", "job": read["job"], "what": what}));
        let data = base64(made["files"][0]["data"].as_str().unwrap());
        let file = std::fs::read(place.path().join("out").join(name)).unwrap();
        assert_eq!(made["files"][0]["name"], name);
        assert!(data == file, "{name} differs");
    }
    // Files that are not there are named.
    let alone = ask(&json!({"ask": "read", "text": files["job.yaml"], "name": "job.yaml"}));
    assert_eq!(
        (&alone["errors"][0]["code"], &alone["errors"][0]["place"]),
        (&json!("file_wanted"), &json!("wearer.yaml"))
    );
}

#[test]
fn a_block_is_fitted_to_a_wearer() {
    let wearer = json!({"name": "Bea", "unit": "cm", "measurements": {"height": 168, "bust_girth": 92, "waist_girth": 80, "hip_girth": 104}});
    let job = dress(&json!([]));
    let fitted = ask(&json!({"ask": "fit", "job": job, "wearer": wearer}));
    assert_eq!(fitted["status"], "ok", "{fitted}");
    let steps = fitted["steps"].as_array().unwrap();
    assert!(
        steps.iter().any(|step| step.get("waist_girth").is_some()),
        "{steps:?}"
    );
    let drawn = ask(&json!({"ask": "draft", "job": dress(&fitted["steps"])}));
    assert!(drawn.get("refused").is_none());
    // From a table, of which the nearest size is taken.
    let table = "name: A range\nunit: cm\ncommon: {height: 168}\nsizes:\n  '38': {bust_girth: 88, waist_girth: 72, hip_girth: 96}\n  '40': {bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";
    let mut job = dress(&json!([]));
    job["body"] = json!({"table": "sizes.yaml"});
    let fitted =
        ask(&json!({"ask": "fit", "job": job, "wearer": wearer, "files": {"sizes.yaml": table}}));
    assert_eq!(fitted["size"], "40", "{fitted}");
    let range =
        ask(&json!({"ask": "output", "job": dress(&json!([])), "what": "range", "table": table}));
    assert!(
        range["files"]
            .as_array()
            .unwrap()
            .iter()
            .any(|file| file["name"] == "range.json"),
        "{range}"
    );
}

/// The map is that of the command's report, and `wearer:` and `to: form` mean the same there.
#[test]
fn a_wearer_is_shown_in_the_round_and_the_pieces_on_her() {
    let mut job = dress(&json!([{"back_length_reduction": {"to": "form", "hips_checked": true}}]));
    let lengths = |back: f64| {
        let mut set = body();
        set["measurements"]["back_waist_length"] = json!(back);
        set["measurements"]["centre_front_waist_length"] = json!(34);
        set
    };
    job["body"] = lengths(41.0);
    job["wearer"] = lengths(39.2);
    let shown = ask(&json!({"ask": "fit_map", "job": job}));
    assert_eq!(shown["status"], "ok", "{shown}");
    assert!(shown["form"].as_str().unwrap().starts_with("<svg"));
    let pieces = shown["pieces"].as_array().unwrap();
    assert_eq!(pieces.len(), 2);
    let place = Place::with_job(&job.to_string());
    let report = place.run(&["check", "job.yaml", "--json"]).done();
    let report: Value = serde_json::from_str(&report).unwrap();
    assert!((report["account"][0]["amount"].as_f64().unwrap() - 18.0).abs() < 1.0);
    assert_eq!(report["fit_map"]["body"], shown["body"]);
    // In a file of its own, and instead of it the argument.
    place.write("maren.json", job["wearer"].to_string());
    job["wearer"] = json!("maren.json");
    place.write("job.yaml", job.to_string());
    let again = place.run(&["check", "job.yaml", "--json"]).done();
    let again: Value = serde_json::from_str(&again).unwrap();
    assert_eq!(again["account"], report["account"]);
    // Without a wearer it is the job's own body, on whom nothing is to be shortened.
    job.as_object_mut().unwrap().remove("wearer");
    let own = ask(&json!({"ask": "fit_map", "job": job}));
    assert!(
        own["advice"][0]
            .as_str()
            .unwrap()
            .contains("agrees by construction"),
        "{own}"
    );
    // Whom no body in the round has is said, and the pieces are left.
    job["wearer"] = lengths(39.2);
    job["wearer"]["measurements"]["neck_to_bust_point"] = json!(45);
    let none = ask(&json!({"ask": "fit_map", "job": job}));
    assert!(
        none["refused"]["text"]
            .as_str()
            .unwrap()
            .contains("no body in the round"),
        "{none}"
    );
}

#[test]
fn a_batch_line_of_somebody_whose_angle_was_measured() {
    let mut job = dress(&json!([]));
    job["body"]["measurements"]["shoulder_slope"] = json!(21.5);
    let made = ask(&json!({"ask": "output", "job": job, "what": "batch"}));
    assert_eq!(made["text"], "", "{made}");
    let line = base64(made["files"][0]["data"].as_str().unwrap());
    let line: Value = serde_json::from_slice(&line).unwrap();
    let document = Place::with_job(&job.to_string())
        .run(&["check", "job.yaml", "--document"])
        .done();
    let document: Value = serde_json::from_str(&document).unwrap();
    assert_eq!(line["pattern"]["pieces"], document["pieces"]);
}

#[test]
fn a_form_has_every_measurement() {
    let place = Place::new();
    place
        .run(&["measurements", "--form", "-o", "form.pdf"])
        .done();
    let again = place
        .run(&["measurements", "--form", "-o", "form.pdf"])
        .failed(2);
    assert!(again.contains("--force"), "{again}");
    place
        .run(&[
            "measurements",
            "--form",
            "-o",
            "form.pdf",
            "--force",
            "--unit",
            "in",
            "--paper",
            "letter",
        ])
        .done();
    let Ok(text) = Command::new("pdftotext")
        .args(["-layout", "form.pdf", "-"])
        .current_dir(place.path())
        .output()
    else {
        eprintln!("SKIPPED: pdftotext is not installed, the form was not read");
        return;
    };
    let text = String::from_utf8_lossy(&text.stdout).replace('\n', " ");
    for measurement in blockwright::measurements::Measurement::ALL {
        let name = measurement.name().replace('_', " ");
        assert!(text.to_lowercase().contains(&name), "{name}");
    }
}

fn base64(text: &str) -> Vec<u8> {
    const LETTERS: &[u8] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = Vec::new();
    let (mut bits, mut count) = (0_u32, 0);
    for letter in text.bytes().filter(|b| *b != b'=') {
        let value = LETTERS.iter().position(|l| *l == letter).unwrap();
        bits = bits << 6 | u32::try_from(value).unwrap();
        count += 6;
        if count >= 8 {
            count -= 8;
            out.push((bits >> count & 0xff) as u8);
        }
    }
    out
}
