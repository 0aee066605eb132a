//! The plan of the pages on the first page, as poppler shows it.

use blockwright::draft::Block;
use blockwright::render::pdf::{PaperFormat, TileOptions, tiles_of};
use kurbo::Rect;

use super::demo::info;
use super::jobs::{BUILDS, parts, pattern};
use super::picture::{COARSE, Picture};
use super::tools::{folder, have, words, write};

/// Everything below the two squares, in mm of an A4 page, left of the words.
const PLAN: Rect = Rect::new(10.0, 106.0, 198.0, 268.0);

/// Pieces are named, pages labelled, the plan is large, and no line is so thick that it hides a word.
#[test]
fn pieces_are_named_on_a_plan_without_black_bands() {
    if !have("pdftotext") || !have("pdftoppm") {
        return;
    }
    let folder = folder("plan-page");
    for (block, build) in [
        (Block::Dress, BUILDS[0]),
        (Block::BodiceAndSkirt, BUILDS[1]),
        (Block::Shirt, BUILDS[2]),
    ] {
        let pattern = pattern(block, build);
        let (parts, placements) = parts(&pattern);
        let options = TileOptions::default();
        let tiled = tiles_of(&parts, &placements, PaperFormat::A4, &options, &info()).unwrap();
        let pdf = write(&folder, &format!("{}.pdf", block.name()), &tiled.bytes);
        let text = words(&pdf, 1);
        let said: Vec<&str> = text.split_whitespace().collect();
        for piece in pattern.pieces() {
            for word in piece.name().to_uppercase().split(' ') {
                assert!(said.contains(&word), "{word} on the plan: {text}");
            }
        }
        for tile in &tiled.plan.tiles {
            assert!(said.contains(&tile.label.as_str()), "{}", tile.label);
        }
        let picture = Picture::part(&pdf, 1, PLAN, COARSE);
        let tinted = |x: usize, y: usize| (230..250).contains(&picture.at(x, y));
        let (mut low, mut high) = ((usize::MAX, usize::MAX), (0, 0));
        let thick = (0.9 * COARSE) as usize + 1;
        for y in 0..picture.height() - thick {
            for x in 0..picture.width - thick {
                if tinted(x, y) {
                    (low.0, low.1) = (low.0.min(x), low.1.min(y));
                    (high.0, high.1) = (high.0.max(x), high.1.max(y));
                }
                let all = |dark: &dyn Fn(u8) -> bool| {
                    (0..thick).all(|dy| (0..thick).all(|dx| dark(picture.at(x + dx, y + dy))))
                };
                assert!(
                    !all(&|level| level < 80),
                    "a band at {x}, {y} of {}",
                    block.name()
                );
            }
        }
        let size = (
            (high.0 - low.0) as f64 / COARSE,
            (high.1 - low.1) as f64 / COARSE,
        );
        assert!(size.0 > 110.0 || size.1 > 140.0, "the plan is {size:?} mm");
    }
}
