//! A block of one's own: a pattern document in place of the draft.

use serde_json::Value;

use crate::support::command::{Place, repository};

/// A place with a block that somebody fitted and kept: a dress for the middle size of the workshop,
/// 24 mm easier at the bust than a draft.
fn with_own_block() -> Place {
    let place = Place::new();
    let table = repository("measurement-sets/workshop-range.yaml");
    let first = format!(
        "title: Kept block\nblock: dress\nsleeve: long\nbody: {{table: {}, size: middle}}\n\
         alterations: [{{bust_girth: {{amount: 24}}}}]\n",
        table.display()
    );
    place.write("first.yaml", first);
    let document = place.run(&["check", "first.yaml", "--document"]).done();
    place.write("blocks/mine.json", document);
    place
}

fn job(place: &Place, rest: &str) {
    let text = format!("title: From my block\nblock: {{file: blocks/mine.json}}\n{rest}");
    place.write("job.yaml", text);
}

fn document(place: &Place, path: &str) -> Value {
    let text = std::fs::read_to_string(place.path().join(path)).unwrap();
    serde_json::from_str(&text).unwrap()
}

fn finished(document: &Value, girth: &str) -> f64 {
    document["girths"][girth]["finished"].as_f64().unwrap()
}

#[test]
fn it_stands_in_place_of_the_draft_and_is_written_with_all_files() {
    let place = with_own_block();
    job(&place, "dxf: true\nallowance: 10\n");
    place.run(&["draft", "job.yaml", "-o", "out"]).done();
    let (kept, made) = (
        document(&place, "blocks/mine.json"),
        document(&place, "out/pattern.json"),
    );
    for key in ["block", "body", "seams", "girths", "account"] {
        assert_eq!(made[key], kept[key], "{key}");
    }
    let (pieces, before) = (&made["pieces"], &kept["pieces"]);
    for (piece, before) in pieces
        .as_array()
        .unwrap()
        .iter()
        .zip(before.as_array().unwrap())
    {
        assert_eq!(piece["edges"], before["edges"]);
        assert_eq!(piece["darts"], before["darts"]);
        assert!(before["cut_line"].is_null() && piece["cut_line"].is_string());
    }
    let names = place.names("out");
    for file in [
        "fitting.html",
        "pattern-a4.pdf",
        "pattern.dxf",
        "pattern.svg",
    ] {
        assert!(names.contains(&file.to_owned()), "{names:?}");
    }
    // What was written is a block of one's own again.
    place.write(
        "again.yaml",
        "title: Again\nblock: {file: out/pattern.json}\n",
    );
    let again = place.run(&["check", "again.yaml", "--document"]).done();
    let again: Value = serde_json::from_str(&again).unwrap();
    assert_eq!(again["girths"], kept["girths"]);
    place
        .run(&[
            "lay", "job.yaml", "--width", "150cm", "--seed", "1", "--rounds", "1", "-o", "laid",
        ])
        .done();
}

#[test]
fn its_alterations_are_those_of_the_same_chain_on_the_draft() {
    let place = with_own_block();
    job(
        &place,
        "alterations: [{hip_girth: {amount: 20}}, {shoulder_slope: {to: body}}]\n",
    );
    let own = place.run(&["check", "job.yaml", "--document"]).done();
    let first = std::fs::read_to_string(place.path().join("first.yaml")).unwrap();
    let chain = first.replace(
        "24}}]",
        "24}}, {hip_girth: {amount: 20}}, {shoulder_slope: {to: body}}]",
    );
    place.write("chain.yaml", chain);
    let chain = place.run(&["check", "chain.yaml", "--document"]).done();
    let (own, chain): (Value, Value) = (
        serde_json::from_str(&own).unwrap(),
        serde_json::from_str(&chain).unwrap(),
    );
    for key in ["pieces", "seams", "girths", "account"] {
        assert_eq!(own[key], chain[key], "{key}");
    }
}

