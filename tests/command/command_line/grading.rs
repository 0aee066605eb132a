//! `grade`: a folder of a whole range, or nothing.

use std::fs;

use crate::support::command::{Place, job, repository};

const TABLE: &str = "name: A range\nunit: cm\ncommon: {height: 168}\nsizes:\n  \
    '38': {bust_girth: 88, waist_girth: 72, hip_girth: 96}\n  \
    '40': {bust_girth: 92, waist_girth: 76, hip_girth: 100}\n  \
    '44/46': {bust_girth: 100, waist_girth: 84, hip_girth: 107}\n";

fn place() -> Place {
    let place = Place::with_job("title: A block\nblock: dress\nsleeve: long\n");
    place.write("table.yaml", TABLE);
    place
}

fn grade(place: &Place, more: &[&str]) -> crate::support::command::Ran {
    let mut args = vec!["grade", "job.yaml", "table.yaml", "-o", "out"];
    args.extend(more);
    place.run(&args)
}

#[test]
fn a_range_is_written_whole() {
    let place = place();
    let message = grade(&place, &[]).done();
    assert!(message.contains("Sizes: 38, 40, 44/46"), "{message}");
    assert!(message.contains("back shoulder length"), "{message}");
    let names = [
        "increments.csv",
        "nest-a4.pdf",
        "nest-sheet.pdf",
        "nest.svg",
        "pattern-38.json",
        "pattern-40.json",
        "pattern-44-46.json",
        "range.json",
        "size-chart.csv",
        "size-chart.html",
    ];
    assert_eq!(place.names("out"), names);
    let read = |name: &str| fs::read(place.path().join("out").join(name)).unwrap();
    let range: serde_json::Value = serde_json::from_slice(&read("range.json")).unwrap();
    assert_eq!(range["format"], "blockwright-range");
    assert_eq!(range["sizes"][2]["label"], "44/46");
    for (number, name) in names[4..7].iter().enumerate() {
        let single: serde_json::Value = serde_json::from_slice(&read(name)).unwrap();
        assert_eq!(single, range["sizes"][number]["pattern"]);
    }
    let svg = String::from_utf8(read("nest.svg")).unwrap();
    assert!(svg.contains("data-name=\"size 44/46\""));
    let csv = String::from_utf8(read("increments.csv")).unwrap();
    let columns: Vec<usize> = csv.lines().map(|line| line.split(',').count()).collect();
    assert!(columns.iter().all(|count| *count == 7), "{csv}");
    // The nest in layers that a viewer can switch, and one for the marks of the pages.
    let pdf = lopdf::Document::load_mem(&read("nest-a4.pdf")).unwrap();
    let catalog = pdf.catalog().unwrap();
    let layers = pdf.get_dict_in_dict(catalog, b"OCProperties").unwrap();
    assert_eq!(layers.get(b"OCGs").unwrap().as_array().unwrap().len(), 5);
    // Again, over the earlier result: the same bytes.
    let before = read("nest-a4.pdf");
    grade(&place, &["--force"]).done();
    assert_eq!(before, read("nest-a4.pdf"));
}

#[test]
fn a_part_of_the_table_on_another_point_and_paper() {
    let place = place();
    let message = grade(
        &place,
        &[
            "--size", "44/46", "--size", "38", "--align", "nape", "--paper", "letter", "--json",
        ],
    )
    .done();
    let report: serde_json::Value = serde_json::from_str(&message).unwrap();
    assert_eq!(report["sizes"].as_array().unwrap().len(), 2);
    assert_eq!(
        (&report["status"], &report["align"]),
        (&"ok".into(), &"nape".into())
    );
    assert!(place.names("out").contains(&"nest-letter.pdf".to_owned()));
}

#[test]
fn what_cannot_be_graded_writes_nothing_and_names_the_size() {
    let place = place();
    let message = grade(&place, &["--size", "42"]).failed(2);
    assert!(
        message.contains("no size `42`; it has 38, 40, 44/46"),
        "{message}"
    );
    grade(&place, &["--align", "knee"]).failed(2);
    place.write(
        "table.yaml",
        TABLE.replace("hip_girth: 100}", "hip_girth: 100, upper_arm_girth: 52}"),
    );
    let message = grade(&place, &[]).failed(1);
    assert!(
        message.contains("size 40: the block cannot be drafted"),
        "{message}"
    );
    for label in ["../up", "a:b", "Größe", "38 "] {
        place.write("table.yaml", TABLE.replace("'40'", &format!("'{label}'")));
        let ran = grade(&place, &[]);
        assert_eq!(ran.code, 2, "{label}: {ran:?}");
    }
    place.write("table.yaml", TABLE.replace("'40'", "'44 46'"));
    let message = grade(&place, &[]).failed(2);
    assert!(message.contains("pattern-44-46.json already"), "{message}");
    place.write(
        "table.yaml",
        "name: A\nunit: cm\nsizes: {'38': {bust_girth: 88}}\n",
    );
    grade(&place, &[]).failed(2);
    assert_eq!(place.names("."), ["job.yaml", "table.yaml"]);
}

