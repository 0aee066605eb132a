//! Laying boxes out on a sheet.

use crate::explain::Explain;
use kurbo::{Point, Size};
use thiserror::Error;

/// Steps of a millimetre in which sides are compared.
const STEPS: f64 = 1000.0;

/// A box to be placed: what it is called and how much room it takes, in mm.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Footprint {
    /// What errors call it.
    pub name: String,
    /// Width and height in mm.
    pub size: Size,
}

impl Footprint {
    /// A box of a width and height in mm.
    pub fn new(name: impl Into<String>, width: f64, height: f64) -> Self {
        Self {
            name: name.into(),
            size: Size::new(width, height),
        }
    }
}

/// Where boxes were placed.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Arrangement {
    /// The top left corner of each box in mm, in the order they were given.
    pub at: Vec<Point>,
    /// The room all of them take, from the origin, in mm.
    pub size: Size,
}

/// Why boxes could not be placed.
///
/// ```
/// use blockwright::drawing::{ArrangeError, Drawing, DrawnPath, Layer, Pen, SheetPart, place_on_sheet};
///
/// let mut layer = Layer::new("seam lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (1200.0, 0.0), Pen::solid(0.4)));
/// let part = SheetPart::new("skirt", Drawing::new(vec![layer])?, false);
/// let refused = place_on_sheet(&[part], 914.0, 10.0);
/// assert!(matches!(refused, Err(ArrangeError::TooWide { .. })));
/// # Ok::<(), blockwright::drawing::DrawingError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum ArrangeError {
    /// A box is wider than the sheet; boxes are never turned.
    #[error(
        "'{name}' is {width:.1} mm wide and the sheet {sheet:.1} mm; pieces are not turned off \
         grain, choose a wider sheet"
    )]
    TooWide {
        /// Name of the box.
        name: String,
        /// Its width in mm.
        width: f64,
        /// The width of the sheet in mm.
        sheet: f64,
    },
    /// A width, height or gap is not a usable number.
    #[error("{what} is {value} mm; expected {expected}")]
    BadNumber {
        /// Which number.
        what: String,
        /// The number found.
        value: f64,
        /// What it may be.
        expected: &'static str,
    },
}

/// Places boxes on a sheet of a given width so that little length is used, with at least `gap` mm
/// between any two. Boxes are not turned, so that grain lines stay parallel. The same boxes always
/// give the same places.
///
/// Boxes are dropped one by one to the highest, then leftmost place where they fit below the
/// outline of those already placed. This is done for several orders (tallest, widest and largest
/// first, and as given); the shortest result counts, and of equal ones the narrowest. Sides are
/// compared in steps of a thousandth of a millimetre.
///
/// # Errors
/// [`ArrangeError`] names a box wider than the sheet, or a number that is not finite or negative.
pub(crate) fn arrange(
    boxes: &[Footprint],
    sheet_width: f64,
    gap: f64,
) -> Result<Arrangement, ArrangeError> {
    check("the width of the sheet", sheet_width)?;
    check("the gap", gap)?;
    for each in boxes {
        check(&format!("the width of '{}'", each.name), each.size.width)?;
        check(&format!("the height of '{}'", each.name), each.size.height)?;
        if each.size.width > sheet_width {
            return Err(ArrangeError::TooWide {
                name: each.name.clone(),
                width: each.size.width,
                sheet: sheet_width,
            });
        }
    }
    let keys: [fn(Size) -> f64; 4] = [|s| s.height, |s| s.width, Size::area, |_| 0.0];
    let sizes: Vec<Size> = boxes.iter().map(|each| stepped(each.size)).collect();
    let mut best: Option<Arrangement> = None;
    for key in keys {
        let mut order: Vec<(usize, Size)> = sizes.iter().copied().enumerate().collect();
        // A stable sort: equal boxes keep the order they were given in.
        order.sort_by(|(_, a), (_, b)| key(*b).total_cmp(&key(*a)));
        let found = drop_in_order(&order, sheet_width, gap);
        let better = best.as_ref().is_none_or(|best| {
            (found.size.height, found.size.width) < (best.size.height, best.size.width)
        });
        if better {
            best = Some(found);
        }
    }
    Ok(best.unwrap_or(Arrangement {
        at: Vec::new(),
        size: Size::ZERO,
    }))
}

fn check(what: &str, value: f64) -> Result<(), ArrangeError> {
    if value.is_finite() && value >= 0.0 {
        return Ok(());
    }
    Err(ArrangeError::BadNumber {
        what: what.to_owned(),
        value,
        expected: "a finite number of 0 or more",
    })
}

/// A stretch of the outline below which the sheet is free: from `x`, at height `y`.
#[derive(Clone, Copy)]
struct Step {
    x: f64,
    y: f64,
}

/// The size in whole thousandths of a millimetre, never smaller by more than a rounding error: sides
/// that differ by less are equal, so that the last bits of a curve decide no order.
fn stepped(size: Size) -> Size {
    let up = |side: f64| (side * STEPS - 1e-3).ceil() / STEPS + 0.0;
    Size::new(up(size.width), up(size.height))
}

