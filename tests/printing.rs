//! What comes out of the printer, seen from outside: pages are rendered by an independent viewer
//! and measured, glued together by the plan and laid over the sheet; the files are read by an
//! independent parser.
#![cfg(feature = "pdf")]
#![allow(missing_docs, clippy::unwrap_used, clippy::panic)]

use std::path::{Path, PathBuf};
use std::process::Command;

use blockwright::drawing::{
    Anchor, Drawing, Face, Figure, Ink, Item, Layer, Level, Pen, Text, TextStyle,
};
use blockwright::render::pdf::{
    MAX_PAGES, Orientation, Paper, PdfError, PrintInfo, SHEET_MARGIN_MM, TileOptions, TilePlan,
    sheet, tiles,
};
use blockwright::render::svg;
use kurbo::{BezPath, Circle, Point, Rect, Shape as _, Size, Vec2};
use lopdf::{Dictionary, Object};

/// Pixels in a mm of the renderings that are laid over each other. Pages then begin on whole
/// pixels, since the grid stands on whole millimetres, and differ by no more than rounding.
const COARSE: f64 = 5.0;

/// Pixels in a mm of the renderings that are measured.
const FINE: f64 = 20.0;

/// Two lines of known length that cross several pages, in mm.
const LONG: f64 = 600.0;

/// Where the upright one stands: its x, and the y of its upper end, in mm.
const UPRIGHT: (f64, f64) = (650.0, 300.0);

/// The y of the level one, which begins at x = 0, in mm.
const LEVEL: f64 = 985.0;

fn piece(layers: &mut [Layer; 3], at: Vec2, name: &str, width: f64, length: f64) {
    let mut seam = BezPath::new();
    seam.move_to((0.0, 70.0));
    seam.curve_to((40.0, 68.0), (70.0, 40.0), (74.0, 0.0));
    seam.line_to((width * 0.62, 40.0));
    seam.curve_to(
        (width * 0.56, 140.0),
        (width * 0.6, 230.0),
        (width * 0.9, 238.0),
    );
    seam.curve_to(
        (width * 0.82, length * 0.4),
        (width, length * 0.6),
        (width, length),
    );
    seam.line_to((0.0, length));
    seam.close_path();
    layers[0].push(Item::from(Figure::stroked(seam, Pen::solid(0.6))).moved(at));
    let mut dart = BezPath::new();
    dart.move_to((width * 0.38, length * 0.3));
    dart.line_to((width * 0.34, length * 0.5));
    dart.line_to((width * 0.38, length * 0.7));
    dart.line_to((width * 0.42, length * 0.5));
    dart.close_path();
    let dashed = Pen::solid(0.35).dashed(&[6.0, 2.0]);
    layers[1].push(Item::from(Figure::stroked(dart, dashed)).moved(at));
    let grain = Figure::line(
        (width * 0.2, 150.0),
        (width * 0.2, length - 80.0),
        Pen::solid(0.3),
    );
    layers[1].push(Item::from(grain).moved(at));
    let text = |y: f64, text: &str, face: Face, size: f64| {
        Text::new(
            Point::new(width * 0.5, y) + at,
            text,
            TextStyle::new(face, size),
        )
        .anchor(Anchor::Middle)
        .level(Level::Middle)
    };
    layers[2].push(text(length * 0.8, name, Face::Bold, 9.0));
    layers[2].push(text(
        length * 0.8 + 10.0,
        "Cut 1 · Ärmelloch ½",
        Face::Regular,
        5.0,
    ));
    layers[2].push(text(length * 0.45, "grain", Face::Regular, 4.0).turned(90.0));
}

/// Three pieces with curves, dashes and text, rings about a place where four A4 pages meet, and
/// two long straight lines.
fn demo() -> Drawing {
    let mut layers = ["seam lines", "darts & grain", "words"].map(Layer::new);
    piece(&mut layers, Vec2::new(3.0, 3.0), "Back", 290.0, 940.0);
    piece(&mut layers, Vec2::new(320.0, 3.0), "Front", 310.0, 960.0);
    piece(&mut layers, Vec2::new(660.0, 10.0), "Sleeve", 180.0, 420.0);
    let pen = || Pen::solid(0.5);
    let (x, y) = UPRIGHT;
    layers[1].push(Figure::line((0.0, LEVEL), (LONG, LEVEL), pen()));
    layers[1].push(Figure::line((x, y), (x, y + LONG), pen()));
    for radius in [4.0, 20.0] {
        let ring = Circle::new((176.0, 253.0), radius).to_path(0.01);
        layers[1].push(Figure::stroked(
            ring,
            Pen::solid(0.25).ink(Ink::Rgb(200, 30, 60)),
        ));
    }
    Drawing::new(layers.to_vec()).unwrap()
}

