//! What many pages share is in the file once.

use blockwright::draft::Block;
use blockwright::drawing::lay;
use blockwright::grading::MOST_SIZES;
use blockwright::render::pdf::{Orientation, Paper, TileOptions, sheet, tiles_of};

use crate::demo::info;
use crate::jobs::{graded, nests};
use crate::tools::{folder, write};

#[test]
fn forty_pages_are_hardly_larger_than_the_sheet() {
    let (parts, placements) = nests(&graded(Block::Dress, MOST_SIZES));
    let options = TileOptions {
        margin: 20.0,
        overlap: 20.0,
        orientation: Orientation::Portrait,
        ..TileOptions::default()
    };
    let folder = folder("size");
    let one = sheet(&lay(&parts, &placements).unwrap(), &info()).unwrap();
    let many = tiles_of(&parts, &placements, Paper::A4, &options, &info()).unwrap();
    write(&folder, "sheet.pdf", &one);
    write(&folder, "pages.pdf", &many.bytes);
    let pages = many.plan.page_count();
    let times = many.bytes.len() as f64 / one.len() as f64;
    eprintln!(
        "{pages} pages in {} bytes, the sheet in {}",
        many.bytes.len(),
        one.len()
    );
    assert!(pages >= 40, "only {pages} pages");
    assert!(times <= 1.2, "{times:.3} times the sheet");
}

#[test]
fn a_page_more_takes_few_bytes() {
    let (parts, placements) = nests(&graded(Block::Dress, 5));
    let file = |margin: f64| {
        let options = TileOptions {
            margin,
            orientation: Orientation::Portrait,
            ..TileOptions::default()
        };
        let tiled = tiles_of(&parts, &placements, Paper::A4, &options, &info()).unwrap();
        (tiled.plan.page_count(), tiled.bytes.len())
    };
    let ((few, small), (many, large)) = (file(12.0), file(20.0));
    assert!(many >= few + 5, "{few} and {many} pages");
    let each = (large as f64 - small as f64) / (many - few) as f64;
    assert!(each < 260.0, "{each:.0} bytes a page");
}