fn drop_in_order(order: &[(usize, Size)], sheet: f64, gap: f64) -> Arrangement {
    // Each box carries its gap on the right and below; the sheet gets one gap more to allow it.
    let end = sheet + gap;
    let mut outline = vec![Step { x: 0.0, y: 0.0 }];
    let mut placed: Vec<(usize, Point)> = Vec::with_capacity(order.len());
    let mut size = Size::ZERO;
    for (number, each) in order {
        let (width, height) = (each.width + gap, each.height + gap);
        let mut place = Point::new(0.0, f64::INFINITY);
        for (first, step) in outline.iter().enumerate() {
            // A hair of slack: sums of widths are not exact.
            if step.x + width > end + 1e-6 {
                break;
            }
            let y = outline
                .iter()
                .skip(first)
                .take_while(|other| other.x < step.x + width - 1e-6)
                .map(|other| other.y)
                .fold(0.0, f64::max);
            if y < place.y {
                place = Point::new(step.x, y);
            }
        }
        placed.push((*number, place));
        raise(&mut outline, place.x, place.x + width, place.y + height);
        size.width = size.width.max(place.x + width - gap);
        size.height = size.height.max(place.y + height - gap);
    }
    placed.sort_by_key(|(number, _)| *number);
    let at = placed.into_iter().map(|(_, place)| place).collect();
    Arrangement { at, size }
}

/// Sets the outline to `y` between `from` and `to`.
fn raise(outline: &mut Vec<Step>, from: f64, to: f64, y: f64) {
    let after = outline
        .iter()
        .rev()
        .find(|step| step.x <= to)
        .map_or(0.0, |step| step.y);
    outline.retain(|step| step.x < from || step.x > to);
    let at = outline.partition_point(|step| step.x < from);
    outline.insert(at, Step { x: from, y });
    outline.insert(at + 1, Step { x: to, y: after });
}

impl Explain for ArrangeError {
    fn code(&self) -> String {
        match self {
            Self::TooWide { .. } => "sheet_too_narrow",
            Self::BadNumber { .. } => "bad_size",
        }
        .to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::TooWide { name, .. } => name.clone(),
            Self::BadNumber { what, .. } => what.clone(),
        })
    }

    fn cure(&self) -> String {
        match self {
            Self::TooWide { .. } => "choose a wider sheet".to_owned(),
            Self::BadNumber { expected, .. } => format!("give {expected}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use kurbo::Rect;

    #[test]
    fn boxes_keep_their_distance_and_stay_on_the_sheet() {
        // A fixed, uneven set: a linear congruence gives sizes from 20 to 420 mm.
        let mut seed = 7_u32;
        let mut next = || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            20.0 + f64::from(seed >> 8) / f64::from(1 << 24) * 400.0
        };
        let boxes: Vec<_> = (0..60)
            .map(|n| Footprint::new(n.to_string(), next(), next()))
            .collect();
        let placed = arrange(&boxes, 914.0, 10.0).expect("all fit");
        let rects: Vec<_> = placed
            .at
            .iter()
            .zip(&boxes)
            .map(|(&at, each)| Rect::from_origin_size(at, each.size))
            .collect();
        for (n, a) in rects.iter().enumerate() {
            assert!(a.x1 <= 914.0 + 1e-6 && a.y1 <= placed.size.height + 1e-6);
            for b in &rects[n + 1..] {
                let apart = (b.x0 - a.x1)
                    .max(a.x0 - b.x1)
                    .max(b.y0 - a.y1)
                    .max(a.y0 - b.y1);
                assert!(apart >= 10.0 - 1e-5, "{a:?} {b:?}");
            }
        }
        let filled: f64 = boxes.iter().map(|each| each.size.area()).sum();
        let used = placed.size.height * 914.0;
        assert!(
            filled / used > 0.75,
            "only {:.2} of the sheet is used",
            filled / used
        );
    }

    #[test]
    fn a_small_box_goes_below_the_shorter_one() {
        let boxes = [
            Footprint::new("collar", 300.0, 80.0),
            Footprint::new("back", 300.0, 900.0),
            Footprint::new("front", 320.0, 900.0),
            Footprint::new("sleeve", 250.0, 600.0),
        ];
        let placed = arrange(&boxes, 914.0, 10.0).expect("all fit");
        assert_eq!(placed.size.height, 990.0);
    }

    #[test]
    fn wrong_numbers_are_refused() {
        for bad in [f64::NAN, f64::INFINITY, -1.0] {
            assert!(arrange(&[Footprint::new("a", bad, 1.0)], 914.0, 10.0).is_err());
            assert!(arrange(&[], bad, 10.0).is_err());
            assert!(arrange(&[], 914.0, bad).is_err());
        }
        assert_eq!(
            arrange(&[], 914.0, 10.0).expect("nothing is fine").size,
            Size::ZERO
        );
    }
}
