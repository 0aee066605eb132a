//! The files of every wearer, in folders of their own.

use std::fs;

use super::company::{HEADER, batch, lines, place};

const ROWS: &str = "ada,1680,920,760,1000\n\
                    ../bea,1700,960,800,1040\n\
                    cid,1680,92,760,1000\n";
const JOB: &str = "title: Skirts\nblock: skirt\ndxf: true\n";

/// Each is what `draft` writes for her alone, byte for byte; who is refused has no folder.
#[test]
fn every_wearer_has_the_files_that_draft_writes() {
    let place = place(JOB, format!("{HEADER}{ROWS}"));
    batch(&place, &["--files"]).done();
    assert_eq!(place.names("out"), ["files", "results.jsonl"]);
    assert_eq!(place.names("out/files"), ["_bea", "ada"]);
    assert_eq!(lines(&place).len(), 3);
    let body = "{name: ada, unit: mm, measurements: \
                {height: 1680, bust_girth: 920, waist_girth: 760, hip_girth: 1000}}";
    place.write("single.yaml", format!("{JOB}body: {body}\n"));
    place.run(&["draft", "single.yaml", "-o", "single"]).done();
    let names = place.names("single");
    assert!(
        names.contains(&"pattern.dxf".to_owned()) && names.len() > 5,
        "{names:?}"
    );
    assert_eq!(place.names("out/files/ada"), names);
    for name in names.iter().filter(|name| !name.starts_with('.')) {
        let read = |folder: &str| fs::read(place.path().join(folder).join(name)).unwrap();
        assert!(read("single") == read("out/files/ada"), "{name}");
    }
    // Again: an earlier result is replaced on request alone.
    batch(&place, &["--files"]).failed(2);
    batch(&place, &["--files", "--force"]).done();
    assert_eq!(place.names("out/files"), ["_bea", "ada"]);
}

/// Nothing is written where lines go to standard output.
#[test]
fn files_need_a_folder() {
    let place = place(JOB, format!("{HEADER}{ROWS}"));
    place
        .run(&["batch", "job.yaml", "people.csv", "--files"])
        .failed(2);
}
