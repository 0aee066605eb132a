//! PDF at real size: [`sheet`] on one page as large as the drawing, or [`tiles`] on pages for a
//! home printer, to be cut and glued; [`tiles_of`] lays parts so that few pages are needed, or on a
//! roll.
//!
//! Both ask the viewer not to scale, carry squares to measure, and list the layers of the drawing
//! so that a viewer can switch them. The same drawing gives the same bytes: there is no date and
//! no random number in the file.
//!
//! ```
//! use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
//! use blockwright::render::pdf::{PaperFormat, PrintInfo, TileOptions, sheet, tiles};
//!
//! let mut layer = Layer::new("seam lines");
//! layer.push(DrawnPath::line((0.0, 0.0), (300.0, 400.0), Pen::solid(0.5)));
//! let drawing = Drawing::new(vec![layer])?;
//! let info = PrintInfo::new("A long line");
//! let (bytes, plan) = tiles(&drawing, PaperFormat::A4, &TileOptions::default(), &info)?;
//! assert!(bytes.starts_with(b"%PDF-"));
//! assert_eq!(plan.page_count(), plan.tiles.len() + 1);
//! assert!(sheet(&drawing, &info)?.starts_with(b"%PDF-"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod container;
mod cover;
mod coverage;
mod document;
mod error;
pub mod fonts;
mod grid;
mod info;
mod marks;
mod one_sheet;
mod packing;
mod page_plan;
mod page_shape;
mod paint;
mod paper;
mod picture_page;
mod plan;
mod projector;
mod raster;
mod roll;
mod scale;
mod stacked_pages;
mod tile_page;
mod tiled;
mod tiled_parts;
mod tiling;

pub use error::PdfError;
pub use fonts::{FontError, FontFile, Fonts};
pub use info::PrintInfo;
pub use one_sheet::{SHEET_MARGIN_MM, sheet};
pub use paper::{Orientation, PaperFormat, TileOptions};
pub use picture_page::{picture, pictures};
pub use plan::{MAX_PAGES, Tile, TilePlan};
pub use projector::projector;
pub use stacked_pages::stacked;
pub use tiled::tiles;
pub use tiled_parts::{TiledParts, tiles_of};
