//! The files as an independent parser reads them.

use std::process::Command;

use blockwright::render::pdf::{PaperFormat, PrintInfo, SHEET_MARGIN_MM, sheet};
use blockwright::render::svg;
use kurbo::Size;
use lopdf::Dictionary;

use super::demo::{demo, demo_tiles, info, one_line};
use super::tools::{folder, have, run, words, write};

#[test]
fn pages_are_those_of_the_plan() {
    let (folder, readable) = (folder("pages"), have("pdftotext"));
    let sizes = [
        PaperFormat::A4,
        PaperFormat::Letter,
        PaperFormat::A3,
        PaperFormat::Legal,
        PaperFormat::A0,
    ];
    let roll = PaperFormat::Roll { width: 610.0 };
    for paper in sizes.into_iter().chain([roll]) {
        let (bytes, plan) = demo_tiles(paper);
        let file = write(&folder, "pages.pdf", &bytes);
        let document = lopdf::Document::load_mem(&bytes).unwrap();
        let pages = document.get_pages();
        assert_eq!(pages.len(), plan.page_count());
        assert_eq!(
            plan.tiles.len() + plan.omitted.len(),
            plan.rows * plan.columns
        );
        for (&number, &id) in &pages {
            let size = if number == 1 {
                paper.portrait()
            } else {
                plan.page_size
            };
            let page = document.get_dictionary(id).unwrap();
            let found = media_box(page);
            assert!((found.width - size.width).abs() < 0.01, "{found:?}");
            assert!((found.height - size.height).abs() < 0.01, "{found:?}");
        }
        for (index, tile) in plan.tiles.iter().enumerate() {
            assert_eq!(tile.page, index + 2);
            if !readable {
                continue;
            }
            let text = words(&file, tile.page);
            let says = format!("page {} of {}", tile.page, plan.page_count());
            assert!(text.contains(&says), "page {} says {text}", tile.page);
            assert!(text.contains(&tile.label));
            // Nothing of the marks of other pages, which are stored beside.
            assert_eq!(text.matches("page ").count(), 1, "{text}");
        }
    }
}

/// Width and height of a page in mm.
fn media_box(page: &Dictionary) -> Size {
    let corners = page.get(b"MediaBox").unwrap().as_array().unwrap();
    let unit = page
        .get(b"UserUnit")
        .map_or(1.0, |unit| f64::from(unit.as_float().unwrap()));
    let mm = |index: usize| f64::from(corners[index].as_float().unwrap()) * unit * 25.4 / 72.0;
    assert!(mm(2) / unit <= 5080.1 && mm(3) / unit <= 5080.1);
    Size::new(mm(2), mm(3))
}

#[test]
fn neighbours_carry_the_same_pair() {
    if !have("pdftotext") {
        return;
    }
    let (bytes, plan) = demo_tiles(PaperFormat::A4);
    let file = write(&folder("pairs"), "a4.pdf", &bytes);
    let mut pairs = 0;
    for tile in &plan.tiles {
        let text = words(&file, tile.page);
        for (row, column) in [(tile.row, tile.column + 1), (tile.row + 1, tile.column)] {
            let Some(other) = plan.tile(row, column) else {
                continue;
            };
            let pair = format!("{}|{}", tile.label, other.label);
            let there = words(&file, other.page);
            assert!(text.contains(&pair) && there.contains(&pair), "{pair}");
            pairs += 1;
        }
    }
    assert!(pairs > 20, "only {pairs} joins");
}

#[test]
fn same_input_same_bytes() {
    assert_eq!(demo_tiles(PaperFormat::A4), demo_tiles(PaperFormat::A4));
    let twice = [(); 2].map(|()| sheet(&demo(), &info()).unwrap());
    assert_eq!(twice[0], twice[1]);
    let twice = [(); 2].map(|()| svg::render(&demo()));
    assert_eq!(twice[0], twice[1]);
    let text = String::from_utf8_lossy(&demo_tiles(PaperFormat::A4).0).into_owned();
    assert!(!text.contains("CreationDate") && !text.contains("ModDate"));
}

