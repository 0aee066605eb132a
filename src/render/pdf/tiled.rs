//! The drawing cut into pages for a home printer.

use std::collections::BTreeMap;

use crate::drawing::Drawing;

use super::coverage::Coverage;
use super::document::{Canvas, Document, Leaf};
use super::marks::{Join, join};
use super::tile_page::Neighbours;
use super::tiling::Tiling;
use super::{PaperFormat, PdfError, PrintInfo, TileOptions, TilePlan, cover, plan, tile_page};

/// The drawing on pages of a paper, to be cut and glued, and the plan by which it was cut.
///
/// The first page carries the squares to measure, the plan of the pages and how to join them.
/// Each further page shows its part of the drawing within a frame: the left and top edges are cut,
/// and laid over the strip that the page before or above shows beyond its own part. A circle
/// halved by each shared edge carries the labels of both pages. Every page has a scale bar.
///
/// The drawing is stored once in the file and shown on every page through a window; its layers can
/// be switched in a viewer, and so can the marks of the pages (the last layer).
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, tiles};
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (300.0, 400.0), Pen::solid(0.5)));
/// let drawing = Drawing::new(vec![layer])?;
/// let info = PrintInfo::new("A long line");
/// let (bytes, plan) = tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &info)?;
/// assert!(bytes.starts_with(b"%PDF-") && plan.page_count() > 1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError`] if the paper is too small, an option out of range, more than
/// [`MAX_PAGES`](super::MAX_PAGES) pages would be needed, or nothing would be seen.
pub fn tiles(
    drawing: &Drawing,
    paper: PaperFormat,
    options: &TileOptions,
    info: &PrintInfo,
) -> Result<(Vec<u8>, TilePlan), PdfError> {
    cover::check(paper, options)?;
    let coverage = Coverage::new(drawing);
    let (plan, grid) = plan::choose(&coverage, drawing.bounds(), paper, options)?;
    let tiling = Tiling {
        drawing,
        coverage: &coverage,
        plan: &plan,
        grid: &grid,
        outlined: &[],
    };
    let bytes = written(&tiling, info);
    Ok((bytes, plan))
}

/// The file of a drawing that has been cut into pages.
pub(super) fn written(tiling: &Tiling<'_>, info: &PrintInfo) -> Vec<u8> {
    let (plan, coverage) = (tiling.plan, tiling.coverage);
    let mut document = Document::new(tiling.drawing, info);
    let mut first = Canvas::new(plan.paper.portrait(), &info.fonts);
    let (items, small) = cover::items(tiling, info);
    first.marks(&items);
    if tiling.outlined.is_empty() {
        first.drawing(small.window, small.place);
    }
    document.add(first);
    let mut joins: BTreeMap<(usize, usize, bool), Join> = BTreeMap::new();
    for tile in &plan.tiles {
        for upright in [true, false] {
            if let Some(found) = join(plan, coverage, tile, upright) {
                joins.insert((tile.row, tile.column, upright), found);
            }
        }
    }
    let mut leaves = Vec::new();
    for tile in &plan.tiles {
        let (row, column) = (tile.row, tile.column);
        let before = |row: Option<usize>, column: Option<usize>, upright| {
            joins.get(&(row?, column?, upright))
        };
        let around = Neighbours {
            left: before(Some(row), column.checked_sub(1), true),
            top: before(row.checked_sub(1), Some(column), false),
            right: joins.get(&(row, column, true)),
            bottom: joins.get(&(row, column, false)),
        };
        leaves.push(Leaf {
            row,
            column,
            marks: tile_page::items(plan, tile, coverage, &around, &info.title),
        });
    }
    if let Some(tile) = plan.tiles.first() {
        let window = tile.shown + tile.shift();
        let shift = tile.at - tiling.grid.origin;
        document.add_leaves(plan.page_size, (window, plan.pitch, shift), &leaves);
    }
    document.finish()
}
