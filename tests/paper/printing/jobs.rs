//! Real patterns to print.

use crate::support::bodies::body_with;
use blockwright::draft::{Block, DraftOptions, SleeveLength, draft};
use blockwright::drawing::{
    PatternLabels, Placement, SHEET_GAP_MM, SHEET_WIDTH_MM, SheetPart, pattern_parts,
    place_on_sheet,
};
use blockwright::grading::{Align, Graded, NEST_GAP_MM, NestLabels, grade, nest_parts};
use blockwright::measurements::{Body, Size, SizeTable};
use blockwright::piece::Pattern;
use blockwright::recipe::Recipe;
use blockwright::units::Unit;

/// A body of a height and girths of bust, waist and hip, in mm.
pub(crate) fn body(four: [f64; 4]) -> Body {
    body_with(four, &[])
}

pub(crate) const BUILDS: [[f64; 4]; 3] = [
    [1540.0, 800.0, 640.0, 860.0],
    [1680.0, 920.0, 760.0, 1000.0],
    [1800.0, 1180.0, 1020.0, 1240.0],
];

/// With a long sleeve, if the block takes one.
fn options(block: Block) -> DraftOptions {
    let mut options = DraftOptions::of(block);
    options.sleeve = block.has_armscye().then_some(SleeveLength::Long);
    options
}

pub(crate) fn pattern(block: Block, build: [f64; 4]) -> Pattern {
    draft(&body(build), &options(block)).unwrap()
}

/// The pieces, and as they lie on the sheet.
pub(crate) fn parts(pattern: &Pattern) -> (Vec<SheetPart>, Vec<Placement>) {
    let labels = PatternLabels::new("A toile");
    let parts = pattern_parts(pattern, &labels, None).unwrap();
    let sheet = place_on_sheet(&parts, SHEET_WIDTH_MM, SHEET_GAP_MM).unwrap();
    (parts, sheet)
}

/// So many sizes of a block, from small to large.
pub(crate) fn graded(block: Block, count: usize) -> Graded {
    let sizes: Vec<Size> = (0..count)
        .map(|number| {
            let more = 16.0 * number as f64;
            let build = [
                1600.0 + more / 4.0,
                780.0 + more,
                600.0 + more,
                840.0 + more,
            ];
            Size::new(format!("s{number}"), body(build))
        })
        .collect();
    let mut recipe = Recipe::new("A range", block);
    recipe.options = options(block);
    grade(&recipe, &SizeTable::new("A range", Unit::Cm, sizes)).unwrap()
}

/// The nests of a range, and as they lie on the sheet.
pub(crate) fn nests(graded: &Graded) -> (Vec<SheetPart>, Vec<Placement>) {
    let title = "A range".into();
    let parts = nest_parts(
        graded,
        Align::WaistCentre,
        &NestLabels {
            title,
            date: None,
            colour: false,
            ..NestLabels::new("")
        },
    )
    .unwrap();
    let sheet = place_on_sheet(&parts, SHEET_WIDTH_MM, NEST_GAP_MM).unwrap();
    (parts, sheet)
}
