//! Laying pieces on cloth.

use crate::support::command::{Place, job};
use serde_json::Value;

fn bytes(place: &Place, name: &str) -> Vec<u8> {
    std::fs::read(place.path().join(name)).unwrap()
}

#[test]
fn a_lay_is_reported_written_and_made_again() {
    let place = Place::with_job(&(job("bodice") + "allowance: {default: 10}\n"));
    let lay = |more: &[&str], to: &str| {
        let plain = ["lay", "job.yaml", "--width", "90cm", "-o", to];
        place.run(&[&plain[..], more].concat())
    };
    let message = lay(&["--seed", "7", "--rounds", "60"], "one").done();
    assert!(
        message.contains("Length needed") && message.contains("--seed 7 --rounds 60"),
        "{message}"
    );
    assert!(message.contains("lay.svg, lay.pdf, lay.json"), "{message}");
    assert!(!message.contains("no_allowance"), "{message}");
    lay(&["--seed", "7", "--rounds", "60", "--json"], "two").done();
    for name in ["lay.svg", "lay.pdf", "lay.json"] {
        assert_eq!(
            bytes(&place, &format!("one/{name}")),
            bytes(&place, &format!("two/{name}"))
        );
    }
    let document: Value = serde_json::from_slice(&bytes(&place, "one/lay.json")).unwrap();
    assert_eq!(document["format"], "blockwright-lay");
    assert_eq!(document["cloth"]["width"], 900.0);
    let pieces = document["stretches"][0]["pieces"].as_array().unwrap();
    assert_eq!(pieces.len(), 2, "back and front, unfolded");
    assert!(pieces.iter().all(|p| p["turn"] == 0 || p["turn"] == 180));
    let number = |key: &str| document[key].as_f64().unwrap();
    assert!(number("length_to_buy") >= number("length") + 20.0);
    assert!(number("length_to_buy") < number("length") + 70.0);
    assert_eq!(number("length_to_buy") % 50.0, 0.0);
    assert!(number("density") > 0.3 && number("density") < 1.0);
    let picture = String::from_utf8(bytes(&place, "one/lay.svg")).unwrap();
    roxmltree::Document::parse(&picture).unwrap();
    assert!(picture.contains("selvedge") && picture.contains("BACK"));
}

#[test]
fn without_a_seed_the_clock_decides_and_the_result_can_be_made_again() {
    let place = Place::with_job(&job("tunic"));
    let first = [
        "lay",
        "job.yaml",
        "--width",
        "55in",
        "--folded",
        "--seconds",
        "1",
        "--json",
    ];
    let message = place.run(&[&first[..], &["-o", "one"]].concat()).done();
    let report: Value = serde_json::from_str(&message).unwrap();
    assert_eq!(report["status"], "ok");
    let (seed, rounds) = (report["seed"].to_string(), report["rounds"].to_string());
    let again = [
        "lay", "job.yaml", "--width", "55in", "--folded", "--seed", &seed, "--rounds", &rounds,
    ];
    place.run(&[&again[..], &["-o", "two"]].concat()).done();
    assert_eq!(bytes(&place, "one/lay.json"), bytes(&place, "two/lay.json"));
    assert_eq!(report["warnings"][0]["code"], "no_allowance");
    // Half the width holds no two pieces on the fold beside one another.
    assert_eq!(report["warnings"][1]["code"], "shorter_not_folded");
    // An earlier lay is replaced only when asked.
    let once = place.run(&[&again[..], &["-o", "two"]].concat()).failed(2);
    assert!(once.contains("--force"), "{once}");
    place
        .run(&[&again[..], &["-o", "two", "--force"]].concat())
        .done();
}

