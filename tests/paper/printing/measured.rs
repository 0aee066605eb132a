//! Squares and lines are as long on paper as they should be.

use std::path::Path;
use std::process::Command;

use blockwright::render::pdf::{PaperFormat, Tile, sheet};
use kurbo::{Point, Rect, Size, Vec2};

use super::demo::{LEVEL, LONG, UPRIGHT, demo, demo_tiles, info};
use super::picture::{FINE, Picture};
use super::tools::{folder, have, run, sheet_shift, without_marks, write};

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
    for (paper, name) in [
        (PaperFormat::A4, "a4.pdf"),
        (PaperFormat::Letter, "letter.pdf"),
    ] {
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
        let crossed = |tile: &&Tile| {
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
