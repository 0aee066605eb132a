//! What many pages share is in the file once.

use blockwright::draft::Block;
use blockwright::drawing::{Drawing, DrawnPath, Ink, Layer, lay};
use blockwright::grading::MOST_SIZES;
use blockwright::render::pdf::{Orientation, PaperFormat, TileOptions, sheet, tiles, tiles_of};
use kurbo::{Rect, Shape as _};

use super::demo::info;
use super::jobs::{graded, nests};
use super::tools::{folder, write};

#[test]
fn forty_pages_are_hardly_larger_than_the_sheet() {
    let (parts, placements) = nests(&graded(Block::BodiceAndSkirt, MOST_SIZES));
    let options = TileOptions {
        margin: 22.0,
        overlap: 20.0,
        orientation: Orientation::Portrait,
    };
    let folder = folder("size");
    let one = sheet(&lay(&parts, &placements).unwrap(), &info()).unwrap();
    let many = tiles_of(&parts, &placements, PaperFormat::A4, &options, &info()).unwrap();
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
    // Grey all over, so that every place of the grid has a page.
    let file = |wide: f64, high: f64| {
        let mut layer = Layer::new("grey");
        let all = Rect::new(0.0, 0.0, wide, high).to_path(0.1);
        layer.push(DrawnPath::filled(all, Ink::Grey(200)));
        let drawing = Drawing::new(vec![layer]).unwrap();
        let (bytes, plan) =
            tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &info()).unwrap();
        (plan.page_count(), bytes.len())
    };
    let ((few, small), (many, large)) = (file(500.0, 500.0), file(1600.0, 1600.0));
    assert!(many > few + 40, "{few} and {many} pages");
    let each = (large as f64 - small as f64) / (many - few) as f64;
    eprintln!("{each:.0} bytes a page");
    assert!(each < 200.0, "{each:.0} bytes a page");
}
