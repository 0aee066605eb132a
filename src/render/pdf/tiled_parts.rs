//! Parts laid so that few pages are printed, and cut into these pages.

use kurbo::Point;

use crate::drawing::{Drawing, Placement, SheetPart, lay};

use super::coverage::Coverage;
use super::grid::Grid;
use super::page_shape::PageShape;
use super::tiled::written;
use super::tiling::{Outlined, Tiling};
use super::{PaperFormat, PdfError, PrintInfo, TileOptions, TilePlan, cover, packing, plan, roll};

/// A tiled file, and what is on it.
///
/// ```
/// # use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen, SheetPart};
/// # let mut layer = Layer::new("seam lines");
/// # layer.push(DrawnPath::line((0.0, 0.0), (300.0, 0.0), Pen::solid(0.5)));
/// # let part = SheetPart::new("belt", Drawing::new(vec![layer])?, true);
/// use blockwright::drawing::{Placement, lay};
/// use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, tiles_of};
/// let sheet = [Placement { turned: false, by: (0.0, 0.0).into() }];
/// let info = PrintInfo::new("Belt");
/// let tiled = tiles_of(&[part.clone()], &sheet, PaperFormat::A4, &TileOptions::default(), &info)?;
/// assert_eq!(tiled.drawing, lay(&[part], &tiled.placements)?);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct TiledParts {
    /// The file.
    pub bytes: Vec<u8>,
    /// How the drawing was cut into pages.
    pub plan: TilePlan,
    /// Where each part lies.
    pub placements: Vec<Placement>,
    /// All parts, as they lie on the pages.
    pub drawing: Drawing,
}

/// One way to lay the parts and cut them into pages.
struct Layout {
    placements: Vec<Placement>,
    coverage: Coverage,
    plan: TilePlan,
    grid: Grid,
}

/// Parts on pages of a paper, as by [`tiles`](super::tiles), but moved, and turned by half a turn
/// where they may be, so that fewer pages are printed: never more than for the parts as they lie
/// on the sheet that is given, whose plain grid the plan counts for comparison. On a roll they are
/// laid within its width; a part that is wider is cut into strips.
///
/// ```
/// # use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen, SheetPart};
/// # use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, tiles_of};
/// # let mut layer = Layer::new("seam lines");
/// # layer.push(DrawnPath::line((0.0, 0.0), (150.0, 0.0), Pen::solid(0.5)));
/// # let part = SheetPart::new("belt", Drawing::new(vec![layer])?, true);
/// use blockwright::drawing::place_on_sheet;
/// // Two short belts side by side lie on two pages; one below the other on one.
/// let parts = [part.clone(), part];
/// let sheet = place_on_sheet(&parts, 900.0, 10.0)?;
/// let tiled = tiles_of(&parts, &sheet, PaperFormat::A4, &TileOptions::default(), &PrintInfo::new("Belts"))?;
/// assert_eq!((tiled.plan.page_count(), tiled.plan.plain_page_count), (2, 3));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// As [`tiles`](super::tiles).
pub fn tiles_of(
    parts: &[SheetPart],
    sheet: &[Placement],
    paper: PaperFormat,
    options: &TileOptions,
    info: &PrintInfo,
) -> Result<TiledParts, PdfError> {
    cover::check(paper, options)?;
    let inks: Vec<Coverage> = parts.iter().map(|p| Coverage::new(&p.drawing)).collect();
    let mut best = as_on_the_sheet(parts, &inks, sheet, paper, options);
    let plain = match &best {
        Ok(layout) => Some(layout.plan.plain_page_count),
        Err(_) => None,
    };
    for layout in rearranged(parts, &inks, paper, options) {
        let better = best
            .as_ref()
            .map_or(true, |best| layout.cost() < best.cost());
        if better {
            best = Ok(layout);
        }
    }
    let Layout {
        placements,
        coverage,
        mut plan,
        grid,
    } = best?;
    plan.plain_page_count = plain.unwrap_or(plan.plain_page_count);
    let drawing = lay(parts, &placements)?;
    let outlined = Outlined::all(parts, &placements);
    let tiling = Tiling {
        drawing: &drawing,
        coverage: &coverage,
        plan: &plan,
        grid: &grid,
        outlined: &outlined,
    };
    let bytes = written(&tiling, info);
    Ok(TiledParts {
        bytes,
        plan,
        placements,
        drawing,
    })
}

fn as_on_the_sheet(
    parts: &[SheetPart],
    inks: &[Coverage],
    sheet: &[Placement],
    paper: PaperFormat,
    options: &TileOptions,
) -> Result<Layout, PdfError> {
    let coverage = Coverage::laid(inks, sheet);
    let bounds = lay(parts, sheet)?.bounds();
    let (plan, grid) = plan::choose(&coverage, bounds, paper, options)?;
    Ok(Layout {
        placements: sheet.to_vec(),
        coverage,
        plan,
        grid,
    })
}

/// The parts laid for the pages, once for every way round. What cannot be laid or cut is left out.
fn rearranged(
    parts: &[SheetPart],
    inks: &[Coverage],
    paper: PaperFormat,
    options: &TileOptions,
) -> Vec<Layout> {
    let mut found = Vec::new();
    for shape in PageShape::all(paper, options, 0.0).unwrap_or_default() {
        let on_roll = matches!(paper, PaperFormat::Roll { .. });
        let placements = if on_roll {
            roll::place(parts, &shape).ok()
        } else {
            packing::pack(parts, inks, &shape)
        };
        let Some(placements) = placements else {
            continue;
        };
        let coverage = Coverage::laid(inks, &placements);
        let made = if on_roll {
            let bounds = lay(parts, &placements).map(|drawing| drawing.bounds());
            bounds
                .map_err(PdfError::from)
                .and_then(|bounds| plan::choose(&coverage, bounds, paper, options))
        } else {
            plan::cut(&coverage, Point::ZERO, &shape, paper, options)
        };
        if let Ok((plan, grid)) = made {
            found.push(Layout {
                placements,
                coverage,
                plan,
                grid,
            });
        }
    }
    found
}

impl Layout {
    /// The number of pages, the paper they take, and the edges to be glued.
    fn cost(&self) -> (usize, u64, usize) {
        let plan = &self.plan;
        let area = plan.page_size.area() * plan.tiles.len() as f64;
        let joins = plan.tiles.iter().map(|tile| {
            let right = plan.tile(tile.row, tile.column + 1).is_some();
            let below = plan.tile(tile.row + 1, tile.column).is_some();
            usize::from(right) + usize::from(below)
        });
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "an area is not negative, and no part of a square millimetre decides"
        )]
        let area = area as u64;
        (plan.tiles.len(), area, joins.sum())
    }
}
