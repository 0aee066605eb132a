//! Which part of the drawing goes on which page.

use kurbo::{Point, Rect, Size, Vec2};

use super::coverage::Coverage;
use super::grid::Grid;
use super::page_shape::PageShape;
use super::{PaperFormat, PdfError, TileOptions};

/// The most pages that will be made, the first included.
pub const MAX_PAGES: usize = 1000;

/// The most places a grid may have, with or without a page: more could not be told apart on the
/// plan of the pages.
const MOST_PLACES: usize = 20_000;

/// A page with a part of the drawing.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, tiles};
///
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (300.0, 0.0), Pen::solid(0.5)));
/// let drawing = Drawing::new(vec![layer])?;
/// let (_, plan) = tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &PrintInfo::new("line"))?;
/// assert_eq!(plan.tiles[1].label, "A2");
/// assert_eq!(plan.tiles[1].page, 3);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Tile {
    /// Row, from 0 at the top.
    pub row: usize,
    /// Column, from 0 at the left.
    pub column: usize,
    /// Row letter and column number, as printed: "B3".
    pub label: String,
    /// The page of the document, from 1; the first is the cover.
    pub page: usize,
    /// The part of the drawing that is this page's own, in the drawing's mm. The left and top
    /// edges are cut, the right and bottom neighbours come to lie on the right and bottom edges.
    pub area: Rect,
    /// The part of the drawing that the page shows: its own and the strips on the right and below
    /// that the neighbours cover.
    pub shown: Rect,
    /// Where the top left corner of both stands on the page, in mm from the page's.
    pub at: Point,
}

impl Tile {
    /// The shift from the drawing's coordinates to those of the page, in mm.
    #[must_use]
    pub fn shift(&self) -> Vec2 {
        self.at - self.area.origin()
    }
}

/// How a drawing was cut into pages.
///
/// All pages stand on one grid laid over the drawing, on whole millimetres, so that errors of
/// gluing do not add up. A page on which nothing would be seen is left out, also when all it
/// would show is on the strip of its left or upper neighbour already.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, tiles};
///
/// // Two short lines far apart: the pages between them are not printed.
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (100.0, 0.0), Pen::solid(0.5)));
/// layer.push(DrawnPath::line((0.0, 900.0), (100.0, 900.0), Pen::solid(0.5)));
/// let drawing = Drawing::new(vec![layer])?;
/// let (_, plan) = tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &PrintInfo::new("two"))?;
/// assert_eq!((plan.rows, plan.tiles.len()), (4, 2));
/// assert_eq!(plan.omitted, ["B1", "C1"]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct TilePlan {
    /// The paper.
    pub paper: PaperFormat,
    /// Whether the pages (not the cover) lie with the longer side level.
    pub landscape: bool,
    /// Width and height of the page in mm.
    pub page_size: Size,
    /// What stays blank along every edge of the paper, in mm.
    pub margin: f64,
    /// Width of the strip that neighbouring pages share, in mm.
    pub overlap: f64,
    /// The step of the grid in mm, whole numbers.
    pub pitch: Size,
    /// Number of rows.
    pub rows: usize,
    /// Number of columns.
    pub columns: usize,
    /// The pages that show a part of the drawing, row by row.
    pub tiles: Vec<Tile>,
    /// The labels of the places on the grid that have no page.
    pub omitted: Vec<String>,
    /// The pages of the document, the cover included, if the drawing as it lies on a sheet were cut
    /// by a plain grid and every page of the grid printed.
    pub plain_page_count: usize,
}

impl TilePlan {
    /// The number of pages of the document, the cover included.
    #[must_use]
    pub fn page_count(&self) -> usize {
        self.tiles.len() + 1
    }

    /// The page at a place on the grid, if it has one.
    #[must_use]
    pub fn tile(&self, row: usize, column: usize) -> Option<&Tile> {
        self.tiles
            .iter()
            .find(|tile| (tile.row, tile.column) == (row, column))
    }
}

/// The label of a place on the grid: rows A to Z, then AA; columns from 1.
#[must_use]
pub(crate) fn tile_label(row: usize, column: usize) -> String {
    format!("{}{}", row_letters(row), column.saturating_add(1))
}

pub(super) fn row_letters(row: usize) -> String {
    let mut letters = Vec::new();
    let mut rest = row;
    loop {
        letters.extend(('A'..='Z').nth(rest % 26));
        if rest < 26 {
            break;
        }
        rest = rest.div_euclid(26) - 1;
    }
    letters.iter().rev().collect()
}

