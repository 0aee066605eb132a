//! The tables, blocks and ranges under test.

use blockwright::draft::{Block, DraftOptions, SleeveLength};
use blockwright::grading::{Graded, grade};
use blockwright::measurements::{Measurement, SizeTable};
use blockwright::recipe::Recipe;

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

/// A block with a long sleeve where it can have one.
pub(crate) fn recipe(block: Block) -> Recipe {
    let mut recipe = Recipe::new(block.name(), block);
    recipe.options = options(block);
    recipe
}

/// The published table as far as a long sleeve can be drafted: from size 140 on the upper arm,
/// extrapolated far beyond the survey, finds no cap in the armscye.
pub(crate) fn sleeved_table() -> SizeTable {
    let table = table("en-13402-3-women");
    let sleeved = table
        .sizes()
        .iter()
        .filter(|size| size.body().value(Measurement::BustGirth) < 1400.0);
    SizeTable::new(table.name(), table.unit(), sleeved.cloned().collect())
}

pub(crate) fn graded(block: Block) -> Graded {
    grade(&recipe(block), &sleeved_table())
        .unwrap_or_else(|error| panic!("{}: {error}", block.name()))
}

/// The whole table without sleeves.
pub(crate) fn graded_sleeveless(block: Block) -> Graded {
    let table = table("en-13402-3-women");
    grade(&Recipe::new(block.name(), block), &table)
        .unwrap_or_else(|error| panic!("{}: {error}", block.name()))
}
