//! Pieces drawn each by itself, and laid out beside each other.

use kurbo::{BezPath, Vec2};

use super::{ArrangeError, Drawing, DrawingError, Footprint, Layer, arrange};

/// Width of the sheet on which pieces are laid, in millimetres: a 36 inch roll
/// (copy-shop rolls; value from memory).
pub const SHEET_WIDTH_MM: f64 = 914.0;

/// Distance between pieces on a sheet, in millimetres.
pub const SHEET_GAP_MM: f64 = 14.0;

/// A piece drawn by itself, grain upright.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen, SheetPart};
///
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (300.0, 0.0), Pen::solid(0.4)));
/// let part = SheetPart::new("belt", Drawing::new(vec![layer])?, true);
/// assert!(part.drawing.bounds().width() > 300.0);
/// # Ok::<(), blockwright::drawing::DrawingError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct SheetPart {
    /// What it is called.
    pub name: String,
    /// What is drawn.
    pub drawing: Drawing,
    /// Whether it may be laid by half a turn round, its grain still upright.
    pub turns: bool,
    /// What a small plan shows of it in place of all its lines: closed outlines, the smallest of which
    /// its name stands in. Empty: everything.
    pub outlines: Vec<BezPath>,
}

impl SheetPart {
    /// A part of which a plan shows everything.
    #[must_use]
    pub fn new(name: impl Into<String>, drawing: Drawing, turns: bool) -> Self {
        Self {
            name: name.into(),
            drawing,
            turns,
            outlines: Vec::new(),
        }
    }
}

/// Where a part is laid: first turned by half a turn about its origin, if at all, then moved.
///
/// ```
/// use blockwright::drawing::Placement;
/// let placement = Placement { turned: false, by: (10.0, 20.0).into() };
/// assert_eq!(placement.by.x, 10.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placement {
    /// Whether it is turned by half a turn about its origin.
    pub turned: bool,
    /// By how much it is moved then, in mm.
    pub by: Vec2,
}

/// Parts laid on a sheet of a width so that little length is used, with at least `gap` mm between
/// any two; none is turned. The origin is the top left corner of the sheet.
///
/// ```
/// # use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen, SheetPart};
/// # let mut layer = Layer::new("seam lines");
/// # layer.push(DrawnPath::line((0.0, 0.0), (300.0, 0.0), Pen::solid(0.4)));
/// # let part = SheetPart::new("belt", Drawing::new(vec![layer])?, true);
/// use blockwright::drawing::{lay, place_on_sheet};
/// let parts = [part.clone(), part];
/// let placements = place_on_sheet(&parts, 700.0, 14.0)?;
/// assert!(lay(&parts, &placements)?.bounds().width() > 600.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`ArrangeError`] when a part is wider than the sheet.
pub fn place_on_sheet(
    parts: &[SheetPart],
    width: f64,
    gap: f64,
) -> Result<Vec<Placement>, ArrangeError> {
    let boxes: Vec<_> = parts
        .iter()
        .map(|part| {
            let size = part.drawing.bounds().size();
            Footprint::new(&part.name, size.width, size.height)
        })
        .collect();
    let placed = arrange(&boxes, width, gap)?;
    let at = parts.iter().zip(&placed.at);
    Ok(at
        .map(|(part, &at)| Placement {
            turned: false,
            by: at - part.drawing.bounds().origin(),
        })
        .collect())
}

/// One drawing of all parts, each where it is placed; layers of one name become one.
///
/// ```
/// # use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen, SheetPart};
/// # let mut layer = Layer::new("seam lines");
/// # layer.push(DrawnPath::line((0.0, 0.0), (300.0, 0.0), Pen::solid(0.4)));
/// # let part = SheetPart::new("belt", Drawing::new(vec![layer])?, true);
/// use blockwright::drawing::{Placement, lay};
/// let placement = Placement { turned: true, by: (300.0, 0.0).into() };
/// assert!((lay(&[part], &[placement])?.bounds().x1 - 300.0).abs() < 1.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// [`DrawingError`] when there is nothing to draw, or something is moved out of range.
pub fn lay(parts: &[SheetPart], placements: &[Placement]) -> Result<Drawing, DrawingError> {
    let mut layers: Vec<Layer> = Vec::new();
    for (part, placement) in parts.iter().zip(placements) {
        for layer in part.drawing.layers() {
            let items = layer.items.iter().map(|item| {
                let item = item.clone();
                let item = if placement.turned {
                    item.half_turned()
                } else {
                    item
                };
                item.moved(placement.by)
            });
            match layers.iter_mut().find(|mine| mine.name == layer.name) {
                Some(mine) => mine.items.extend(items),
                None => layers.push(Layer {
                    name: layer.name.clone(),
                    items: items.collect(),
                    hidden: layer.hidden,
                }),
            }
        }
    }
    layers.retain(|layer| !layer.items.is_empty());
    Drawing::new(layers)
}