#[test]
fn the_viewer_is_reported_what_to_do() {
    for bytes in [
        demo_tiles(PaperFormat::A4).0,
        sheet(&demo(), &info()).unwrap(),
    ] {
        let document = lopdf::Document::load_mem(&bytes).unwrap();
        let catalog = document.catalog().unwrap();
        let preferences = catalog
            .get(b"ViewerPreferences")
            .unwrap()
            .as_dict()
            .unwrap();
        let scaling = preferences.get(b"PrintScaling").unwrap();
        assert_eq!(scaling.as_name().unwrap(), b"None");
        assert!(
            preferences
                .get(b"PickTrayByPDFSize")
                .unwrap()
                .as_bool()
                .unwrap()
        );
        let layers = catalog.get(b"OCProperties").unwrap().as_dict().unwrap();
        let order = layers.get(b"D").unwrap().as_dict().unwrap();
        let names: Vec<String> = order
            .get(b"Order")
            .unwrap()
            .as_array()
            .unwrap()
            .iter()
            .map(|id| {
                let group = document.get_dictionary(id.as_reference().unwrap()).unwrap();
                let name = group.get(b"Name").unwrap().as_str().unwrap();
                String::from_utf8_lossy(name).into_owned()
            })
            .collect();
        assert_eq!(
            names,
            ["seam lines", "darts & grain", "words", "page marks"]
        );
        let info = document
            .trailer
            .get(b"Info")
            .unwrap()
            .as_reference()
            .unwrap();
        let title = document
            .get_dictionary(info)
            .unwrap()
            .get(b"Title")
            .unwrap();
        assert_eq!(title.as_str().unwrap(), b"Linen tunic, second toile");
        // The drawing is stored once however many pages show it, and so are the marks of the pages
        // together; the sheet has its marks on its only page.
        let expected = if document.get_pages().len() == 1 {
            1
        } else {
            2
        };
        let forms = document.objects.values().filter(|object| {
            object
                .as_stream()
                .is_ok_and(|stream| stream.dict.get(b"Subtype").is_ok())
        });
        assert_eq!(forms.count(), expected);
    }
}

#[test]
fn files_are_well_formed() {
    if !have("qpdf") {
        return;
    }
    let folder = folder("syntax");
    let odd = PrintInfo::new("Ünïcode (paren) \\ 裁縫").contents(["(", ")", "\\", "\u{0}"]);
    let all = [
        ("a4.pdf", demo_tiles(PaperFormat::A4).0),
        ("letter.pdf", demo_tiles(PaperFormat::Letter).0),
        ("sheet.pdf", sheet(&demo(), &info()).unwrap()),
        ("odd.pdf", sheet(&demo(), &odd).unwrap()),
        (
            "long.pdf",
            sheet(&one_line((0.0, 0.0), (50_000.0, 0.0)), &info()).unwrap(),
        ),
    ];
    for (name, bytes) in all {
        let pdf = write(&folder, name, &bytes);
        let report = run(Command::new("qpdf").arg("--check").arg(pdf));
        assert!(
            report.contains("No syntax or stream encoding errors found"),
            "{report}"
        );
    }
}

#[test]
fn a_sheet_longer_than_the_format_allows_gets_a_larger_unit() {
    for (long, unit) in [(5_000.0, false), (5_200.0, true), (50_000.0, true)] {
        let bytes = sheet(&one_line((0.0, 0.0), (long, 0.0)), &info()).unwrap();
        let document = lopdf::Document::load_mem(&bytes).unwrap();
        let page = document.get_dictionary(document.get_pages()[&1]).unwrap();
        assert_eq!(page.get(b"UserUnit").is_ok(), unit);
        let expected = long + 2.0 * SHEET_MARGIN_MM;
        // Within the millimetres that the line's own width is rounded up to.
        assert!((media_box(page).width - expected - 2.0).abs() < 0.1);
    }
}