#[test]
fn a_fitting_keeps_its_ease() {
    let place = with_own_block();
    job(&place, "");
    let maren = repository("measurement-sets/maren.yaml");
    let args = [
        "fit",
        "job.yaml",
        maren.to_str().unwrap(),
        "--json",
        "-o",
        "out",
    ];
    let report: Value = serde_json::from_str(&place.run(&args).done()).unwrap();
    let (kept, made) = (
        document(&place, "blocks/mine.json"),
        document(&place, "out/pattern.json"),
    );
    // 985 mm is Maren's bust; the ease is 60 mm and the 24 mm of the block.
    let ease = finished(&kept, "bust") - kept["body"]["bust_girth"]["value"].as_f64().unwrap();
    assert!((ease - 84.0).abs() < 0.1, "{ease}");
    let hers = finished(&made, "bust") - 985.0;
    assert!((hers - ease).abs() < 4.0, "{hers} instead of {ease}");
    assert!(report["steps"].as_array().unwrap().len() > 3);
    // The folder goes on by itself, wherever it is taken.
    std::fs::rename(place.path().join("out"), place.path().join("blocks/fitted")).unwrap();
    place
        .run(&["draft", "blocks/fitted/fitted-job.yaml", "-o", "again"])
        .done();
    let again = document(&place, "again/pattern.json");
    // It names whom it was fitted to, so that her body is compared again.
    assert!(made["fit_map"].is_object());
    assert!(again == made, "the fitted job makes another pattern");
    // Everybody of a table, from the same block.
    let company = repository("examples/jobs/company.csv");
    let company = company.to_str().unwrap();
    place
        .run(&["batch", "job.yaml", company, "--fit", "-o", "all"])
        .done();
    let lines = std::fs::read_to_string(place.path().join("all/results.jsonl")).unwrap();
    assert!(
        lines
            .lines()
            .filter(|line| line.contains("\"status\":\"ok\""))
            .count()
            > 3
    );
    let err = place
        .run(&["batch", "job.yaml", company, "-o", "none"])
        .failed(2);
    assert!(
        err.contains("job.yaml:2:15") && err.contains("drawn once"),
        "{err}"
    );
}

#[test]
fn its_sizes_follow_the_table() {
    let place = with_own_block();
    job(&place, "");
    let table = repository("measurement-sets/workshop-range.yaml");
    place
        .run(&["grade", "job.yaml", table.to_str().unwrap(), "-o", "out"])
        .done();
    let kept = document(&place, "blocks/mine.json");
    // The size that it was made for is the block itself.
    let middle = document(&place, "out/pattern-middle.json");
    assert_eq!(middle["pieces"], kept["pieces"]);
    let body = |document: &Value, name: &str| document["body"][name]["value"].as_f64().unwrap();
    let mut sizes = 0;
    for name in place
        .names("out")
        .iter()
        .filter(|name| name.starts_with("pattern-"))
    {
        let size = document(&place, &format!("out/{name}"));
        for (girth, measurement) in [
            ("bust", "bust_girth"),
            ("waist", "waist_girth"),
            ("hip", "hip_girth"),
        ] {
            let step = finished(&size, girth) - finished(&kept, girth);
            let of_table = body(&size, measurement) - body(&kept, measurement);
            assert!(
                (step - of_table).abs() < 1.0,
                "{name} {girth}: {step} and {of_table}"
            );
        }
        sizes += 1;
    }
    assert_eq!(sizes, 5);
}

#[test]
fn what_only_a_draft_has_is_refused_beside_it() {
    let place = with_own_block();
    job(&place, "ease: close\nsleeve: none\n");
    let err = place.run(&["check", "job.yaml"]).failed(2);
    for key in ["`ease` is for a draft", "`sleeve` is for a draft"] {
        assert!(err.contains(key), "{err}");
    }
    assert!(
        err.contains("job.yaml:3:1") && err.contains("keeps its own ease"),
        "{err}"
    );
}

#[test]
fn a_block_that_cannot_be_used_is_refused_with_its_place() {
    let place = with_own_block();
    let check = |text: &str, code: i32| {
        place.write("job.yaml", format!("title: A\nblock: {text}\n"));
        place.run(&["check", "job.yaml"]).failed(code)
    };
    let err = check("{file: blocks/gone.json}", 2);
    assert!(
        err.contains("job.yaml:2:15: block.file") && err.contains("meant from the folder"),
        "{err}"
    );
    let err = check("{fil: blocks/mine.json}", 2);
    assert!(err.contains("did you mean `file`?"), "{err}");
    let err = check("{}", 2);
    assert!(err.contains("write `file:`"), "{err}");
    let kept = document(&place, "blocks/mine.json");
    let spoiled = |change: &dyn Fn(&mut Value)| {
        let mut document = kept.clone();
        change(&mut document);
        place.write("blocks/mine.json", document.to_string());
        check("{file: blocks/mine.json}", 1)
    };
    let err = spoiled(&|d| d["pieces"][0]["edges"][2]["path"] = "M0,0 L1".into());
    assert!(err.contains("/pieces/0/edges/2/path"), "{err}");
    let err = spoiled(&|d| d["block"] = "cape".into());
    assert!(
        err.contains("is a `cape`") && err.contains("`bodice and skirt`"),
        "{err}"
    );
    let err = spoiled(&|d| d["seams"][0]["ease"] = 30.into());
    assert!(
        err.contains("cannot be used") && err.contains("mine.json"),
        "{err}"
    );
    let mut nobody = kept.clone();
    nobody["body"] = serde_json::json!({});
    place.write("blocks/mine.json", nobody.to_string());
    let err = check("{file: blocks/mine.json}", 2);
    assert!(err.contains("for which body it was made"), "{err}");
}
