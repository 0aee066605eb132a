//! A drawing whose pages lie below one another.

use kurbo::{Affine, Rect, Size};

use crate::drawing::Drawing;

use super::coverage::Coverage;
use super::document::{Canvas, Document};
use super::{PdfError, PrintInfo};

/// Pages of one size that lie below one another in the drawing, the first at its origin, in mm.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PaperFormat, PrintInfo, stacked};
/// let page = PaperFormat::A4.portrait();
/// let mut layer = Layer::new("lines");
/// layer.push(DrawnPath::line((20.0, 20.0), (20.0, page.height + 90.0), Pen::solid(0.5)));
/// let bytes = stacked(&Drawing::new(vec![layer])?, page, 2, &PrintInfo::new("A long line"))?;
/// assert!(bytes.starts_with(b"%PDF-"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError::NothingToPrint`] if everything in the drawing is white or blank.
pub fn stacked(
    drawing: &Drawing,
    page: Size,
    count: usize,
    info: &PrintInfo,
) -> Result<Vec<u8>, PdfError> {
    if Coverage::new(drawing).is_empty() {
        return Err(PdfError::NothingToPrint);
    }
    let mut document = Document::new(drawing, info);
    for index in 0..count {
        let mut canvas = Canvas::new(page, &info.fonts);
        let shift = (0.0, -page.height * index as f64);
        canvas.drawing(
            Rect::from_origin_size((0.0, 0.0), page),
            Affine::translate(shift),
        );
        document.add(canvas);
    }
    Ok(document.finish())
}