#[test]
fn the_body_of_the_job_is_passed_over_and_said_so() {
    let place = place();
    place.write("job.yaml", job("skirt"));
    let message = grade(&place, &[]).done();
    assert!(
        message.contains("body_unused: the body of the job is not used"),
        "{message}"
    );
    place.write("job.yaml", "title: T\nblock: skirt\n");
    let message = place.run(&["draft", "job.yaml", "-o", "single"]).failed(2);
    assert!(message.contains("`body` is missing"), "{message}");
}

#[test]
fn with_allowances_every_size_is_cut_along_its_own_line() {
    let place = place();
    let message = grade(&place, &[]).done();
    assert!(message.contains("without seam allowance"), "{message}");
    let job = |allowance: &str| {
        let text = format!("title: A block\nblock: dress\nsleeve: long\nallowance: {allowance}\n");
        place.write("job.yaml", text);
    };
    job("{default: 15, hem: 40, waist: 10, centre_back: 20}");
    let message = grade(&place, &["--force", "--dxf"]).done();
    assert!(message.contains("Seam allowance is included"), "{message}");
    assert!(!message.contains("has no effect on a range"), "{message}");
    // Every place that is not cut is reported once for all sizes.
    for unused in ["waist", "centre_back"] {
        let wanted = format!("allowance_unused (every size): the allowance at {unused} has no");
        assert_eq!(message.matches(&wanted).count(), 1, "{message}");
    }
    let read = |name: &str| fs::read_to_string(place.path().join("out").join(name)).unwrap();
    for size in ["38", "40", "44-46"] {
        let text = read(&format!("pattern-{size}.json"));
        let document: serde_json::Value = serde_json::from_str(&text).unwrap();
        for piece in document["pieces"].as_array().unwrap() {
            assert!(piece["cut_line"].as_str().unwrap().starts_with('M'));
        }
    }
    let range: serde_json::Value = serde_json::from_str(&read("range.json")).unwrap();
    assert!(range["sizes"][2]["pattern"]["pieces"][0]["cut_line"].is_string());
    let svg = read("nest.svg");
    assert!(svg.contains("seam allowance included: 1.5 cm,"));
    assert!(!svg.contains("add seam allowance"));
    // The first size without room for so wide an allowance is named, and nothing is changed.
    let before = place.names("out");
    job("100");
    let message = grade(&place, &["--force", "--json"]).failed(1);
    let report: serde_json::Value = serde_json::from_str(&message).unwrap();
    assert_eq!(
        report["errors"][0]["code"], "no_room_for_allowance",
        "{message}"
    );
    assert!(message.contains("size 38: the seam allowance cannot be added"));
    assert_eq!(place.names("out"), before);
}

#[test]
fn a_wearer_between_sizes_is_one_job() {
    let place = place();
    let job = |body: &str| {
        place.write(
            "job.yaml",
            format!("title: T\nblock: skirt\nbody: {body}\n"),
        );
        place.run(&["check", "job.yaml", "--json"])
    };
    let message = job("{table: table.yaml, size: 40, sizes: {hip_girth: 44/46}}").done();
    let report: serde_json::Value = serde_json::from_str(&message).unwrap();
    let girth = |name: &str| {
        let girths = report["girths"].as_array().unwrap();
        girths.iter().find(|g| g["name"] == name).unwrap()["body"].clone()
    };
    assert_eq!(
        (girth("waist"), girth("hip")),
        (760.0.into(), 1070.0.into())
    );
    for (body, expected) in [
        ("{table: table.yaml, size: 41}", "no size `41`"),
        ("{table: table.yaml}", "`size` is missing"),
        ("{table: table.yaml, size: 40, sizes: {hip: 38}}", "hip"),
        (
            "{table: table.yaml, size: 40, sizes: {wrist_girth: 38}}",
            "gives no `wrist_girth`",
        ),
        (
            "{table: table.yaml, size: 40, sizes: 38}",
            "a mapping from measurements to sizes",
        ),
        ("{table: none.yaml, size: 40}", "none.yaml"),
    ] {
        let message = job(body).failed(2);
        assert!(message.contains(expected), "{body}: {message}");
    }
}

#[test]
fn the_range_of_the_handbook_is_graded() {
    let place = Place::new();
    let path = |name: &str| repository(name).display().to_string();
    let (job, table) = (
        path("examples/jobs/linen-tunic.yaml"),
        path("measurement-sets/workshop-range.yaml"),
    );
    place.run(&["grade", &job, &table, "-o", "chorus"]).done();
    assert!(
        place
            .names("chorus")
            .contains(&"pattern-largest.json".to_owned())
    );
}
