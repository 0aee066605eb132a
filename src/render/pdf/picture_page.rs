//! A drawing that is no pattern, to look at: one page, without squares to measure.

use kurbo::{Affine, Size};

use crate::drawing::Drawing;

use super::coverage::Coverage;
use super::document::{Canvas, Document};
use super::{PaperFormat, PdfError};

/// What stays blank around the drawing, in mm: what home printers leave white.
const MARGIN: f64 = 5.0;

/// The drawing as it is on one page, in its middle: the paper lying level, or a larger page if the
/// drawing is larger. Nothing on it says that it is of any size.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PaperFormat, picture};
///
/// let mut layer = Layer::new("cloth");
/// layer.push(DrawnPath::line((0.0, 0.0), (200.0, 100.0), Pen::solid(0.5)));
/// assert!(picture(&Drawing::new(vec![layer])?, PaperFormat::A4, "A lay")?.starts_with(b"%PDF-"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError::NothingToPrint`] if everything in the drawing is white or blank.
pub fn picture(drawing: &Drawing, paper: PaperFormat, title: &str) -> Result<Vec<u8>, PdfError> {
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
    let mut canvas = Canvas::new(size);
    canvas.drawing(bounds + shift, Affine::translate(shift));
    let mut document = Document::new(drawing, title);
    document.add(canvas);
    Ok(document.finish())
}
