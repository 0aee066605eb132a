//! Pages laid together by the plan show what the sheet shows, and keep their margins.

use blockwright::draft::Block;
use blockwright::render::pdf::{
    PaperFormat, PrintInfo, TileOptions, TilePlan, sheet, tiles, tiles_of,
};

use super::demo::{demo, demo_tiles, info};
use super::jobs::{BUILDS, parts, pattern};
use super::picture::{COARSE, Picture};
use super::tools::{folder, have, sheet_shift, whole, without_marks, write};

#[test]
fn pages_glued_by_the_plan_give_the_sheet() {
    if !have("pdftoppm") {
        return;
    }
    let folder = folder("glued");
    let mut all = Vec::new();
    for (paper, name) in [(PaperFormat::A4, "a4"), (PaperFormat::Letter, "letter")] {
        let (bytes, plan) = demo_tiles(paper);
        all.push((name, demo(), bytes, plan));
    }
    // A bodice and its sleeve, turned and moved so that fewer pages are needed.
    let (parts, placements) = parts(&pattern(Block::Bodice, BUILDS[1]));
    let options = TileOptions::default();
    let tiled = tiles_of(&parts, &placements, PaperFormat::A4, &options, &info()).unwrap();
    assert!(tiled.placements != placements);
    all.push(("moved", tiled.drawing, tiled.bytes, tiled.plan));
    for (name, drawing, bytes, plan) in all {
        let file = write(&folder, "sheet.pdf", &sheet(&drawing, &info()).unwrap());
        // The drawing's part of the sheet, on whole millimetres.
        let bounds = drawing.bounds().expand();
        let truth = Picture::part(&file, 1, bounds + sheet_shift(&drawing), COARSE);
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
        for paper in [
            PaperFormat::A4,
            PaperFormat::Letter,
            PaperFormat::A3,
            PaperFormat::Legal,
        ] {
            let (bytes, plan) = tiles(&demo(), paper, &TileOptions::default(), &info).unwrap();
            let pdf = write(&folder, &format!("{name}-{}.pdf", paper.name()), &bytes);
            let page = Picture::part(&pdf, 1, whole(paper.portrait()), COARSE);
            blank_margins(&page, &plan, name);
        }
    }
}
