//! The drawing on one sheet, for a plotter or a copy shop.

use kurbo::{Affine, Point, Size, Vec2};

use crate::drawing::{Drawing, Face, Ink, Item, Level, Text, TextStyle};

use super::coverage::Coverage;
use super::document::{Canvas, Document};
use super::{PdfError, PrintInfo, scale};

/// What stays blank around the drawing on a sheet, in mm. Arrange pieces on a roll for its width
/// less twice this.
pub const SHEET_MARGIN_MM: f64 = 15.0;

/// The least width between the margins, in mm: two squares and the text beside them.
const LEAST_WIDTH: f64 = 230.0;

/// The width kept for the two squares, in mm.
const SQUARES: f64 = 117.0;

/// Line spacing of the text, in mm.
const LINE: f64 = 4.8;

/// The drawing at real size on one page: as wide as the drawing and its margins (at least
/// 260 mm), and as high, with a block at the foot that carries the squares to measure, a scale
/// bar, the title and the list of contents.
///
/// A page of more than 5080 mm needs a larger unit (`UserUnit`), which old viewers do not know.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PrintInfo, sheet};
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (300.0, 400.0), Pen::solid(0.5)));
/// let drawing = Drawing::new(vec![layer])?;
/// let bytes = sheet(&drawing, &PrintInfo::new("A long line"))?;
/// assert!(bytes.starts_with(b"%PDF-"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError::NothingToPrint`] if everything in the drawing is white or blank.
pub fn sheet(drawing: &Drawing, info: &PrintInfo) -> Result<Vec<u8>, PdfError> {
    if Coverage::new(drawing).is_empty() {
        return Err(PdfError::NothingToPrint);
    }
    // Whole millimetres, as on pages.
    let bounds = drawing.bounds().expand();
    let width = bounds.width().max(LEAST_WIDTH);
    let text_width = width - SQUARES;
    let lines = contents(info, text_width);
    let below = scale::BAR.height + 4.0 + 8.0 + 4.0 * LINE + lines.len() as f64 * LINE;
    let foot = f64::max(scale::INCH * 2.0 + 1.0, below).ceil();
    let margin = SHEET_MARGIN_MM;
    let size = Size::new(width + 2.0 * margin, bounds.height() + foot + 3.0 * margin);
    let mut page = Canvas::new(size, &info.fonts);
    let top = Point::new(margin, bounds.height() + 2.0 * margin);
    page.marks(&block(top, size, info, lines));
    let at = Point::new(margin, margin);
    let shift = at - bounds.origin();
    page.drawing(bounds + shift, Affine::translate(shift));
    let mut document = Document::new(drawing, info);
    document.add(page);
    Ok(document.finish())
}

fn contents(info: &PrintInfo, width: f64) -> Vec<String> {
    info.contents
        .iter()
        .flat_map(|line| body().wrap(line, width))
        .collect()
}

fn body() -> TextStyle {
    TextStyle::new(Face::Regular, 3.4)
}

fn block(top: Point, size: Size, info: &PrintInfo, lines: Vec<String>) -> Vec<Item> {
    let mut items = scale::square(top, 50.0, "50 mm");
    let second = top + Vec2::new(56.0, 0.0);
    items.extend(scale::square(second, scale::INCH * 2.0, "2 in"));
    let left = top + Vec2::new(SQUARES, 0.0);
    let width = size.width - SHEET_MARGIN_MM - left.x;
    let heading = TextStyle::new(Face::Bold, 6.0);
    let title = heading.fit(&info.title, width);
    items.push(Text::new(left, title, heading).level(Level::Top).into());
    let mut y = left.y + 8.0;
    let grey = body().ink(Ink::Grey(70));
    let intro = [
        (info.subtitle.clone(), body()),
        (
            format!("Sheet {} × {} mm, full size.", size.width, size.height),
            grey,
        ),
        (
            "Print at 100 %, not scaled to fit. Measure both squares.".to_owned(),
            grey,
        ),
        (
            "Sew a trial garment (a toile) before you cut good fabric.".to_owned(),
            grey,
        ),
    ];
    let intro = intro.into_iter().filter(|(text, _)| !text.is_empty());
    for (text, style) in intro.chain(lines.into_iter().map(|line| (line, body()))) {
        items.push(
            Text::new((left.x, y), style.fit(&text, width), style)
                .level(Level::Top)
                .into(),
        );
        y += LINE;
    }
    items.extend(scale::bar(Point::new(left.x, y + 2.0)));
    items
}
