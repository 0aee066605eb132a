//! One line a row, in the order of the rows, with the keys that others read.

use std::collections::BTreeSet;

use kurbo::{BezPath, ParamCurveArclen as _};
use serde_json::Value;

use super::company::{DRESS, HEADER, batch, lines, one, people, place, results};

/// Length of the edges of that name on pieces of one side, measured on the document's paths.
fn drawn(pattern: &Value, edge: &str) -> f64 {
    let pieces = pattern["pieces"].as_array().unwrap().iter();
    let of_side = pieces.filter(|p| !p["name"].as_str().unwrap().ends_with("right"));
    let edges = of_side.flat_map(|p| p["edges"].as_array().unwrap());
    edges
        .filter(|e| e["name"] == edge)
        .map(|e| {
            let path = BezPath::from_svg(e["path"].as_str().unwrap()).unwrap();
            path.segments().map(|s| s.arclen(1e-6)).sum::<f64>()
        })
        .sum()
}

#[test]
fn a_line_has_the_keys_that_are_fixed() {
    let place = place(
        DRESS,
        format!("{HEADER}ada,1680,920,760,1000\nbea,1680,92,760,1000\n"),
    );
    batch(&place, &[]).done();
    let text = results(&place);
    let [ok, refused] = text.lines().collect::<Vec<_>>()[..] else {
        panic!("{text}");
    };
    assert!(ok.starts_with("{\"id\":\"ada\",\"status\":\"ok\",\"reason\":null,\"armscye\":"));
    assert!(refused.starts_with(
        "{\"id\":\"bea\",\"status\":\"refused\",\"reason\":\"bust_girth_impossible: bust_girth \
         92 mm is impossible: it lies between 650 mm and 1750 mm; was it meant in cm?\",\
         \"armscye\":null,\"sleeve_cap\":null,\"warnings\":[]}"
    ));
    let keys =
        |line: &Value| -> BTreeSet<String> { line.as_object().unwrap().keys().cloned().collect() };
    let expected = [
        "armscye",
        "id",
        "reason",
        "sleeve_cap",
        "status",
        "warnings",
    ];
    for line in lines(&place) {
        assert_eq!(keys(&line), expected.map(str::to_owned).into());
    }
    batch(&place, &["--patterns", "--force"]).done();
    let all = lines(&place);
    assert!(all[0]["pattern"].is_object() && all[1]["pattern"].is_null());
    assert_eq!(keys(&all[1]).len(), 7);
}

#[test]
fn the_pattern_is_the_one_that_draft_writes() {
    // Allowances too, so that the cut line is there.
    let job = format!("{DRESS}allowance: {{default: 15, hem: 40}}\ncap_ease: 20\n");
    let place = place(&job, format!("{HEADER}ada,1680,920,760,1000\n"));
    batch(&place, &["--patterns"]).done();
    let line = lines(&place).remove(0);
    let body = "{name: ada, unit: mm, measurements: \
                {height: 1680, bust_girth: 920, waist_girth: 760, hip_girth: 1000}}";
    place.write("single.yaml", format!("{job}body: {body}\n"));
    place.run(&["draft", "single.yaml", "-o", "single"]).done();
    let text = std::fs::read_to_string(place.path().join("single/pattern.json")).unwrap();
    let single: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(line["pattern"], single);
    assert!(single["pieces"][0]["cut_line"].is_string());
    assert_eq!(line["warnings"], single["warnings"]);
}

#[test]
fn armscye_and_cap_are_those_of_the_paths() {
    for (job, has_armscye, has_cap) in [
        (DRESS.to_owned(), true, true),
        (
            DRESS.replace("degrees: 2", "degrees: 2, side: left"),
            true,
            true,
        ),
        ("title: B\nblock: bodice\n".to_owned(), true, false),
        ("title: S\nblock: skirt\n".to_owned(), false, false),
    ] {
        let place = place(&job, people(6));
        batch(&place, &["--patterns"]).done();
        for line in lines(&place) {
            let Some(armscye) = line["armscye"].as_f64() else {
                assert!(!has_armscye || line["status"] == "refused", "{line}");
                continue;
            };
            assert!(has_armscye);
            assert!((armscye - drawn(&line["pattern"], "armscye")).abs() < 0.01);
            assert_eq!(line["sleeve_cap"].is_number(), has_cap);
            if has_cap {
                let cap = line["sleeve_cap"].as_f64().unwrap();
                assert!((cap - drawn(&line["pattern"], "sleeve_cap")).abs() < 0.01);
                let seams = line["pattern"]["seams"].as_array().unwrap();
                let seam = seams
                    .iter()
                    .find(|s| s["name"].as_str().unwrap().starts_with("armscye"))
                    .unwrap();
                // To the tolerance that a seam of an altered pattern has.
                let ease = seam["ease"].as_f64().unwrap();
                assert!((cap - armscye - ease).abs() < 0.1, "{cap} {armscye} {ease}");
            }
        }
    }
}