#[test]
fn cloth_that_cannot_serve_is_refused_and_nothing_written() {
    let place = Place::with_job(&job("dress"));
    let lay = |width: &str, more: &[&str]| {
        let plain = [
            "lay", "job.yaml", "--width", width, "--seed", "1", "-o", "out",
        ];
        place.run(&[&plain[..], more].concat())
    };
    let message = lay("40cm", &[]).failed(1);
    assert!(
        message.contains("does not fit") && message.contains("40 cm between"),
        "{message}"
    );
    let message = lay("40cm", &["--json"]).failed(1);
    let json: Value = serde_json::from_str(&message).unwrap();
    assert_eq!(json["errors"][0]["code"], "cloth_too_narrow");
    for (width, more) in [
        ("140", &[][..]),
        ("1mm", &[]),
        ("20m", &[]),
        ("wide", &[]),
        ("140cm", &["--gap", "20cm"]),
        ("140cm", &["--seconds", "3"]),
    ] {
        let message = lay(width, more).failed(2);
        assert!(!message.is_empty());
    }
    assert!(!place.path().join("out").exists());
}

#[test]
fn several_wearers_are_cut_from_one_cloth() {
    let place = Place::with_job(&job("skirt"));
    let repository = |name: &str| {
        let root = env!("CARGO_MANIFEST_DIR");
        format!("{root}/measurement-sets/{name}.yaml")
    };
    let (ines, odile) = (repository("ines"), repository("odile") + "=2");
    let plain = [
        "lay", "job.yaml", "--width", "140cm", "--seed", "1", "--rounds", "40",
    ];
    let both = ["--wearer", &ines, "--wearer", &odile, "-o", "out", "--json"];
    let message = place.run(&[&plain[..], &both].concat()).done();
    let report: Value = serde_json::from_str(&message).unwrap();
    let pieces = report["stretches"][0]["pieces"].as_array().unwrap();
    assert_eq!(pieces.len(), 6, "front and back of three skirts");
    let size = |begins: &str| {
        let mine = pieces.iter().filter(|piece| {
            let name = piece["name"].as_str().unwrap().to_lowercase();
            name.contains(begins) && name.ends_with("back")
        });
        let mine: Vec<f64> = mine
            .map(|piece| piece["size"][1].as_f64().unwrap())
            .collect();
        (mine.len(), mine[0])
    };
    let (one, two) = (size("ines"), size("odile"));
    assert_eq!((one.0, two.0), (1, 2), "{pieces:?}");
    assert!(
        (one.1 - two.1).abs() > 1.0,
        "each is cut to her own measurements"
    );
    let none = ["--wearer", &(repository("ines") + "=none"), "-o", "out"];
    let message = place.run(&[&plain[..], &none].concat()).failed(2);
    assert!(message.contains("=2"), "{message}");
}

/// Ctrl-C, as a terminal sends it.
#[cfg(unix)]
#[test]
fn stopped_by_ctrl_c_the_best_so_far_is_written() {
    let place = Place::with_job(&job("tunic"));
    let mut child = place
        .command(&[
            "lay",
            "job.yaml",
            "--width",
            "140cm",
            "--seed",
            "3",
            "--rounds",
            "1000000000",
            "-o",
            "out",
        ])
        .stdin(std::process::Stdio::null())
        .stdout(std::process::Stdio::null())
        .spawn()
        .unwrap();
    std::thread::sleep(std::time::Duration::from_millis(1500));
    let sent = std::process::Command::new("kill")
        .args(["-INT", &child.id().to_string()])
        .status()
        .unwrap();
    assert!(sent.success());
    assert!(child.wait().unwrap().success(), "it ends well");
    let document: Value = serde_json::from_slice(&bytes(&place, "out/lay.json")).unwrap();
    let rounds = document["rounds"].as_u64().unwrap();
    assert!(0 < rounds && rounds < 1_000_000_000, "{rounds}");
    // The rounds that were made give the same lay again.
    let (rounds, again) = (
        rounds.to_string(),
        ["--width", "140cm", "--seed", "3", "--rounds"],
    );
    let args = [&["lay", "job.yaml"][..], &again, &[&rounds, "-o", "again"]].concat();
    place.run(&args).done();
    assert_eq!(
        bytes(&place, "out/lay.json"),
        bytes(&place, "again/lay.json")
    );
}
