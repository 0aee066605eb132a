//! A range: a block for every piece and size.

use crate::files::{range, range_text};
use crate::groups::records;

#[test]
fn every_piece_of_every_size_has_its_block() {
    let outcome = range();
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
