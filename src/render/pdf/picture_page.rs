//! Drawings that are no pattern, to look at: a page each, without squares to measure.

use kurbo::{Affine, Size, Vec2};

use crate::drawing::Drawing;

use super::coverage::Coverage;
use super::document::{Canvas, Document};
use super::{PaperFormat, PdfError, PrintInfo};

/// What stays blank around the drawing, in mm: what home printers leave white.
const MARGIN: f64 = 5.0;

/// The drawing as it is on one page, in its middle: the paper lying level, or a larger page if the
/// drawing is larger. Nothing on it says that it is of any size.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PaperFormat, PrintInfo, picture};
///
/// let mut layer = Layer::new("cloth");
/// layer.push(DrawnPath::line((0.0, 0.0), (200.0, 100.0), Pen::solid(0.5)));
/// assert!(picture(&Drawing::new(vec![layer])?, PaperFormat::A4, &PrintInfo::new("A lay"))?.starts_with(b"%PDF-"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError::NothingToPrint`] if everything in the drawing is white or blank.
pub fn picture(
    drawing: &Drawing,
    paper: PaperFormat,
    info: &PrintInfo,
) -> Result<Vec<u8>, PdfError> {
    if Coverage::new(drawing).is_empty() {
        return Err(PdfError::NothingToPrint);
    }
    let bounds = drawing.bounds().expand();
    let page = paper.landscape();
    let size = Size::new(
        page.width.max(bounds.width() + 2.0 * MARGIN),
        page.height.max(bounds.height() + 2.0 * MARGIN),
    );
    let shift = size.to_vec2() / 2.0 - bounds.center().to_vec2();
    let mut canvas = Canvas::new(size, &info.fonts);
    canvas.drawing(bounds + shift, Affine::translate(shift));
    let mut document = Document::new(drawing, info);
    document.add(canvas);
    Ok(document.finish())
}

/// Between the pages where they are stored side by side, in mm.
const APART: f64 = 20.0;

/// Drawings as they are, each in the middle of a page of its own: the paper lying level, or larger
/// pages if the largest drawing is larger.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PaperFormat, PrintInfo, pictures};
///
/// let mut layer = Layer::new("cloth");
/// layer.push(DrawnPath::line((0.0, 0.0), (200.0, 100.0), Pen::solid(0.5)));
/// let page = Drawing::new(vec![layer])?;
/// assert!(pictures(&[page.clone(), page], PaperFormat::A4, &PrintInfo::new("Two"))?.starts_with(b"%PDF-"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError::NothingToPrint`] if there is no drawing or nothing in them; [`PdfError::Drawing`] if
/// there are more than can lie side by side.
pub fn pictures(
    drawings: &[Drawing],
    paper: PaperFormat,
    info: &PrintInfo,
) -> Result<Vec<u8>, PdfError> {
    let (first, others) = drawings.split_first().ok_or(PdfError::NothingToPrint)?;
    let mut together = first.clone();
    let mut windows = vec![first.bounds()];
    let mut low = first.bounds().y1;
    for drawing in others {
        let by = Vec2::new(0.0, low + APART - drawing.bounds().y0);
        windows.push(drawing.bounds() + by);
        low = drawing.bounds().y1 + by.y;
        together = together.with(drawing.clone(), by)?;
    }
    if Coverage::new(&together).is_empty() {
        return Err(PdfError::NothingToPrint);
    }
    let page = paper.landscape();
    let largest = windows.iter().fold(page, |size, window| {
        let needed = window.expand().size() + Size::new(2.0 * MARGIN, 2.0 * MARGIN);
        Size::new(size.width.max(needed.width), size.height.max(needed.height))
    });
    let mut document = Document::new(&together, info);
    for window in windows {
        let shift = largest.to_vec2() / 2.0 - window.center().to_vec2();
        let mut canvas = Canvas::new(largest, &info.fonts);
        canvas.drawing(window + shift, Affine::translate(shift));
        document.add(canvas);
    }
    Ok(document.finish())
}
