//! All sizes of every piece laid over one another, on one sheet.

use super::laid::Laid;
use super::line_style::pen_of;
use super::nest_labels::NestLabels;
use super::nest_words::write_on;
use super::{Align, Graded, MOST_SIZES, NestError};
use crate::drawing::{
    Drawing, DrawingError, DrawnPath, Ink, Layer, Pen, Room, SHEET_WIDTH_MM, SheetError, SheetPart,
    arrow_head, bust_mark, dart_legs, dart_notches, drill_mark, lay, leg_notches, notch_cuts,
    outside_darts, place_on_sheet, ring, stroke,
};
use crate::geometry::Curve;
use crate::piece::{Cut, Piece};
use kurbo::{Affine, BezPath, Shape as _, Vec2};

/// Distance between the nests, in mm.
pub const NEST_GAP_MM: f64 = 16.0;
/// Length of the heads of the grain lines, in mm.
const HEAD: f64 = 3.5;
/// How much of a balance line every size shows at its ends, in mm, and the pen of all of it on the
/// smallest size.
const STUB: f64 = 14.0;
const GUIDE: f64 = 0.18;
/// How much bolder the notch of a dart's leg is than the leg's size.
const LEG_NOTCH: f64 = 1.8;
/// Width of a stitching line within a cut line, in mm.
const STITCHING: f64 = 0.2;

/// Draws every piece in all its sizes, laid over one another on the aligned point, each size in
/// its own line style and its own layer, and lays the nests beside each other. What is drawn are
/// stitching lines, or in a range with allowances cut lines: stitching lines between them could not
/// be told apart from the cut lines of smaller sizes, so each size has them in a layer that is left out
/// until it is switched on.
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
/// let drawing = nest(&graded, Align::WaistCentre, &NestLabels::new("Skirt"))?;
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
/// let parts = nest_parts(&graded, Align::WaistCentre, &NestLabels::new("Skirt"))?;
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
            outlines: smallest_and_largest(&laid),
            turns: laid.iter().all(|size| size.piece.cut() != Cut::Fold),
        });
    }
    Ok(parts)
}

/// The outlines of the smallest and the largest size: those between would run into one another on a
/// small plan.
fn smallest_and_largest(laid: &[Laid<'_>]) -> Vec<BezPath> {
    let mut rings: Vec<BezPath> = laid.iter().map(Laid::cut_ring).collect();
    rings.sort_by(|a, b| {
        let area = |ring: &BezPath| ring.bounding_box().area();
        area(a).total_cmp(&area(b))
    });
    if rings.len() > 2 {
        rings.drain(1..rings.len() - 1);
    }
    rings
}

/// A layer a size and one for what all have in common; with allowances one a size for its stitching
/// lines, too.
fn empty_layers(graded: &Graded) -> Vec<Layer> {
    let mut layers: Vec<Layer> = graded
        .labels()
        .map(|label| Layer::new(format!("size {label}")))
        .collect();
    layers.push(Layer::new("words"));
    layers
}

/// The stitching lines of every size, hidden.
fn stitching_layers(graded: &Graded, laid: &[Laid<'_>], colour: bool) -> Vec<Layer> {
    let labels = graded.labels().enumerate();
    labels
        .filter_map(|(number, label)| {
            let size = laid.iter().find(|size| size.number == number)?;
            size.cut_line()?;
            let mut layer = Layer::new(format!("size {label} stitching lines")).hidden();
            let pen = Pen {
                width: STITCHING,
                ..pen_of(number, colour)
            };
            layer.push(DrawnPath::stroked(moved(ring(size.piece), size.by), pen));
            Some(layer)
        })
        .collect()
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
    for size in laid {
        size_lines(&mut layers[size.number], &mut room, size, labels.colour);
    }
    if let Some(words) = layers.last_mut() {
        grain(words, &mut room, smallest);
        guides(words, &mut room, smallest);
    }
    write_on(&mut layers, &mut room, laid, smallest, (labels, number));
    layers.extend(stitching_layers(graded, laid, labels.colour));
    Drawing::new(layers)
}

/// Everything that is drawn of one size.
fn size_lines(layer: &mut Layer, room: &mut Room, size: &Laid<'_>, colour: bool) {
    let pen = pen_of(size.number, colour);
    let thin = Pen {
        width: pen.width * 0.6,
        ..pen.clone()
    };
    let solid = |width: f64| Pen::solid(width).ink(pen.ink);
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
            draw(path, &solid(pen.width));
        }
        if size.cut_line().is_none() {
            for path in leg_notches(dart) {
                draw(path, &solid(pen.width * LEG_NOTCH));
            }
        }
    }
    for notch in size.piece.notches() {
        for path in notch_cuts(size.piece, notch, size.cut_line()) {
            draw(path, &solid(pen.width));
        }
    }
    for hole in size.piece.drill_points() {
        draw(drill_mark(hole.at), &solid(thin.width));
    }
    for point in size.piece.points() {
        if let Some(mark) = bust_mark(point) {
            draw(mark, &solid(thin.width));
        }
    }
    for line in size.piece.lines() {
        for end in ends_of(size.piece, &line.curve) {
            draw(end, &solid(GUIDE));
        }
    }
}

/// The two ends of a balance line, or all of a short one; an end in an open dart is left out.
fn ends_of(piece: &Piece, line: &Curve) -> Vec<BezPath> {
    let length = line.length();
    let part = |from: f64, to: f64| line.part(from, to).ok();
    let ends = if length <= 3.0 * STUB {
        vec![line.clone()]
    } else {
        let both = [part(0.0, STUB), part(length - STUB, length)];
        both.into_iter().flatten().collect()
    };
    let seen = ends.iter().flat_map(|end| outside_darts(piece, end));
    seen.map(|end| end.to_path()).collect()
}

/// The one grain line of a piece, of its smallest size.
fn grain(words: &mut Layer, room: &mut Room, smallest: &Laid<'_>) {
    let [low, high] = smallest.piece.grain().map(|end| end + smallest.by);
    let line = stroke(&[low, high]);
    room.take_stroke(&line);
    words.push(DrawnPath::stroked(line, Pen::solid(0.25)));
    for (tip, back) in [(low, high), (high, low)] {
        let head = arrow_head(tip, (tip - back).normalize(), HEAD);
        room.take_stroke(&head);
        words.push(DrawnPath::filled(head, Ink::BLACK));
    }
}

/// The balance lines of the smallest size from end to end, broken at its open darts.
fn guides(words: &mut Layer, room: &mut Room, smallest: &Laid<'_>) {
    for line in smallest.piece.lines() {
        for part in outside_darts(smallest.piece, &line.curve) {
            let path = moved(part.to_path(), smallest.by);
            room.take_stroke(&path);
            let pen = Pen::solid(GUIDE).dashed(&[4.0, 3.0]);
            words.push(DrawnPath::stroked(path, pen));
        }
    }
}

fn moved(mut path: BezPath, by: Vec2) -> BezPath {
    path.apply_affine(Affine::translate(by));
    path
}