/// Chooses the grid that needs the fewest pages for a drawing as it lies: both ways round if
/// allowed, and with what room is left over put to the right, to the left or shared.
pub(super) fn choose(
    coverage: &Coverage,
    bounds: Rect,
    paper: PaperFormat,
    options: &TileOptions,
) -> Result<(TilePlan, Grid), PdfError> {
    let mut best: Option<(TilePlan, Grid)> = None;
    let mut failure = None;
    // Whole millimetres, so that the grid's lines fall on them.
    let bounds = bounds.expand();
    let shapes = PageShape::all(paper, options, bounds.height())?;
    let plain = plain_page_count(&shapes, bounds);
    for shape in shapes {
        let (columns, rows) = shape.plain(bounds);
        let spare = |pages: usize, pitch: f64, size: f64| {
            (pages as f64 * pitch + shape.overlap - size)
                .floor()
                .max(0.0)
        };
        let spare = Size::new(
            spare(columns, shape.pitch.width, bounds.width()),
            spare(rows, shape.pitch.height, bounds.height()),
        );
        for (down, along) in [0.0, 0.5, 1.0]
            .into_iter()
            .flat_map(|down| [0.0, 0.5, 1.0].map(|along| (down, along)))
        {
            let shift = Vec2::new((spare.width * along).floor(), (spare.height * down).floor());
            match cut(coverage, bounds.origin() - shift, &shape, paper, options) {
                Ok((plan, grid)) => {
                    let fewer = |(best, _): &(TilePlan, Grid)| plan.tiles.len() < best.tiles.len();
                    if best.as_ref().is_none_or(fewer) {
                        best = Some((plan, grid));
                    }
                }
                Err(error) => failure = failure.or(Some(error)),
            }
        }
    }
    match (best, failure) {
        (Some((plan, grid)), _) => Ok((
            TilePlan {
                plain_page_count: plain,
                ..plan
            },
            grid,
        )),
        (None, Some(failure)) => Err(failure),
        (None, None) => Err(PdfError::NothingToPrint),
    }
}

/// The pages of a plain grid the way round that needs fewer, and the cover.
fn plain_page_count(shapes: &[PageShape], bounds: Rect) -> usize {
    let counts = shapes.iter().map(|shape| {
        let (columns, rows) = shape.plain(bounds);
        columns.saturating_mul(rows)
    });
    counts.min().unwrap_or(0).saturating_add(1)
}

/// Cuts the drawing by a grid that begins at a place, leaving out pages without content.
pub(super) fn cut(
    coverage: &Coverage,
    origin: Point,
    shape: &PageShape,
    paper: PaperFormat,
    options: &TileOptions,
) -> Result<(TilePlan, Grid), PdfError> {
    let TileOptions {
        margin, overlap, ..
    } = *options;
    let grid = Grid {
        origin,
        pitch: shape.pitch,
        overlap,
    };
    let kept = coverage.pages(&grid, MAX_PAGES - 1)?;
    let at = Point::new(margin, margin);
    let rows = kept.iter().map(|&(row, _)| row + 1).max().unwrap_or(0);
    let columns = kept
        .iter()
        .map(|&(_, column)| column + 1)
        .max()
        .unwrap_or(0);
    if rows * columns > MOST_PLACES {
        return Err(PdfError::TooManyPages { limit: MAX_PAGES });
    }
    let omitted = (0..rows)
        .flat_map(|row| (0..columns).map(move |column| (row, column)))
        .filter(|place| kept.binary_search(place).is_err())
        .map(|(row, column)| tile_label(row, column))
        .collect();
    let tiles: Vec<Tile> = kept
        .iter()
        .enumerate()
        .map(|(index, &(row, column))| {
            let area = grid.cell(row, column);
            Tile {
                row,
                column,
                label: tile_label(row, column),
                page: index + 2,
                area,
                shown: Rect::from_origin_size(
                    area.origin(),
                    area.size() + Size::new(overlap, overlap),
                ),
                at,
            }
        })
        .collect();
    let plan = TilePlan {
        paper,
        landscape: shape.landscape,
        page_size: shape.size,
        margin,
        overlap,
        pitch: shape.pitch,
        rows,
        columns,
        tiles,
        omitted,
        plain_page_count: rows * columns + 1,
    };
    Ok((plan, grid))
}
