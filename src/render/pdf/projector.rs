//! The drawing for a projector: bold, on a grid, on one page as large as the pattern.

use kurbo::{Affine, Point, Rect, Size, Vec2};

use crate::drawing::{Drawing, DrawnPath, Face, Ink, Item, Layer, Level, Pen, Text, TextStyle};
use crate::geometry::counted;

use super::coverage::Coverage;
use super::document::{Canvas, Document};
use super::{PdfError, PrintInfo, scale};

/// What stays free around the drawing, in mm.
const MARGIN: f64 = 15.0;
/// The step of the grid, in mm; every second line is stronger.
const STEP: f64 = 50.0;
/// The side of the square by which the projector is set up, in mm: two steps of the grid.
const SQUARE: f64 = 2.0 * STEP;
/// What is at least between the drawing and what stands below it, in mm.
const APART: f64 = 10.0;
/// The least width between the margins: the square, the two small ones, and words, in mm.
const LEAST_WIDTH: f64 = 420.0;
/// How much bolder lines are, and how bold the thinnest is at least, in mm: a projector shows about a
/// millimetre a pixel.
const BOLDER: f64 = 3.0;
const BOLD: f64 = 0.9;
/// How much longer dashes are, in step with the width of lines.
const DASHES: f64 = 2.0;

/// The drawing at real size on one page for a projector: lines bold, over a grid with a step of 50 mm
/// that is a layer of its own, and below it a square of 100 mm on that grid, the squares to measure,
/// and the title.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
/// use blockwright::render::pdf::{PrintInfo, projector};
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (300.0, 400.0), Pen::solid(0.5)));
/// let drawing = Drawing::new(vec![layer])?;
/// assert!(projector(&drawing, &PrintInfo::new("A long line"))?.starts_with(b"%PDF-"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`PdfError::NothingToPrint`] if everything in the drawing is white or blank.
pub fn projector(drawing: &Drawing, info: &PrintInfo) -> Result<Vec<u8>, PdfError> {
    if Coverage::new(drawing).is_empty() {
        return Err(PdfError::NothingToPrint);
    }
    let bounds = drawing.bounds().inflate(1.0, 1.0).expand();
    // The square lies on the grid, below the drawing.
    let above = ((bounds.height() + APART) / STEP).ceil() * STEP;
    let inner = Size::new(bounds.width().max(LEAST_WIDTH), above + SQUARE + APART);
    let size = inner + Size::new(2.0 * MARGIN, 2.0 * MARGIN);
    // In the drawing's mm, so that the grid lies under its lines.
    let field = Rect::from_origin_size(bounds.origin(), inner);
    let mut layers = vec![grid(field)];
    layers.extend(drawing.clone().into_layers().into_iter().map(bold));
    let bold = Drawing::new(layers)?;
    let mut page = Canvas::new(size, &info.fonts);
    let square = Point::new(MARGIN, MARGIN + above);
    page.marks(&marks(square, size, info));
    let shift = Point::new(MARGIN, MARGIN) - bounds.origin();
    page.drawing(field + shift, Affine::translate(shift));
    let mut document = Document::new(&bold, info);
    document.add(page);
    Ok(document.finish())
}

fn grid(field: Rect) -> Layer {
    let mut layer = Layer::new("grid");
    let pen = |number: usize| {
        let strong = number.is_multiple_of(2);
        Pen::solid(if strong { 0.5 } else { 0.3 }).ink(Ink::Grey(if strong { 150 } else { 195 }))
    };
    for number in 0..=counted(field.width() / STEP) {
        let x = field.x0 + STEP * number as f64;
        layer.push(DrawnPath::line((x, field.y0), (x, field.y1), pen(number)));
    }
    for number in 0..=counted(field.height() / STEP) {
        let y = field.y0 + STEP * number as f64;
        layer.push(DrawnPath::line((field.x0, y), (field.x1, y), pen(number)));
    }
    layer
}

/// The layer with bold lines and black words.
fn bold(mut layer: Layer) -> Layer {
    for item in &mut layer.items {
        match item {
            Item::Path(path) => {
                if let Some(pen) = path.pen.as_mut().filter(|pen| !pen.ink.is_white()) {
                    pen.width = (pen.width * BOLDER).max(BOLD);
                    for dash in &mut pen.dash {
                        *dash *= DASHES;
                    }
                    if matches!(pen.ink, Ink::Grey(_)) {
                        pen.ink = Ink::BLACK;
                    }
                }
            }
            Item::Text(text) => text.style.ink = Ink::BLACK,
        }
    }
    layer
}

fn marks(square: Point, size: Size, info: &PrintInfo) -> Vec<Item> {
    let mut items: Vec<Item> = Vec::new();
    let side = Rect::from_origin_size(square, (SQUARE, SQUARE));
    items.push(DrawnPath::rectangle(side, Pen::solid(1.5)).into());
    let middle = side.center();
    for (from, to) in [
        (Point::new(side.x0, middle.y), Point::new(side.x1, middle.y)),
        (Point::new(middle.x, side.y0), Point::new(middle.x, side.y1)),
    ] {
        items.push(DrawnPath::line(from, to, Pen::solid(0.6)).into());
    }
    let text = |at: Point, words: &str, style: TextStyle| {
        Item::from(Text::new(at, words, style).level(Level::Top))
    };
    let large = TextStyle::new(Face::Bold, 8.0);
    items.push(text(side.origin() + Vec2::new(4.0, 4.0), "100 mm", large));
    let small = Point::new(side.x1 + 10.0, side.y0);
    items.extend(scale::square(small, 50.0, "50 mm"));
    let second = small + Vec2::new(58.0, 0.0);
    items.extend(scale::square(second, 2.0 * scale::INCH, "2 in"));
    let left = second + Vec2::new(60.0, 0.0);
    let width = size.width - MARGIN - left.x;
    let mut y = left.y;
    let body = TextStyle::new(Face::Regular, 5.0);
    for (words, style) in [
        (info.title.as_str(), TextStyle::new(Face::Bold, 9.0)),
        (info.subtitle.as_str(), body),
        (
            "Scale 1: move and turn the projector until the square on the cloth has sides of 100 mm.",
            body,
        ),
        ("Grid: a line every 50 mm. Sew a toile first.", body),
    ] {
        for line in style.wrap(words, width) {
            let line = style.fit(&line, width);
            items.push(text(Point::new(left.x, y), &line, style));
            y += 1.35 * style.size;
        }
    }
    items
}
