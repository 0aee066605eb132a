//! One page for a projector, measured as poppler shows it.

use std::process::Command;

use blockwright::draft::Block;
use blockwright::job::{Job, Output, Outputs, PrintTarget, run};
use blockwright::measurements::MeasurementSet;
use blockwright::units::Unit;
use kurbo::Rect;

use super::jobs::{BUILDS, body};
use super::picture::{FINE, Picture};
use super::tools::{folder, have, run as tool, words, write};

/// What stays free around the page, between drawing and square, and the side of the square, in mm.
const MARGIN: f64 = 15.0;
const APART: f64 = 10.0;
const SQUARE: f64 = 100.0;

#[test]
fn a_projector_has_one_page_in_scale_with_a_square_on_a_grid() {
    if !have("pdfinfo") || !have("pdftoppm") {
        return;
    }
    let set = MeasurementSet::new("Ines", Unit::Cm, body(BUILDS[1]));
    let mut job = Job::new("Dress", Block::Dress, set);
    job.outputs = Outputs::none().with(Output::Pages);
    job.print.target = PrintTarget::Projector;
    let outcome = run(&job).unwrap();
    let names: Vec<&str> = outcome.files.iter().map(|f| f.name.as_str()).collect();
    assert_eq!(names, ["pattern-projector.pdf"]);
    let pdf = write(&folder("projector"), "dress.pdf", &outcome.files[0].bytes);
    let about = tool(Command::new("pdfinfo").arg(&pdf));
    let field = |name: &str| {
        let line = about.lines().find(|line| line.starts_with(name)).unwrap();
        line.split_once(':').unwrap().1.trim().to_owned()
    };
    assert_eq!(field("Pages"), "1");
    let size: Vec<f64> = field("Page size")
        .split_whitespace()
        .filter_map(|word| word.parse::<f64>().ok())
        .map(|points| points * 25.4 / 72.0)
        .collect();
    // As large as the pattern: a dress of some 1.1 m with the square below it.
    assert!(size[0] > 500.0 && size[0] < 1000.0, "{size:?}");
    assert!(size[1] > 1100.0 && size[1] < 2000.0, "{size:?}");
    let top = size[1] - MARGIN - APART - SQUARE;
    // Between two lines of the grid, the sides of the square stand 100 mm apart, each way.
    let upright = |x: f64| {
        let window = Rect::new(x - 3.0, top + 30.0, x + 3.0, top + 34.0);
        window.x0 + Picture::part(&pdf, 1, window, FINE).centre().0 / FINE
    };
    let level = |y: f64| {
        let window = Rect::new(MARGIN + 30.0, y - 3.0, MARGIN + 34.0, y + 3.0);
        window.y0 + Picture::part(&pdf, 1, window, FINE).centre().1 / FINE
    };
    for (low, high) in [
        (upright(MARGIN), upright(MARGIN + SQUARE)),
        (level(top), level(top + SQUARE)),
    ] {
        assert!((high - low - SQUARE).abs() < 0.1, "{low} to {high}");
    }
    let text = words(&pdf, 1);
    for word in ["100 mm", "50 mm", "2 in", "FRONT", "BACK"] {
        assert!(text.contains(word), "{word}: {text}");
    }
    // Bold: no line of the pattern is as thin as a printed guide.
    let document = lopdf::Document::load_mem(&outcome.files[0].bytes).unwrap();
    let catalog = document.catalog().unwrap();
    let layers = catalog.get(b"OCProperties").unwrap().as_dict().unwrap();
    let groups = layers.get(b"OCGs").unwrap().as_array().unwrap();
    let names: Vec<String> = groups
        .iter()
        .map(|group| {
            document
                .get_dictionary(group.as_reference().unwrap())
                .unwrap()
        })
        .map(|group| {
            String::from_utf8_lossy(group.get(b"Name").unwrap().as_str().unwrap()).into_owned()
        })
        .collect();
    assert_eq!(names.first().map(String::as_str), Some("grid"), "{names:?}");
}
