//! All sizes of every piece laid over one another, on one sheet.

use super::laid::Laid;
use super::nest_labels::NestLabels;
use super::nest_words::write_on;
use super::{Align, Graded, MOST_SIZES, NestError, line_style};
use crate::drawing::{
    Drawing, DrawingError, DrawnPath, Ink, Layer, Pen, Room, SHEET_WIDTH_MM, SheetError, SheetPart,
    arrow_head, dart_legs, dart_notches, drill_mark, lay, notch_cuts, place_on_sheet, ring, stroke,
};
use crate::piece::{Cut, Piece};
use kurbo::{Affine, BezPath, Vec2};

/// Distance between the nests, in mm.
pub const NEST_GAP_MM: f64 = 16.0;
/// Length of the heads of the grain lines, in mm.
const HEAD: f64 = 3.5;
/// Distance between the grain lines of neighbouring sizes, in mm.
const GRAIN_APART: f64 = 4.0;

/// Draws every piece in all its sizes, laid over one another on the aligned point, each size in
/// its own line style and its own layer, and lays the nests beside each other. What is drawn are
/// stitching lines, or in a range with allowances cut lines only: stitching lines between them
/// could not be told from the cut lines of smaller sizes.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::recipe::Recipe;
/// # use blockwright::units::Unit;
/// # use blockwright::measurements::{Body, Measurement, MeasurementErrors, Size, SizeTable};
/// # fn body(bust: f64) -> Result<Body, MeasurementErrors> { Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, bust),
/// #     (Measurement::WaistGirth, bust - 160.0), (Measurement::HipGirth, bust + 80.0),
/// # ]) }
/// use blockwright::grading::{Align, NestLabels, grade, nest};
/// let sizes = vec![Size::new("38", body(880.0)?), Size::new("40", body(920.0)?)];
/// let graded = grade(&Recipe::new("Skirt", Block::Skirt), &SizeTable::new("Two", Unit::Cm, sizes))?;
/// let drawing = nest(&graded, Align::WaistCentre, &NestLabels { title: "Skirt".into(), date: None })?;
/// let layers: Vec<_> = drawing.layers().iter().map(|layer| layer.name.as_str()).collect();
/// assert_eq!(layers, ["size 38", "size 40", "words"]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`NestError`] when there are more sizes than line styles, or a nest is wider than the sheet.
pub fn nest(graded: &Graded, align: Align, labels: &NestLabels) -> Result<Drawing, NestError> {
    let parts = nest_parts(graded, align, labels)?;
    let placements =
        place_on_sheet(&parts, SHEET_WIDTH_MM, NEST_GAP_MM).map_err(SheetError::from)?;
    Ok(lay(&parts, &placements).map_err(SheetError::from)?)
}

/// Every piece in all its sizes, drawn by itself, to be laid out: the pieces of [`nest`]. A piece
/// on the fold is not turned.
///
/// ```
/// # use blockwright::draft::Block;
/// # use blockwright::recipe::Recipe;
/// # use blockwright::units::Unit;
/// # use blockwright::measurements::{Body, Measurement, Size, SizeTable};
/// # let body = Body::from_taken([
/// #     (Measurement::Height, 1680.0), (Measurement::BustGirth, 880.0),
/// #     (Measurement::WaistGirth, 720.0), (Measurement::HipGirth, 960.0),
/// # ])?;
/// use blockwright::grading::{Align, NestLabels, grade, nest_parts};
/// let table = SizeTable::new("One", Unit::Cm, vec![Size::new("38", body)]);
/// let graded = grade(&Recipe::new("Skirt", Block::Skirt), &table)?;
/// let parts = nest_parts(&graded, Align::WaistCentre, &NestLabels { title: "Skirt".into(), date: None })?;
/// assert_eq!(parts[0].name, "back");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`NestError`] when there are more sizes than line styles.
pub fn nest_parts(
    graded: &Graded,
    align: Align,
    labels: &NestLabels,
) -> Result<Vec<SheetPart>, NestError> {
    let sizes = graded.sizes().len();
    if sizes > MOST_SIZES {
        return Err(NestError::TooMany { sizes });
    }
    let mut parts = Vec::new();
    let names = graded.piece_names();
    for (index, name) in names.iter().copied().enumerate() {
        let number = format!("piece {} of {}", index + 1, names.len());
        let laid: Vec<Laid<'_>> = graded
            .sizes()
            .iter()
            .enumerate()
            .filter_map(|(number, size)| {
                let piece = size.pattern().piece(name)?;
                Some(Laid {
                    number,
                    label: size.label(),
                    piece,
                    cut: size.cut(),
                    by: -align.on(piece).to_vec2(),
                })
            })
            .collect();
        parts.push(SheetPart {
            name: name.to_owned(),
            drawing: one(graded, &laid, labels, &number).map_err(SheetError::from)?,
            turns: laid.iter().all(|size| size.piece.cut() != Cut::Fold),
        });
    }
    Ok(parts)
}