fn info() -> PrintInfo {
    PrintInfo::new("Linen tunic, second toile")
        .subtitle("Drafted for Inês: bust 920, waist 740, hip 990 mm; regular ease")
        .contents([
            "Back: cut 1 on the fold",
            "Front: cut 1 on the fold",
            "Sleeve: cut a pair",
            "Seam allowance 15 mm included, hem 40 mm",
        ])
}

fn demo_tiles(paper: Paper) -> (Vec<u8>, TilePlan) {
    tiles(&demo(), paper, &TileOptions::default(), &info()).unwrap()
}

fn one_line(from: (f64, f64), to: (f64, f64)) -> Drawing {
    let mut layer = Layer::new("line");
    layer.push(Figure::line(from, to, Pen::solid(0.5)));
    Drawing::new(vec![layer]).unwrap()
}

/// A folder for one test's files; what is left there can be looked at.
fn folder(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// Whether a tool of the system can be run; says loudly when it cannot.
fn have(tool: &str) -> bool {
    let found = Command::new(tool).arg("--help").output().is_ok();
    if !found {
        eprintln!("SKIPPED: {tool} is not installed, this part of the test did not run");
    }
    found
}

fn run(command: &mut Command) -> String {
    let output = command.output().unwrap();
    let errors = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(
        output.status.success() && errors.is_empty(),
        "{command:?}: {errors}"
    );
    String::from_utf8_lossy(&output.stdout).into_owned()
}

/// A rendering: 0 black to 255 white.
struct Picture {
    width: usize,
    pixels: Vec<u8>,
}

impl Picture {
    /// A part of a page, both in mm.
    fn part(pdf: &Path, page: usize, window: Rect, per_mm: f64) -> Self {
        let px = |mm: f64| format!("{:.0}", mm * per_mm);
        let out = pdf.with_extension(format!("{page}"));
        run(Command::new("pdftoppm")
            .args(["-gray", "-singlefile", "-r", &format!("{}", per_mm * 25.4)])
            .args(["-f", &page.to_string(), "-l", &page.to_string()])
            .args(["-x", &px(window.x0), "-y", &px(window.y0)])
            .args(["-W", &px(window.width()), "-H", &px(window.height())])
            .arg(pdf)
            .arg(&out));
        let file = PathBuf::from(format!("{}.pgm", out.display()));
        let bytes = std::fs::read(&file).unwrap();
        std::fs::remove_file(&file).unwrap();
        // "P5 width height 255", then the pixels.
        let fields: Vec<&[u8]> = bytes.splitn(4, |byte| byte.is_ascii_whitespace()).collect();
        let number =
            |field: &[u8]| -> usize { std::str::from_utf8(field).unwrap().parse().unwrap() };
        assert_eq!(fields[0], b"P5");
        let (width, height) = (number(fields[1]), number(fields[2]));
        let pixels = bytes[bytes.len() - width * height..].to_vec();
        Self { width, pixels }
    }

    fn height(&self) -> usize {
        self.pixels.len() / self.width
    }

    fn at(&self, x: usize, y: usize) -> u8 {
        self.pixels[y * self.width + x]
    }

    fn dark(&self, x: usize, y: usize) -> f64 {
        f64::from(255 - self.at(x, y))
    }

    /// The centre of gravity of all ink in pixels from the left and the top.
    fn centre(&self) -> (f64, f64) {
        let (mut sum, mut along, mut down) = (0.0, 0.0, 0.0);
        for y in 0..self.height() {
            for x in 0..self.width {
                let dark = self.dark(x, y);
                sum += dark;
                along += dark * (x as f64 + 0.5);
                down += dark * (y as f64 + 0.5);
            }
        }
        assert!(sum > 0.0, "no ink where some was expected");
        (along / sum, down / sum)
    }
}

/// The file with the marks of the pages switched off, as in a viewer, so that the pattern alone is
/// seen.
fn without_marks(pdf: &[u8]) -> Vec<u8> {
    let mut document = lopdf::Document::load_mem(pdf).unwrap();
    let catalog = document.catalog_mut().unwrap();
    let layers = catalog
        .get_mut(b"OCProperties")
        .unwrap()
        .as_dict_mut()
        .unwrap();
    let marks = layers
        .get(b"OCGs")
        .unwrap()
        .as_array()
        .unwrap()
        .last()
        .unwrap()
        .clone();
    let default = layers.get_mut(b"D").unwrap().as_dict_mut().unwrap();
    default.set("OFF", Object::Array(vec![marks]));
    let mut bytes = Vec::new();
    document.save_to(&mut bytes).unwrap();
    bytes
}

fn write(folder: &Path, name: &str, bytes: &[u8]) -> PathBuf {
    let path = folder.join(name);
    std::fs::write(&path, bytes).unwrap();
    path
}

fn whole(size: Size) -> Rect {
    Rect::from_origin_size(Point::ZERO, size)
}

/// The shift from the drawing's mm to those of the sheet.
fn sheet_shift(drawing: &Drawing) -> Vec2 {
    Point::new(SHEET_MARGIN_MM, SHEET_MARGIN_MM) - drawing.bounds().expand().origin()
}

/// The middle of the largest text of a page that reads as given, in mm from its top left.
fn largest_text(pdf: &Path, page: usize, words: [&str; 2]) -> Point {
    let page = page.to_string();
    let html = run(Command::new("pdftotext")
        .args(["-bbox", "-f", &page, "-l", &page])
        .arg(pdf)
        .arg("-"));
    let boxes: Vec<(String, Rect)> = html
        .lines()
        .filter_map(|line| {
            let rest = line.trim().strip_prefix("<word ")?;
            let number = |key: &str| -> f64 {
                let start = rest.find(key).unwrap() + key.len() + 2;
                let text = rest[start..].split('"').next().unwrap();
                text.parse::<f64>().unwrap() * 25.4 / 72.0
            };
            let text = rest.split_once('>')?.1.split('<').next()?.to_owned();
            let corner = Point::new(number("xMin"), number("yMin"));
            Some((
                text,
                Rect::from_points(corner, (number("xMax"), number("yMax"))),
            ))
        })
        .collect();
    boxes
        .windows(2)
        .filter(|pair| pair[0].0 == words[0] && pair[1].0 == words[1])
        .map(|pair| pair[0].1.union(pair[1].1))
        .max_by(|a, b| a.height().total_cmp(&b.height()))
        .unwrap()
        .center()
}

/// The side of a square in mm, across and down, between the middles of its lines, where the square
/// stands about a text.
fn measured_square(pdf: &Path, words: [&str; 2], side: f64) -> (f64, f64) {
    let centre = largest_text(pdf, 1, words);
    // A window about the middle of each line, away from the words in the square.
    let line = |offset: Vec2, size: Size| {
        let corner = centre + offset - Vec2::new(size.width, size.height) / 2.0;
        // On a whole pixel, so that the window stands where it is said to.
        let corner = (corner.to_vec2() * FINE).round();
        let window = Rect::from_origin_size((corner / FINE).to_point(), size);
        let (x, y) = Picture::part(pdf, 1, window, FINE).centre();
        (corner + Vec2::new(x, y)) / FINE
    };
    let half = side / 2.0;
    let (across, down) = (Size::new(4.0, 1.0), Size::new(1.0, 4.0));
    let left = line(Vec2::new(-half, -12.0), across);
    let right = line(Vec2::new(half, -12.0), across);
    let top = line(Vec2::new(-12.0, -half), down);
    let bottom = line(Vec2::new(-12.0, half), down);
    (right.x - left.x, bottom.y - top.y)
}

#[test]
fn squares_and_lines_measure_true() {
    if !(have("pdftoppm") && have("pdftotext")) {
        return;
    }
    let folder = folder("measured");
    let drawing = demo();
    for (paper, name) in [(Paper::A4, "a4.pdf"), (Paper::Letter, "letter.pdf")] {
        let (bytes, plan) = demo_tiles(paper);
        let pdf = write(&folder, name, &bytes);
        // 0.1 mm in 250 mm is 0.02 mm in 50.
        for (words, side) in [(["50", "mm"], 50.0), (["2", "in"], 50.8)] {
            let (across, down) = measured_square(&pdf, words, side);
            assert!(
                (across - side).abs() < 0.02,
                "{name}: {side} mm measures {across}"
            );
            assert!(
                (down - side).abs() < 0.02,
                "{name}: {side} mm measures {down}"
            );
        }
        // The upright line crosses the whole of some page: its ink there is as long as the page
        // shows.
        let pdf = write(&folder, "alone.pdf", &without_marks(&bytes));
        let (x, y) = UPRIGHT;
        let crossed = |tile: &&blockwright::render::pdf::Tile| {
            let shown = tile.shown;
            shown.x0 + 1.0 < x && x + 1.0 < tile.area.x1 && shown.y0 > y && shown.y1 < y + LONG
        };
        let tile = plan.tiles.iter().find(crossed).unwrap();
        let at = Point::new(x, y) + tile.shift();
        let window = Rect::new(at.x - 0.5, 0.0, at.x + 0.5, plan.page_size.height);
        let strip = Picture::part(&pdf, tile.page, window, FINE);
        let middle = (0..strip.width)
            .map(|x| column_length(&strip, x))
            .fold(0.0, f64::max);
        let expected = tile.shown.height();
        assert!(
            (middle - expected).abs() < 0.1,
            "{name}: {expected} mm measures {middle}"
        );
    }
    let pdf = write(&folder, "sheet.pdf", &sheet(&drawing, &info()).unwrap());
    for (words, side) in [(["50", "mm"], 50.0), (["2", "in"], 50.8)] {
        let (across, down) = measured_square(&pdf, words, side);
        assert!(
            (across - side).abs() < 0.02,
            "{side} mm on the sheet measures {across}"
        );
        assert!(
            (down - side).abs() < 0.02,
            "{side} mm on the sheet measures {down}"
        );
    }
    let start = Point::new(0.0, LEVEL) + sheet_shift(&drawing);
    let window = Rect::new(
        start.x - 5.0,
        start.y - 0.5,
        start.x + LONG + 5.0,
        start.y + 0.5,
    );
    let strip = Picture::part(&pdf, 1, window, FINE);
    let level = (0..strip.height())
        .map(|y| (0..strip.width).map(|x| strip.dark(x, y)).sum::<f64>() / 255.0 / FINE)
        .fold(0.0, f64::max);
    assert!(
        (level - LONG).abs() < 0.1,
        "{LONG} mm on the sheet measures {level}"
    );
}

/// The length of the ink in a column of pixels, in mm.
fn column_length(picture: &Picture, x: usize) -> f64 {
    (0..picture.height())
        .map(|y| picture.dark(x, y))
        .sum::<f64>()
        / 255.0
        / FINE
}

#[test]
fn pages_glued_by_the_plan_give_the_sheet() {
    if !have("pdftoppm") {
        return;
    }
    let folder = folder("glued");
    let drawing = demo();
    let file = write(&folder, "sheet.pdf", &sheet(&drawing, &info()).unwrap());
    // The drawing's part of the sheet, on whole millimetres.
    let bounds = drawing.bounds().expand();
    let truth = Picture::part(&file, 1, bounds + sheet_shift(&drawing), COARSE);
    for (paper, name) in [(Paper::A4, "a4"), (Paper::Letter, "letter")] {
        let (bytes, plan) = demo_tiles(paper);
        let marked = write(&folder, &format!("{name}.pdf"), &bytes);
        let alone = write(
            &folder,
            &format!("{name}-alone.pdf"),
            &without_marks(&bytes),
        );
        let mut glued = vec![255_u8; truth.pixels.len()];
        for tile in &plan.tiles {
            let all = whole(plan.page_size);
            let page = Picture::part(&alone, tile.page, all, COARSE);
            let with_marks = Picture::part(&marked, tile.page, all, COARSE);
            assert!(
                page.pixels.iter().any(|&pixel| pixel < 128),
                "{} is empty",
                tile.label
            );
            blank_margins(&with_marks, &plan, &tile.label);
            let corner = tile.area.origin() - bounds.origin();
            let px = |mm: f64| (mm * COARSE).round() as isize;
            let size = tile.shown.size();
            for y in 0..px(size.height) {
                for x in 0..px(size.width) {
                    let (to_x, to_y) = (px(corner.x) + x, px(corner.y) + y);
                    let (from_x, from_y) = (px(tile.at.x) + x, px(tile.at.y) + y);
                    let inside = to_x >= 0
                        && to_y >= 0
                        && (to_x as usize) < truth.width
                        && (to_y as usize) < truth.height();
                    let (from_x, from_y) = (from_x as usize, from_y as usize);
                    let seen = page.at(from_x, from_y);
                    if !inside {
                        assert_eq!(seen, 255, "{}: ink off the drawing", tile.label);
                        continue;
                    }
                    // A later page lies on top of the strips of those before.
                    let index = to_y as usize * truth.width + to_x as usize;
                    glued[index] = seen;
                    // No mark of the page hides a line of the pattern.
                    let both = with_marks.at(from_x, from_y);
                    assert!(
                        both <= seen.saturating_add(3),
                        "{}: a line is hidden",
                        tile.label
                    );
                }
            }
        }
        // Edges of lines may be shaded otherwise, by rounding in the viewer; nothing may be
        // missing, doubled or shifted.
        let differences = glued.iter().zip(&truth.pixels).map(|(a, b)| a.abs_diff(*b));
        let ink = truth.pixels.iter().filter(|&&pixel| pixel < 128).count();
        let (mut sum, mut great) = (0_u64, 0_usize);
        for difference in differences {
            sum += u64::from(difference);
            great += usize::from(difference > 96);
        }
        let mean = sum as f64 / truth.pixels.len() as f64;
        eprintln!("{name}: mean difference {mean:.5} of 255, {great} of {ink} dark pixels differ");
        assert!(mean < 0.02, "{name}: mean difference {mean}");
        assert!(
            great * 2000 < ink,
            "{name}: {great} of {ink} dark pixels differ"
        );
    }
}

/// Nothing may be printed where home printers cannot.
fn blank_margins(page: &Picture, plan: &TilePlan, label: &str) {
    let margin = ((plan.margin - 0.3) * COARSE) as usize;
    let (right, bottom) = (page.width - margin, page.height() - margin);
    for y in 0..page.height() {
        for x in 0..page.width {
            let inside = (margin..right).contains(&x) && (margin..bottom).contains(&y);
            assert!(
                inside || page.at(x, y) > 250,
                "{label}: ink in the margin at {x}, {y}"
            );
        }
    }
}

#[test]
fn the_cover_keeps_its_margins_however_much_is_said() {
    if !have("pdftoppm") {
        return;
    }
    let folder = folder("cover");
    let long = "An uncommonly long line of words that no page could ever hold whole ".repeat(4);
    let wordy = PrintInfo::new(long.clone())
        .subtitle(long.clone())
        .contents((0..40).map(|n| format!("{n} {long}")));
    for (name, info) in [("plain", info()), ("wordy", wordy)] {
        for paper in [Paper::A4, Paper::Letter, Paper::A3, Paper::Legal] {
            let (bytes, plan) = tiles(&demo(), paper, &TileOptions::default(), &info).unwrap();
            let pdf = write(&folder, &format!("{name}-{}.pdf", paper.name()), &bytes);
            let page = Picture::part(&pdf, 1, whole(paper.portrait()), COARSE);
            blank_margins(&page, &plan, name);
        }
    }
}

#[test]
fn pages_are_those_of_the_plan() {
    for paper in [Paper::A4, Paper::Letter, Paper::A3, Paper::Legal, Paper::A0] {
        let (bytes, plan) = demo_tiles(paper);
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
            let text = document.extract_text(&[tile.page as u32]).unwrap();
            let says = format!("page {} of {}", tile.page, plan.page_count());
            assert!(text.contains(&says), "page {} says {text}", tile.page);
            assert!(text.contains(&tile.label));
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
    let (bytes, plan) = demo_tiles(Paper::A4);
    let document = lopdf::Document::load_mem(&bytes).unwrap();
    let mut pairs = 0;
    for tile in &plan.tiles {
        let text = document.extract_text(&[tile.page as u32]).unwrap();
        for (row, column) in [(tile.row, tile.column + 1), (tile.row + 1, tile.column)] {
            let Some(other) = plan.tile(row, column) else {
                continue;
            };
            let pair = format!("{}|{}", tile.label, other.label);
            let there = document.extract_text(&[other.page as u32]).unwrap();
            assert!(text.contains(&pair) && there.contains(&pair), "{pair}");
            pairs += 1;
        }
    }
    assert!(pairs > 20, "only {pairs} joins");
}

#[test]
fn empty_places_have_no_page() {
    // A frame that is empty inside: the pages of its middle are left out.
    let mut layer = Layer::new("frame");
    layer.push(Figure::rectangle(
        Rect::new(0.0, 0.0, 900.0, 1300.0),
        Pen::solid(0.5),
    ));
    let drawing = Drawing::new(vec![layer]).unwrap();
    let (_, plan) = tiles(&drawing, Paper::A4, &TileOptions::default(), &info()).unwrap();
    assert!(
        plan.omitted.contains(&"C3".to_owned()),
        "{:?}",
        plan.omitted
    );
    assert!(plan.tile(0, 0).is_some());

    // Filled, it needs them all; filled with white, it does not.
    for (fill, omitted) in [(Ink::Grey(200), 0), (Ink::WHITE, plan.omitted.len())] {
        let mut layer = Layer::new("frame");
        let mut figure = Figure::rectangle(Rect::new(0.0, 0.0, 900.0, 1300.0), Pen::solid(0.5));
        figure.fill = Some(fill);
        layer.push(figure);
        let drawing = Drawing::new(vec![layer]).unwrap();
        let (_, plan) = tiles(&drawing, Paper::A4, &TileOptions::default(), &info()).unwrap();
        assert_eq!(plan.omitted.len(), omitted, "{fill:?}");
    }

    // What ends on a strip needs no page beyond it.
    let options = TileOptions {
        orientation: Orientation::Portrait,
        ..TileOptions::default()
    };
    let pages = |long: f64| {
        let drawing = one_line((0.0, 0.0), (long, 0.0));
        tiles(&drawing, Paper::A4, &options, &info())
            .unwrap()
            .1
            .tiles
            .len()
    };
    // 186 mm are shown, from the whole millimetre before the line's ink.
    assert_eq!((pages(184.0), pages(187.0)), (1, 2));
}

#[test]
fn same_input_same_bytes() {
    assert_eq!(demo_tiles(Paper::A4), demo_tiles(Paper::A4));
    let twice = [(); 2].map(|()| sheet(&demo(), &info()).unwrap());
    assert_eq!(twice[0], twice[1]);
    let twice = [(); 2].map(|()| svg::render(&demo()));
    assert_eq!(twice[0], twice[1]);
    let text = String::from_utf8_lossy(&demo_tiles(Paper::A4).0).into_owned();
    assert!(!text.contains("CreationDate") && !text.contains("ModDate"));
}

#[test]
fn the_viewer_is_told_what_to_do() {
    for bytes in [demo_tiles(Paper::A4).0, sheet(&demo(), &info()).unwrap()] {
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
        // One form: the drawing is stored once however many pages show it.
        let forms = document.objects.values().filter(|object| {
            object
                .as_stream()
                .is_ok_and(|stream| stream.dict.get(b"Subtype").is_ok())
        });
        assert_eq!(forms.count(), 1);
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
        ("a4.pdf", demo_tiles(Paper::A4).0),
        ("letter.pdf", demo_tiles(Paper::Letter).0),
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

#[test]
fn what_cannot_be_printed_is_refused() {
    let drawing = demo();
    let tiled = |drawing: &Drawing, paper, options: &TileOptions| {
        tiles(drawing, paper, options, &info()).map(|(_, plan)| plan.page_count())
    };
    let usual = TileOptions::default();
    let small = [
        (20.0, 20.0),
        (0.0, 0.0),
        (-210.0, 297.0),
        (100.0, 150.0),
        (f64::NAN, 297.0),
    ];
    for (width, height) in small {
        let refused = tiled(&drawing, Paper::Custom { width, height }, &usual);
        assert!(
            matches!(refused, Err(PdfError::PaperTooSmall { .. })),
            "{width} × {height}"
        );
    }
    let endless = Paper::Custom {
        width: f64::INFINITY,
        height: f64::INFINITY,
    };
    assert!(tiled(&drawing, endless, &usual).is_err());
    for value in [f64::NAN, f64::INFINITY, -1.0, 0.0, 1e9] {
        for options in [
            TileOptions {
                margin: value,
                ..usual
            },
            TileOptions {
                overlap: value,
                ..usual
            },
        ] {
            let refused = tiled(&drawing, Paper::A4, &options);
            assert!(
                matches!(refused, Err(PdfError::BadOption { .. })),
                "{value}"
            );
        }
    }
    let many = Err(PdfError::TooManyPages { limit: MAX_PAGES });
    // 50 m each way, along the diagonal, around the edge and filled.
    let diagonal = one_line((0.0, 0.0), (50_000.0, 50_000.0));
    assert_eq!(tiled(&diagonal, Paper::A4, &usual), many);
    let mut layer = Layer::new("field");
    let field = Rect::new(0.0, 0.0, 50_000.0, 50_000.0).to_path(0.1);
    layer.push(Figure::filled(field, Ink::BLACK));
    assert_eq!(
        tiled(&Drawing::new(vec![layer]).unwrap(), Paper::A4, &usual),
        many
    );
    // Two specks 200 m apart.
    let mut layer = Layer::new("specks");
    for at in [-99_990.0, 99_990.0] {
        layer.push(Figure::line((at, at), (at + 1.0, at), Pen::solid(0.5)));
    }
    let specks = Drawing::new(vec![layer]).unwrap();
    assert_eq!(tiled(&specks, Paper::A4, &usual), many);
    assert!(sheet(&specks, &info()).is_ok());
    // A straight line of 50 m along one row is long, but can be printed.
    let straight = one_line((0.0, 0.0), (50_000.0, 0.0));
    assert!(tiled(&straight, Paper::A4, &usual).unwrap() > 150);

    let mut layer = Layer::new("white");
    layer.push(Figure::line(
        (0.0, 0.0),
        (10.0, 0.0),
        Pen::solid(0.5).ink(Ink::WHITE),
    ));
    layer.push(Text::new(
        (0.0, 0.0),
        "  ",
        TextStyle::new(Face::Regular, 4.0),
    ));
    let white = Drawing::new(vec![layer]).unwrap();
    assert_eq!(
        tiled(&white, Paper::A4, &usual),
        Err(PdfError::NothingToPrint)
    );
    assert_eq!(sheet(&white, &info()), Err(PdfError::NothingToPrint));
}

#[test]
fn the_svg_is_valid_and_of_real_size() {
    let text = svg::render(&demo());
    let document = roxmltree::Document::parse(&text).unwrap();
    let root = document.root_element();
    let bounds = demo().bounds();
    assert_eq!(
        root.attribute("width"),
        Some(&*format!("{:.3}mm", bounds.width()))
    );
    let view: Vec<f64> = root
        .attribute("viewBox")
        .unwrap()
        .split(' ')
        .map(|number| number.parse().unwrap())
        .collect();
    assert!((view[2] - bounds.width()).abs() < 0.001 && (view[0] - bounds.x0).abs() < 0.001);
    let ids: Vec<_> = root
        .children()
        .filter_map(|node| node.attribute("id"))
        .collect();
    assert_eq!(ids, ["seam-lines", "darts---grain", "words"]);
    assert!(!text.contains("-0.000"));
    let words: Vec<_> = document
        .descendants()
        .filter(|node| node.has_tag_name("text"))
        .collect();
    assert!(
        words
            .iter()
            .any(|node| node.text() == Some("Cut 1 · Ärmelloch ½"))
    );
}

#[test]
fn odd_letters_break_nothing() {
    let style = TextStyle::new(Face::Regular, 5.0);
    let odd = "<b>&\"' ]]> \u{0}\u{1}\u{b}\u{7f}\u{fffe}\u{202e} 裁縫 👗 e\u{301} (\\) ½″";
    let mut layer = Layer::new("<&\"\u{0}裁>");
    layer.push(Text::new((0.0, 0.0), odd, style));
    layer.push(Text::new((0.0, 10.0), "", style));
    layer.push(Text::new((0.0, 20.0), "x".repeat(5_000), style));
    let drawing = Drawing::new(vec![layer]).unwrap();
    let text = svg::render(&drawing);
    let document = roxmltree::Document::parse(&text).unwrap();
    assert_eq!(
        document
            .descendants()
            .filter(|node| node.has_tag_name("text"))
            .count(),
        3
    );
    let info = PrintInfo::new(odd).subtitle(odd).contents([odd, ""]);
    let (bytes, _) = tiles(&drawing, Paper::A4, &TileOptions::default(), &info).unwrap();
    assert!(lopdf::Document::load_mem(&bytes).is_ok());
    assert!(lopdf::Document::load_mem(&sheet(&drawing, &info).unwrap()).is_ok());
}
