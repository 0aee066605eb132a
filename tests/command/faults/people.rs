//! Tables of people with cells and rows beyond reason.

use super::files::{PEOPLE, place};
use super::guard::{guarded, refused};

#[test]
fn a_cell_of_any_size_refuses_its_row_or_the_file_and_is_not_repeated() {
    let place = place();
    let batch = ["batch", "job.yaml", "people.csv", "-o", "out", "--force"];
    let huge = "7".repeat(900_000);
    place.write("people.csv", format!("{PEOPLE}bea,1680,920,{huge},1000\n"));
    let message = guarded(&place, &batch).done();
    assert!(
        message.contains("2 wearers: 1 made, 1 refused"),
        "{message}"
    );
    let text = std::fs::read_to_string(place.path().join("out/results.jsonl")).unwrap();
    let line = text.lines().nth(1).unwrap();
    assert!(
        line.contains("waist_girth_") && line.len() < 1_000,
        "{}",
        line.len()
    );
    std::fs::remove_dir_all(place.path().join("out")).unwrap();
    let beyond = "7".repeat(3_000_000);
    for table in [
        format!("{PEOPLE}bea,1680,920,{beyond},1000\n"),
        format!("{PEOPLE}bea,1680,920,760,1000,{}\n", ",".repeat(3_000_000)),
        format!("{}\n", "height,".repeat(400_000)),
        format!("{}\n", "x".repeat(900_000)),
        "\"".repeat(900_001),
    ] {
        place.write("people.csv", table);
        let message = refused(&place, &batch);
        assert!(
            message.contains("people.csv") && message.len() < 2_000,
            "{message}"
        );
    }
}
