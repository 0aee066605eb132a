//! A range: a block for every piece and size.

use super::files::{range, range_text};
use super::groups::records;
use blockwright::allowance::Allowances;

#[test]
fn every_piece_of_every_size_has_its_block() {
    let outcome = range(None);
    let text = range_text(&outcome, "range.dxf");
    let records = records(&text);
    let blocks: Vec<&str> = records
        .iter()
        .filter(|r| r.kind() == "BLOCK")
        .map(|r| r.value(2).unwrap())
        .collect();
    let mut wanted = Vec::new();
    for size in outcome.graded.sizes() {
        for piece in size.pattern().pieces() {
            wanted.push(format!("{}-{}", piece.name(), size.label()).to_uppercase());
        }
    }
    assert_eq!(blocks, wanted);
    assert_eq!(blocks.len(), 15);
    // The size in the middle of the table is the sample.
    assert!(text.contains("Sample Size: middle\r\n"));
}

#[test]
fn every_size_is_cut_along_its_own_line() {
    let lines = |allowances: Option<Allowances>, layer: &str| {
        let text = range_text(&range(allowances), "range.dxf");
        let records = records(&text);
        let on = |kind: &str| {
            let of = records.iter().filter(|r| r.kind() == kind);
            of.filter(|r| r.value(8) == Some(layer)).count()
        };
        on("POLYLINE") + on("LINE")
    };
    let widths = || Some(Allowances::usual());
    assert_eq!((lines(None, "1"), lines(None, "14")), (15, 0));
    assert_eq!(lines(widths(), "1"), 15);
    assert!(lines(widths(), "14") >= 15);
}
