//! Alterations asked for in a job: made, told, refused.

use std::fs;

use serde_json::Value;

use crate::support::command::{Place, job, repository};

/// The tunic of the examples with other settings of its alteration.
fn tunic(place: &Place, settings: &str) {
    let text = fs::read_to_string(repository("examples/jobs/linen-tunic.yaml")).unwrap();
    let usual = "{amount: 25 mm, hips_checked: true}";
    assert!(text.contains(usual));
    let set = repository("measurement-sets/ines.yaml");
    let text = text
        .replace(usual, settings)
        .replace("../../measurement-sets/ines.yaml", set.to_str().unwrap());
    place.write("job.yaml", text);
}

fn document(place: &Place) -> Value {
    let text = fs::read_to_string(place.path().join("out/pattern.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

fn change<'a>(account: &'a Value, what: &str) -> &'a Value {
    let mut changes = account["changes"].as_array().unwrap().iter();
    changes.find(|change| change["what"] == what).unwrap()
}

#[test]
fn the_tunic_is_altered_and_the_account_is_in_every_output() {
    let place = Place::new();
    let example = repository("examples/jobs/linen-tunic.yaml");
    let report = place
        .run(&["draft", example.to_str().unwrap(), "-o", "out"])
        .done();
    let document = document(&place);
    let accounts = document["account"].as_array().unwrap();
    assert_eq!(accounts.len(), 1);
    let account = &accounts[0];
    assert_eq!(account["alteration"], "back_length_reduction");
    assert_eq!(account["amount"], 25.0);
    let keys: Vec<_> = account.as_object().unwrap().keys().collect();
    assert_eq!(
        keys,
        [
            "alteration",
            "amount",
            "changes",
            "kept",
            "kept_measures",
            "unit"
        ]
    );
    let centre = change(account, "back centre_back length");
    let keys: Vec<_> = centre.as_object().unwrap().keys().collect();
    assert_eq!(keys, ["after", "before", "measure", "what"]);
    let measure = serde_json::json!({
        "kind": "edge_length", "piece": "back", "edge": "centre_back"
    });
    assert_eq!(centre["measure"], measure);
    let [before, after] = ["before", "after"].map(|key| centre[key].as_f64().unwrap());
    assert!((before - after - 25.0).abs() < 1e-3, "{centre}");
    let kept = account["kept"].as_array().unwrap();
    for what in [
        "back side_seam length",
        "back neckline length",
        "back shoulder length",
        "bust finished",
        "hip finished",
    ] {
        assert!(kept.contains(&Value::from(what)), "{what}");
        assert!(report.contains(what), "{what}");
    }
    // The document's own edge is as long as the account says.
    let pieces = document["pieces"].as_array().unwrap();
    let back = pieces.iter().find(|piece| piece["name"] == "back").unwrap();
    let edges = back["edges"].as_array().unwrap();
    let fold = edges.iter().find(|e| e["name"] == "centre_back").unwrap();
    let path = fold["path"].as_str().unwrap();
    let numbers: Vec<f64> = path
        .split(|c: char| !c.is_ascii_digit() && c != '.' && c != '-')
        .filter_map(|number| number.parse().ok())
        .collect();
    let drawn = (numbers[1] - numbers[numbers.len() - 1]).abs();
    assert!((drawn - after).abs() < 1e-3, "{path}");

    for part in [
        "Altered: back_length_reduction by 2.5 cm",
        "difference",
        "-2.5 cm",
        "Kept: ",
    ] {
        assert!(report.contains(part), "{part}\n{report}");
    }
    // The guide shows this job and what it gives.
    let guide = fs::read_to_string(repository("src/guide/tunic.md")).unwrap();
    let start = report.find("Altered:").unwrap();
    let table = &report[start..report.find("\nPieces").unwrap()];
    // Built without that method, its row differs.
    if cfg!(feature = "least-distortion") {
        assert!(guide.contains(table), "{table}");
    }
    let text = fs::read_to_string(&example).unwrap();
    let text = &text[text.find("title:").unwrap()..];
    assert!(guide.contains(text), "{text}");
    let page = fs::read_to_string(place.path().join("out/fitting.html")).unwrap();
    for part in [
        "Linen tunic, second toile",
        "Back length reduction by 2.5 cm",
        "back centre back length",
        "−2.5 cm",
    ] {
        assert!(page.contains(part), "{part}");
    }
    let json = place.run(&["check", example.to_str().unwrap(), "--json"]);
    let json: Value = serde_json::from_str(&json.done()).unwrap();
    let message = change(&json["account"][0], "back centre_back length");
    assert_eq!(message["difference"], -25.0);
    assert_eq!(message["unit"], "mm");
}

#[test]
fn the_ways_to_shorten_a_back_stand_side_by_side_with_the_chosen_one_marked() {
    let place = Place::new();
    let methods = || {
        let json = place.run(&["check", "job.yaml", "--json"]).done();
        serde_json::from_str::<Value>(&json).unwrap()["methods"].clone()
    };
    tunic(&place, "{amount: 25, hinge: shared, hips_checked: true}");
    let report = place.run(&["check", "job.yaml"]).done();
    for part in ["  > shared ", "\n    plain ", "\n    least_distortion "] {
        assert!(report.contains(part), "{part}\n{report}");
    }
    let message = methods();
    assert_eq!(message.as_array().unwrap().len(), 1);
    assert_eq!(
        (&message[0]["step"], &message[0]["amount"]),
        (&1.into(), &25.0.into())
    );
    let rows = message[0]["rows"].as_array().unwrap();
    let chosen: Vec<_> = rows.iter().map(|row| row["chosen"] == true).collect();
    assert_eq!(chosen, [false, true, false]);
    // The row of the chosen way says what the account says.
    let json = place.run(&["check", "job.yaml", "--json"]).done();
    let json: Value = serde_json::from_str(&json).unwrap();
    let account = &json["account"][0];
    let figures = &rows[1]["figures"];
    let slope = change(account, "back shoulder slope");
    assert_eq!(
        (&slope["before"], &slope["after"]),
        (&figures["slope_before"], &figures["slope_after"])
    );
    let armscye = &change(account, "back armscye length")["difference"];
    let differs = armscye.as_f64().unwrap() - figures["armscye"].as_f64().unwrap();
    assert!(differs.abs() < 2e-3, "{differs}");
    // A way that this back does not bear says why, and how much would hold.
    tunic(&place, "{amount: 45, hinge: shared, hips_checked: true}");
    let message = methods();
    let refused = message[0]["rows"][0]["refused"].as_str().unwrap();
    assert!(refused.contains("would hold"), "{refused}");
    // Each step is reported of the pattern it found; one that lengthens has nothing to choose.
    tunic(
        &place,
        "{amount: 8}\n  - back_length_reduction: {to: 71 cm}\n  - back_length_reduction: {amount: -3}",
    );
    let message = methods();
    let steps: Vec<_> = message
        .as_array()
        .unwrap()
        .iter()
        .map(|m| &m["step"])
        .collect();
    assert_eq!(steps, [1, 2]);
    let slope = |step: usize, key: &str| message[step]["rows"][0]["figures"][key].as_f64().unwrap();
    assert!((slope(0, "slope_after") - slope(1, "slope_before")).abs() < 2e-3);
    // Nor has a bodice, whose waist seam takes the wedge.
    place.write(
        "job.yaml",
        format!(
            "{}alterations: [back_length_reduction: {{amount: 8}}]\n",
            job("bodice")
        ),
    );
    assert_eq!(methods(), Value::Array(vec![]));
}

#[test]
fn shoulders_are_sloped_to_the_body() {
    let place = Place::new();
    let accounts = |settings| {
        tunic(&place, settings);
        let json = place.run(&["check", "job.yaml", "--json"]).done();
        serde_json::from_str::<Value>(&json).unwrap()["account"].clone()
    };
    let to_body = "{amount: 25 mm, hips_checked: true}\n  - shoulder_slope: {to: body}";
    let message = accounts(to_body);
    let side = |what: &str, key: &str| change(&message[1], what)[key].as_f64().unwrap();
    let lost = change(&message[0], "back shoulder slope")["difference"]
        .as_f64()
        .unwrap();
    // Half of what the back lost, at back and front: together they slope as drafted.
    assert!((message[1]["amount"].as_f64().unwrap() + lost / 2.0).abs() < 1e-3);
    let drafted = change(&message[0], "back shoulder slope")["before"]
        .as_f64()
        .unwrap()
        + side("front shoulder slope", "before");
    let now = side("back shoulder slope", "after") + side("front shoulder slope", "after");
    assert!((now - drafted).abs() < 1e-3, "{drafted} {now}");
    // A draft slopes as its body does: nothing is left to do.
    let again = format!("{to_body}\n  - shoulder_slope: {{to: body}}");
    assert!(accounts(&again)[2]["amount"].as_f64().unwrap().abs() < 1e-3);
    // A number is a target too.
    let message = accounts("{amount: 5}\n  - shoulder_slope: {to: 24}");
    let after = &change(&message[1], "front shoulder slope")["after"];
    assert!((after.as_f64().unwrap() - 24.0).abs() < 0.01);
    for (settings, code, expected) in [
        ("{amount: 5}\n  - shoulder_slope: {to: wall}", 2, "`to`"),
        ("{to: nobody}", 2, "`to`"),
        (
            "{amount: 5}\n  - shoulder_slope: {to: body, degrees: 2}",
            2,
            "exclude each other",
        ),
        (
            "{amount: 5}\n  - dart_relocation: {dart: bust, to: shoulder, at: 0.5}\n  - shoulder_slope: {to: body}",
            1,
            "step 3, shoulder_slope: a dart opens on the front shoulder",
        ),
    ] {
        tunic(&place, settings);
        let report = place.run(&["check", "job.yaml"]).failed(code);
        assert!(report.contains(expected), "{report}");
    }
}

#[test]
fn lengths_may_carry_units_and_words_stay_words() {
    let place = Place::new();
    let amount = |settings| {
        tunic(&place, settings);
        place
            .run(&["draft", "job.yaml", "-o", "out", "--force"])
            .done();
        document(&place)["account"][0]["amount"].as_f64().unwrap()
    };
    let inch = amount("{amount: 1 in, hinge: shared, hips_checked: true}");
    assert!((inch - 25.4).abs() < 1e-9);
    let cm = amount("{amount: 1.5 cm}");
    assert!((cm - 15.0).abs() < 1e-9);
}

#[test]
fn a_target_is_reached_by_whatever_amount_it_takes() {
    let place = Place::new();
    tunic(&place, "{to: 70.5 cm, hips_checked: true}");
    place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let document = document(&place);
    let account = &document["account"][0];
    let centre = change(account, "back centre_back length");
    assert!((centre["after"].as_f64().unwrap() - 705.0).abs() < 0.01);
    let amount = account["amount"].as_f64().unwrap();
    assert!((centre["before"].as_f64().unwrap() - 705.0 - amount).abs() < 0.01);
    // What is right already is left alone.
    let mut text = fs::read_to_string(place.path().join("job.yaml")).unwrap();
    let again = "  - back_length_reduction: {to: 705, hips_checked: true}\nprint:";
    text = text.replace("print:", again);
    place.write("job.yaml", text);
    place
        .run(&["draft", "job.yaml", "-o", "out", "--force"])
        .done();
    let document = self::document(&place);
    assert!(document["account"][1]["amount"].as_f64().unwrap().abs() < 0.01);
}

#[test]
fn an_amount_beyond_what_the_pattern_bears_is_refused_with_the_most() {
    let place = Place::new();
    tunic(&place, "{amount: 200, hips_checked: true}");
    let message = place.run(&["draft", "job.yaml", "-o", "out"]).failed(1);
    assert!(
        message.contains("back_length_reduction by 20 cm"),
        "{message}"
    );
    assert!(message.contains("; at most "), "{message}");
    assert_eq!(place.names("."), ["job.yaml"]);
    let message = place.run(&["check", "job.yaml", "--json"]).failed(1);
    let message: Value = serde_json::from_str(&message).unwrap();
    assert_eq!(message["status"], "refused");
    assert_eq!(message["errors"][0]["code"], "alteration_refused");
    // And that much does hold.
    let text = message["errors"][0]["text"].as_str().unwrap();
    let most = text.rsplit_once("at most ").unwrap().1;
    // In the unit in which the body was measured, as it is written again.
    assert!(most.ends_with(" cm"), "{most}");
    tunic(&place, &format!("{{amount: {most}, hips_checked: true}}"));
    place.run(&["check", "job.yaml"]).done();
    tunic(&place, "{to: 300, hips_checked: true}");
    place.run(&["check", "job.yaml"]).failed(1);
}

#[test]
fn words_of_any_length_are_reported_in_a_few_lines() {
    let long = "k".repeat(200_000);
    for text in [
        format!("{long}: {{amount: 1}}"),
        format!("back_length_reduction: {{{long}: 1}}"),
        format!("back_length_reduction: {{amount: {long}}}"),
        format!("back_length_reduction: {{amount: 1, {long}: .nan}}"),
        long.clone(),
        format!("back_length_reduction: [{}1]", "1, ".repeat(100_000)),
        format!(
            "back_length_reduction: {{amount: [{}1]}}",
            "[".repeat(10) + &"]".repeat(10) + ","
        ),
    ] {
        let place = Place::with_job(&format!("{}alterations:\n  - {text}\n", job("tunic")));
        let report = place.run(&["check", "job.yaml"]).failed(2);
        assert!(report.len() < 2000, "{} bytes", report.len());
    }
}

#[test]
fn names_and_settings_that_are_wrong_are_reported_at_their_line() {
    let many = "  - back_length_reduction: {amount: 1}\n".repeat(101);
    let line = |text: &str| format!("alterations:\n  - {text}\n");
    let cases = [
        (
            line("back_lenght_reduction: {amount: 25}"),
            "job.yaml:5:5: alterations: `back_lenght_reduction` is no alteration; did you mean `back_length_reduction`?",
        ),
        (
            line("back_length_reduction: {amount: 25, hip_checked: true}"),
            "job.yaml:5:41: alterations.back_length_reduction.hip_checked: there is no setting `hip_checked`; did you mean `hips_checked`?",
        ),
        (
            line("back_length_reduction: {amount: plenty}"),
            "alterations.back_length_reduction.amount: the text `plenty` stands here; write a number",
        ),
        (
            line("back_length_reduction: {amount: .nan}"),
            "alterations.back_length_reduction.amount: the value is not a finite number",
        ),
        (
            line("back_length_reduction:"),
            "job.yaml:5:5: alterations.back_length_reduction: `amount` is missing",
        ),
        (
            line("back_length_reduction: 25"),
            "a number stands here; write its settings",
        ),
        (
            line("back_length_reduction: {amount: 25, to: 900}"),
            "`to` and `amount` exclude each other",
        ),
        (
            line("{back_length_reduction: {amount: 5}, hem: {}}"),
            "2 names stand in one item",
        ),
        (line("7"), "a number stands here; write an alteration"),
        (
            "alterations: {back_length_reduction: {amount: 25}}\n".to_owned(),
            "a mapping stands here; write a list of alterations",
        ),
        (
            format!("alterations:\n{many}"),
            "101 alterations stand here; at most 100 are taken",
        ),
    ];
    for (text, expected) in cases {
        let place = Place::with_job(&format!("{}{text}", job("tunic")));
        let report = place.run(&["check", "job.yaml"]).failed(2);
        assert!(report.contains(expected), "{expected}\n{report}");
    }
}

#[test]
fn one_side_is_altered_and_its_pieces_are_cut_singly() {
    let text = format!(
        "{}sleeve: long\nalterations:\n  - shoulder_slope: {{degrees: 3, side: left}}\n",
        job("tunic")
    );
    let place = Place::with_job(&text);
    let report = place.run(&["draft", "job.yaml", "-o", "out"]).done();
    assert!(
        report.contains("back left: cut 1, pattern face down"),
        "{report}"
    );
    assert!(
        report.contains("back right: cut 1, pattern face up"),
        "{report}"
    );
    let document = document(&place);
    let pieces = document["pieces"].as_array().unwrap();
    let cut = |name: &str| &pieces.iter().find(|p| p["name"] == name).unwrap()["cut"];
    assert_eq!(cut("front left"), "single");
    let account = &document["account"][0];
    let slope = change(account, "back left shoulder slope");
    let [before, after] = ["before", "after"].map(|key| slope[key].as_f64().unwrap());
    assert!((after - before - 3.0).abs() < 1e-3, "{slope}");
}

/// A bust is changed at its dart: once that dart is a seam it is too late, and the refusal says
/// where in the order it is not.
#[test]
fn a_step_after_a_seam_of_darts_is_made_on_the_whole_piece() {
    let place = Place::new();
    let seam = "  - dart_to_seam: {dart: bust, to: armscye, at: 0.5}\n";
    let bust = "  - bust: {amount: 10}\n";
    place.write(
        "job.yaml",
        format!("{}alterations:\n{seam}{bust}", job("dress")),
    );
    let report = place.run(&["check", "job.yaml"]).done();
    assert!(
        report.contains("front centre") && report.contains("bust"),
        "{report}"
    );
    place.write(
        "job.yaml",
        format!("{}alterations:\n{bust}{seam}", job("dress")),
    );
    place.run(&["check", "job.yaml"]).done();
}

#[test]
fn to_body_brings_a_measure_to_what_it_is_on_the_draft_for_her() {
    let steps = "alterations:\n  - waist_girth: {amount: 20}\n  - shoulder_slope: {degrees: 2}\n  \
                 - waist_girth: {to: body}\n  - hip_girth: {to: body}\n  - upper_arm: {to: body}\n";
    let place = Place::with_job(&format!("{}sleeve: long\n{steps}", job("dress")));
    let report = place.run(&["check", "job.yaml", "--json"]).done();
    let report: Value = serde_json::from_str(&report).unwrap();
    let amount = |step: usize| report["account"][step]["amount"].as_f64().unwrap();
    assert!((amount(2) + 20.0).abs() < 0.05, "{}", amount(2));
    assert!(amount(3).abs() < 0.05 && amount(4).abs() < 0.05);
    // A skirt has no upper arm, and a forward shoulder no measure.
    let place = Place::with_job(&format!(
        "{}alterations: [upper_arm: {{to: body}}]\n",
        job("skirt")
    ));
    let report = place.run(&["check", "job.yaml"]).failed(1);
    assert!(
        report.contains("the measure `upper_arm finished`"),
        "{report}"
    );
    let place = Place::with_job(&format!(
        "{}alterations: [forward_shoulder: {{to: body}}]\n",
        job("dress")
    ));
    let report = place.run(&["check", "job.yaml"]).failed(2);
    assert!(report.contains("there is no setting `to`"), "{report}");
}
