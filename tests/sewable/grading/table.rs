//! The tables, blocks and ranges under test.

use blockwright::draft::{Block, DraftOptions, SleeveLength};
use blockwright::grading::{Graded, grade};
use blockwright::measurements::{Measurement, SizeTable};

pub(crate) fn table(name: &str) -> SizeTable {
    let path = format!(
        "{}/measurement-sets/{name}.yaml",
        env!("CARGO_MANIFEST_DIR")
    );
    SizeTable::parse(&std::fs::read_to_string(path).unwrap()).unwrap()
}

pub(crate) fn options(block: Block) -> DraftOptions {
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(SleeveLength::Long);
    options
}

/// The published table in one block with a long sleeve, as far as one can be drafted: from size
/// 140 on the upper arm, extrapolated far beyond the survey, finds no cap in the armscye.
pub(crate) fn graded(block: Block) -> Graded {
    let table = table("en-13402-3-women");
    let sleeved = table
        .sizes()
        .iter()
        .filter(|size| size.body().value(Measurement::BustGirth) < 1400.0);
    let sizes: Vec<_> = sleeved.cloned().collect();
    grade(&sizes, &options(block), &[]).unwrap_or_else(|error| panic!("{}: {error}", block.name()))
}

/// The whole table without sleeves.
pub(crate) fn graded_sleeveless(block: Block) -> Graded {
    let table = table("en-13402-3-women");
    grade(table.sizes(), &DraftOptions::of(block), &[])
        .unwrap_or_else(|error| panic!("{}: {error}", block.name()))
}
