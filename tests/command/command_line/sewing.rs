//! Patterns sewn on screen by the command `toile`.

use crate::support::command::{BODY, Place};
use serde_json::Value;

/// A short skirt: the least cloth that hangs.
fn skirt(more: &str) -> String {
    format!("title: Short skirt\nblock: skirt\nlength: 36 cm\nbody: {BODY}\n{more}")
}

const FILES: [&str; 6] = [
    "toile-pattern-cloth.png",
    "toile-pattern-gap.png",
    "toile-pattern-strain.png",
    "toile-pattern.obj",
    "toile.html",
    "toile.json",
];

#[test]
fn a_toile_is_written_and_is_the_same_on_any_number_of_threads() {
    let place = Place::with_job(&skirt("cloth: {weight: 150, bending_length: 2 cm}\n"));
    let sewn = |to: &str, threads: &str| {
        let mut command = place.command(&["toile", "job.yaml", "--draft", "-o", to]);
        let output = command.env("RAYON_NUM_THREADS", threads).output().unwrap();
        crate::support::command::Ran::from(&output).done()
    };
    let report = sewn("one", "1");
    assert!(
        report.contains("cloth of 150 g/m² with a bending length of 20.0 mm"),
        "{report}"
    );
    assert!(report.contains("It replaces no toile in cloth"), "{report}");
    assert_eq!(place.names("one"), FILES);
    sewn("two", "3");
    let bytes =
        |folder: &str, name: &str| std::fs::read(place.path().join(folder).join(name)).unwrap();
    for name in FILES {
        assert_eq!(bytes("one", name), bytes("two", name), "{name}");
    }
    let document: Value = serde_json::from_slice(&bytes("one", "toile.json")).unwrap();
    assert_eq!(document["format"], "blockwright-toile");
    let case = &document["cases"][0];
    assert!(case["rest"]["residual"].as_f64().unwrap() < 0.02, "{case}");
    // A skirt of 36 cm hangs that far down, within what a picture is good to.
    let hem = case["measures"]["hem"]["front"].as_f64().unwrap();
    assert!((-375.0..-345.0).contains(&hem), "{hem}");
    for name in &FILES[..3] {
        assert!(bytes("one", name).starts_with(b"\x89PNG\r\n"), "{name}");
    }
    let page = String::from_utf8(bytes("one", "toile.html")).unwrap();
    let data = page
        .split("id=\"model\">")
        .nth(1)
        .unwrap()
        .split("</script>")
        .next()
        .unwrap();
    let model: Value = serde_json::from_str(data).unwrap();
    let points = model["cloths"][0]["points"].as_array().unwrap().len() / 3;
    let corners = model["cloths"][0]["triangles"].as_array().unwrap();
    assert!(
        corners
            .iter()
            .all(|c| (c.as_u64().unwrap() as usize) < points)
    );
    let object = String::from_utf8(bytes("one", "toile-pattern.obj")).unwrap();
    let drawn = object.lines().filter(|line| line.starts_with("v ")).count();
    assert!(drawn > points, "cloth and stand");
}

#[test]
fn what_cannot_be_sewn_is_refused() {
    let place = Place::with_job(&skirt(""));
    let failed = |more: &[&str], code: i32| {
        let plain = ["toile", "job.yaml", "-o", "out", "--draft"];
        place.run(&[&plain[..], more].concat()).failed(code)
    };
    assert!(failed(&["--seating", "floating"], 2).contains("neckline"));
    assert!(failed(&["--weight", "150"], 2).contains("--bending-length"));
    assert!(failed(&["--weight", "4", "--bending-length", "2cm"], 2).contains("20 to 1000"));
    assert!(failed(&["--weight", "NaN", "--bending-length", "2cm"], 2).contains("20 to 1000"));
    assert!(failed(&["--wearer", "nobody.yaml"], 2).contains("nobody.yaml"));
    for (cloth, said) in [
        ("plain_wol", "did you mean `plain_wool`"),
        ("{weight: 150}", "`bending_length` is missing"),
        ("{weight: 1e9, bending_length: 20}", "20 to 1000 g/m²"),
        ("{weight: 150, bending_length: 2 m}", "bending_length"),
        (
            "{weight: 150, bending_length: 20, stretch: -1}",
            "10 to 100000 N/m",
        ),
        ("[1, 2]", "plain_wool"),
    ] {
        place.write("job.yaml", skirt(&format!("cloth: {cloth}\n")));
        let message = failed(&[], 2);
        assert!(message.contains(said), "{cloth}: {message}");
    }
    assert!(!place.path().join("out").exists());
}