/// A layer a size and one for what all have in common.
fn empty_layers(graded: &Graded) -> Vec<Layer> {
    let mut layers: Vec<Layer> = graded
        .labels()
        .map(|label| Layer::new(format!("size {label}")))
        .collect();
    layers.push(Layer::new("words"));
    layers
}

#[expect(clippy::indexing_slicing, reason = "a layer was made for every size")]
fn one(
    graded: &Graded,
    laid: &[Laid<'_>],
    labels: &NestLabels,
    number: &str,
) -> Result<Drawing, DrawingError> {
    let mut layers = empty_layers(graded);
    let smallest = laid
        .iter()
        .min_by(|a, b| {
            let area = |l: &Laid<'_>| l.piece.outline().area().abs();
            area(a).total_cmp(&area(b))
        })
        .ok_or(DrawingError::Empty)?;
    let mut room = Room::inside(moved(ring(smallest.piece), smallest.by));
    for (place, size) in laid.iter().enumerate() {
        let grain = Vec2::new(grain_shift(laid.len(), place, smallest.piece), 0.0);
        size_lines(&mut layers[size.number], &mut room, size, grain);
    }
    write_on(&mut layers, &mut room, laid, smallest, (labels, number));
    Drawing::new(layers)
}

/// Grain lines of the sizes stand side by side, close if there are many.
fn grain_shift(count: usize, place: usize, piece: &Piece) -> f64 {
    let width = piece.outline().bounds().width();
    let apart = GRAIN_APART.min(0.25 * width / count as f64);
    apart * place as f64
}

/// Everything that is drawn of one size.
fn size_lines(layer: &mut Layer, room: &mut Room, size: &Laid<'_>, grain: Vec2) {
    let pen = line_style(size.number);
    let thin = Pen {
        width: pen.width * 0.6,
        ..pen.clone()
    };
    let outline = size.cut_ring();
    room.take_stroke(&outline);
    layer.push(DrawnPath::stroked(outline, pen.clone()));
    let mut draw = |path: BezPath, pen: &Pen| {
        let path = moved(path, size.by);
        room.take_stroke(&path);
        layer.push(DrawnPath::stroked(path, pen.clone()));
    };
    for dart in size.piece.darts() {
        draw(dart_legs(dart), &thin);
        for path in dart_notches(dart, size.cut_line()) {
            draw(path, &Pen::solid(pen.width));
        }
    }
    for notch in size.piece.notches() {
        for path in notch_cuts(size.piece, notch, size.cut_line()) {
            draw(path, &Pen::solid(pen.width));
        }
    }
    for hole in size.piece.drill_points() {
        draw(drill_mark(hole.at), &Pen::solid(thin.width));
    }
    let [low, high] = size.piece.grain().map(|end| end + grain);
    draw(stroke(&[low, high]), &thin);
    for (tip, back) in [(low, high), (high, low)] {
        let head = moved(arrow_head(tip, (tip - back).normalize(), HEAD), size.by);
        room.take_stroke(&head);
        layer.push(DrawnPath::filled(head, Ink::BLACK));
    }
}

fn moved(mut path: BezPath, by: Vec2) -> BezPath {
    path.apply_affine(Affine::translate(by));
    path
}