#[test]
fn the_number_of_threads_changes_no_byte() {
    let place = place(DRESS, people(150));
    let mut all = Vec::new();
    for threads in ["1", "2", "5"] {
        batch(&place, &["--threads", threads, "--force"]).done();
        all.push(results(&place));
    }
    assert_eq!(all[0].lines().count(), 150);
    assert!(all.iter().all(|text| *text == all[0]));
    for (row, line) in lines(&place).iter().enumerate() {
        assert_eq!(line["id"], format!("p{row:04}"));
    }
    for threads in ["0", "-1", "two", "100000"] {
        batch(&place, &["--threads", threads, "--force"]).failed(2);
    }
}

#[test]
fn refused_rows_are_counted_by_reason_and_lose_nobody() {
    let rows = "ada,1680,920,760,1000\n\
                bea,1680,92,760,1000\n\
                cid,1680,many,,1000\n\
                ada,1700,930,770,1010\n\
                ,1680,91,760,1000\n\
                eve,1680,920,760\n";
    let place = place("title: Skirts\nblock: skirt\n", format!("{HEADER}{rows}"));
    let message = batch(&place, &[]).done();
    assert!(
        message.starts_with("Skirts\nskirt block, 6 wearers: 2 made, 4 refused\n"),
        "{message}"
    );
    assert!(
        message.contains(
            "2  bust_girth_impossible, first row 2 (bea): bust_girth 92 mm is impossible"
        ),
        "{message}"
    );
    assert!(
        message.contains("1  bust_girth_unreadable, first row 3 (cid)"),
        "{message}"
    );
    assert!(
        message.contains("1  wrong_number_of_cells, first row 6 (eve)"),
        "{message}"
    );
    assert!(message.contains("ada: row 4, as row 1\n"), "{message}");
    let all = lines(&place);
    let ids: Vec<&str> = all
        .iter()
        .map(|line| line["id"].as_str().unwrap())
        .collect();
    assert_eq!(ids, ["ada", "bea", "cid", "ada", "5", "eve"]);
    let report = batch(&place, &["--force", "--json"]).done();
    let report: Value = serde_json::from_str(&report).unwrap();
    assert_eq!(
        (&report["rows"], &report["ok"], &report["refused"]),
        (&6.into(), &2.into(), &4.into())
    );
    assert_eq!(report["refusals"][0]["rows"], 2);
    assert_eq!(report["first_repeated_ids"][0]["first_row"], 1);
}

#[test]
fn a_body_that_bears_no_pattern_refuses_its_row_alone() {
    let job = "title: B\nblock: dress\nsleeve: long\nalterations:\n  \
               - back_length_reduction: {amount: 32, hips_checked: true}\n";
    let table = "id,height,bust_girth,waist_girth,hip_girth,upper_arm_girth\n\
                 ada,1680,920,760,1000,\nbea,1680,920,760,1000,520\ncid,1680,920,760,1000,300\n";
    let place = place(job, table);
    batch(&place, &[]).done();
    let all = lines(&place);
    let status: Vec<&str> = all.iter().map(|l| l["status"].as_str().unwrap()).collect();
    assert_eq!(status, ["ok", "refused", "ok"]);
    assert!(
        all[1]["reason"]
            .as_str()
            .unwrap()
            .contains("_out_of_reach: "),
        "{}",
        all[1]
    );
    // An alteration too large is counted by its name.
    let place = super::company::place(&job.replace("32", "200"), table);
    let message = batch(&place, &[]).done();
    assert!(
        message.contains("3 wearers: 0 made, 3 refused"),
        "{message}"
    );
    assert!(
        message.contains("2  back_length_reduction_refused, first row 1"),
        "{message}"
    );
}

#[test]
fn the_body_of_the_job_is_passed_over() {
    // It is not even looked for.
    let place = place(
        "title: S\nblock: skirt\nbody: nowhere.yaml\n",
        format!("{HEADER}ada,1680,920,760,1000\n"),
    );
    batch(&place, &[]).done();
    assert_eq!(lines(&place)[0]["status"], "ok");
}

#[test]
fn an_empty_cell_is_estimated() {
    let (line, _) = one("ada,1680,920,760,1000\n");
    let place = place(
        "title: S\nblock: skirt\n",
        "id,waist_to_hip,height,bust_girth,waist_girth,hip_girth\nada, ,1680,920,760,1000\n\
         ada,230,1680,920,760,1000\n",
    );
    batch(&place, &["--patterns"]).done();
    let all = lines(&place);
    assert_eq!(all[0]["warnings"], line["warnings"]);
    let source = |n: usize| all[n]["pattern"]["body"]["waist_to_hip"]["source"].clone();
    assert_eq!((source(0), source(1)), ("estimated".into(), "taken".into()));
}
