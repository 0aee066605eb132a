//! Tables of people to try the command on.

use std::fs;

use serde_json::Value;

use crate::support::command::{Place, Ran};

/// A dress with sleeve and three alterations.
pub const DRESS: &str = "title: Costume\nblock: dress\nsleeve: long\nalterations:\n  \
    - back_length_reduction: {amount: 12, hips_checked: true}\n  \
    - shoulder_slope: {degrees: 2}\n  \
    - dart_relocation: {dart: bust, to: shoulder, at: 0.5}\n";

pub const HEADER: &str = "id,height,bust_girth,waist_girth,hip_girth\n";

/// A table of so many people of invented measurements, each unlike the others.
pub fn people(count: u32) -> String {
    let mut text = HEADER.to_owned();
    for n in 0..count {
        let (height, bust) = (1520 + n * 37 % 300, 800 + n * 53 % 330);
        let (waist, hip) = (bust - 190 + n * 29 % 80, bust + 20 + n * 17 % 110);
        text.push_str(&format!("p{n:04},{height},{bust},{waist},{hip}\n"));
    }
    text
}

/// A place with a job and a table.
pub fn place(job: &str, people: impl AsRef<[u8]>) -> Place {
    let place = Place::with_job(job);
    place.write("people.csv", people);
    place
}

/// Runs the batch of a place into `out`.
pub fn batch(place: &Place, more: &[&str]) -> Ran {
    let mut args = vec!["batch", "job.yaml", "people.csv", "-o", "out"];
    args.extend(more);
    place.run(&args)
}

pub fn results(place: &Place) -> String {
    fs::read_to_string(place.path().join("out/results.jsonl")).unwrap()
}

/// The lines of the results, read.
pub fn lines(place: &Place) -> Vec<Value> {
    let text = results(place);
    let lines = text.lines().map(|line| serde_json::from_str(line).unwrap());
    lines.collect()
}

/// The one line of a table of one row under the usual header, and the report.
pub fn one(row: &str) -> (Value, String) {
    let place = place(
        "title: S\nblock: skirt\n",
        [HEADER.as_bytes(), row.as_bytes()].concat(),
    );
    let message = batch(&place, &[]).done();
    let mut all = lines(&place);
    assert_eq!(all.len(), 1, "{row}");
    (all.remove(0), message)
}
