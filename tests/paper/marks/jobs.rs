//! Size and date stand on the pieces if a job gives them, and only then.

use blockwright::draft::Block;
use blockwright::job::{JobFile, Output, Outputs, RangeJob, run, run_range};
use blockwright::measurements::SizeTable;

const TABLE: &str = "name: Two\nunit: cm\nsizes:\n  \
    S: {height: 168, bust_girth: 88, waist_girth: 72, hip_girth: 96}\n  \
    M: {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}\n";

/// How often a text stands on the pieces of a skirt whose job says `more`.
fn times(more: &str, text: &str) -> usize {
    let file = format!("title: Skirt\nblock: skirt\n{more}");
    let mut job = JobFile::parse(&file).unwrap().resolve(Some(TABLE)).unwrap();
    job.outputs = Outputs::none().with(Output::Svg);
    let files = run(&job).unwrap().files;
    let svg = files.iter().find(|f| f.name == "pattern.svg").unwrap();
    let svg = String::from_utf8(svg.bytes.clone()).unwrap();
    svg.matches(&format!(">{text}</text>")).count()
}

#[test]
fn the_size_is_the_one_given_else_that_of_the_table() {
    let table = "body: {table: two.yaml, size: M}\n";
    assert_eq!(times(table, "size M"), 2);
    assert_eq!(times(&format!("{table}size: 40\n"), "size 40"), 2);
    assert_eq!(times(&format!("{table}size: 40\n"), "size M"), 0);
    let own = "body: {unit: cm, measurements: \
        {height: 168, bust_girth: 92, waist_girth: 76, hip_girth: 100}}\n";
    assert_eq!(times(&format!("{own}size: wide 40\n"), "size wide 40"), 2);
    let file = format!("title: Skirt\nblock: skirt\n{own}");
    let job = JobFile::parse(&file).unwrap().resolve(None).unwrap();
    assert_eq!((job.recipe.size, job.recipe.date), (None, None));
}

#[test]
fn the_date_stands_as_it_is_written() {
    let table = "body: {table: two.yaml, size: S}\n";
    for date in ["2026-03-14", "March 2026", "2024-02-29"] {
        assert_eq!(times(&format!("{table}date: {date}\n"), date), 2, "{date}");
    }
    let table = SizeTable::parse(TABLE).unwrap();
    let mut job = RangeJob::new("Skirt", Block::Skirt, table);
    job.outputs = Outputs::none().with(Output::Svg);
    let nest = |job: &RangeJob| {
        let files = run_range(job).unwrap().files;
        let svg = files.iter().find(|f| f.name == "nest.svg").unwrap();
        String::from_utf8(svg.bytes.clone()).unwrap()
    };
    assert!(!nest(&job).contains("2026-03-14"));
    job.recipe.date = Some("2026-03-14".into());
    assert_eq!(nest(&job).matches(">2026-03-14</text>").count(), 2);
}
