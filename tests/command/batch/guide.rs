//! What the guide shows of a batch is what comes out.

use std::fs;

use crate::support::command::{Place, repository};

#[test]
fn the_company_of_the_guide_is_made() {
    let section = fs::read_to_string(repository("src/guide/batch.md")).unwrap();
    let (job, people) = ("examples/jobs/company.yaml", "examples/jobs/company.csv");
    assert!(
        section.contains(&format!("batch {job} {people} -o company")),
        "{section}"
    );
    let place = Place::new();
    let path = |name: &str| repository(name).display().to_string();
    let out = place
        .run(&["batch", &path(job), &path(people), "-o", "company"])
        .done();
    let (report, _) = out.split_once("\nWritten to company").unwrap();
    assert!(section.contains(report), "{report}");
    let results = fs::read_to_string(place.path().join("company/results.jsonl")).unwrap();
    let shown: Vec<&str> = section
        .lines()
        .filter(|l| l.starts_with("{\"id\""))
        .collect();
    assert!(!shown.is_empty());
    for line in shown {
        let (start, end) = line.split_once(" … ").unwrap_or((line, ""));
        assert!(
            results
                .lines()
                .any(|l| l.starts_with(start) && l.ends_with(end)),
            "{line}\n{results}"
        );
    }
    let table = fs::read_to_string(repository(people)).unwrap();
    let head: Vec<&str> = table.lines().take(3).collect();
    assert!(section.contains(&head.join("\n")), "{section}");
}
