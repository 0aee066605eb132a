//! The drawing itself, checked.

use kurbo::{PathEl, Point, Rect, Vec2};

use super::{DrawingError, DrawnPath, Item, Layer, Pen, Text};

/// Finished positions in mm, y down, in named layers from the bottom up.
///
/// # Guarantees
/// * There is at least one item, and [`bounds`](Self::bounds) is finite and holds all of them,
///   line widths and text included.
/// * Every coordinate, width and angle is finite; no coordinate is farther than
///   [`LIMIT_MM`](Self::LIMIT_MM) from the origin.
/// * Widths and text sizes are above 0; dashes are never negative and not all 0.
/// * Every path starts with a move and has at least one segment.
/// * Layer names are unique and not empty.
///
/// ```
/// use blockwright::drawing::{Drawing, DrawnPath, Layer, Pen};
///
/// let mut layer = Layer::new("lines");
/// layer.push(DrawnPath::line((0.0, 0.0), (300.0, 0.0), Pen::solid(0.4)));
/// let drawing = Drawing::new(vec![layer])?;
/// assert!((drawing.bounds().width() - 300.4).abs() < 1e-9);
/// # Ok::<(), blockwright::drawing::DrawingError>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    layers: Vec<Layer>,
    bounds: Rect,
}

impl Drawing {
    /// The farthest a coordinate may lie from the origin: 100 m. Renderers keep single-precision
    /// numbers, which at this distance still place a point to a hundredth of a millimetre.
    pub const LIMIT_MM: f64 = 100_000.0;

    /// Checks the layers and measures them.
    ///
    /// # Errors
    /// [`DrawingError`] names the first layer and item that cannot be drawn, or says that there
    /// is nothing to draw.
    pub fn new(layers: Vec<Layer>) -> Result<Self, DrawingError> {
        let mut bounds: Option<Rect> = None;
        for (at, layer) in layers.iter().enumerate() {
            if layer.name.trim().is_empty() {
                return Err(DrawingError::UnnamedLayer { number: at + 1 });
            }
            if layers.iter().take(at).any(|other| other.name == layer.name) {
                return Err(DrawingError::DuplicateLayer {
                    name: layer.name.clone(),
                });
            }
            for (index, item) in layer.items.iter().enumerate() {
                let place = Place {
                    layer: &layer.name,
                    item: index + 1,
                };
                match item {
                    Item::Path(figure) => place.figure(figure)?,
                    Item::Text(text) => place.text(text)?,
                }
                let item = item.bounds();
                bounds = Some(bounds.map_or(item, |all| all.union(item)));
            }
        }
        let bounds = bounds.ok_or(DrawingError::Empty)?;
        Ok(Self { layers, bounds })
    }

    /// The layers from the bottom up.
    #[must_use]
    pub fn layers(&self) -> &[Layer] {
        &self.layers
    }

    /// The box around everything in mm.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        self.bounds
    }

    /// Gives the layers back, to be added to.
    #[must_use]
    pub fn into_layers(self) -> Vec<Layer> {
        self.layers
    }

    /// The drawing with another laid over it, moved by `by` mm. Layers of one name become one;
    /// new ones go on top.
    ///
    /// # Errors
    /// [`DrawingError`] if something moved out of range.
    pub fn with(self, other: Self, by: impl Into<Vec2>) -> Result<Self, DrawingError> {
        let by = by.into();
        let mut layers = self.layers;
        for layer in other.layers {
            let items = layer.items.into_iter().map(|item| item.moved(by));
            match layers.iter_mut().find(|mine| mine.name == layer.name) {
                Some(mine) => mine.items.extend(items),
                None => layers.push(Layer {
                    name: layer.name,
                    items: items.collect(),
                    hidden: layer.hidden,
                }),
            }
        }
        Self::new(layers)
    }
}

/// Where a check is looking, for its error.
struct Place<'a> {
    layer: &'a str,
    item: usize,
}

impl Place<'_> {
    fn figure(&self, figure: &DrawnPath) -> Result<(), DrawingError> {
        let elements = figure.path.elements();
        if !matches!(elements.first(), Some(PathEl::MoveTo(_))) {
            return Err(self.path("does not begin with a move"));
        }
        if elements
            .iter()
            .all(|el| matches!(el, PathEl::MoveTo(_) | PathEl::ClosePath))
        {
            return Err(self.path("has no line or curve"));
        }
        if figure.pen.is_none() && figure.fill.is_none() {
            return Err(self.path("is neither stroked nor filled"));
        }
        for el in elements {
            match *el {
                PathEl::MoveTo(p) | PathEl::LineTo(p) => self.point(p)?,
                PathEl::QuadTo(a, p) => {
                    self.point(a)?;
                    self.point(p)?;
                }
                PathEl::CurveTo(a, b, p) => {
                    self.point(a)?;
                    self.point(b)?;
                    self.point(p)?;
                }
                PathEl::ClosePath => {}
            }
        }
        figure.pen.as_ref().map_or(Ok(()), |pen| self.pen(pen))
    }

    fn pen(&self, pen: &Pen) -> Result<(), DrawingError> {
        self.size("line width", pen.width)?;
        let bad_dash = |value| DrawingError::BadSize {
            layer: self.layer.to_owned(),
            item: self.item,
            what: "dash",
            value,
            expected: "finite lengths of 0 mm or more, not all 0",
        };
        for &dash in &pen.dash {
            if !dash.is_finite() || dash < 0.0 {
                return Err(bad_dash(dash));
            }
        }
        if !pen.dash.is_empty() && pen.dash.iter().all(|&dash| dash <= 0.0) {
            return Err(bad_dash(0.0));
        }
        Ok(())
    }

    fn text(&self, text: &Text) -> Result<(), DrawingError> {
        self.point(text.at)?;
        self.finite("rotation", text.rotation)?;
        self.size("text size", text.style.size)?;
        // A long text can reach out of range from a place within it.
        let bounds = text.bounds();
        self.point(Point::new(bounds.x0, bounds.y0))?;
        self.point(Point::new(bounds.x1, bounds.y1))
    }

    fn point(&self, point: Point) -> Result<(), DrawingError> {
        for (what, value) in [("x", point.x), ("y", point.y)] {
            self.finite(what, value)?;
            if value.abs() > Drawing::LIMIT_MM {
                return Err(DrawingError::TooFar {
                    layer: self.layer.to_owned(),
                    item: self.item,
                    what,
                    value,
                    limit: Drawing::LIMIT_MM,
                });
            }
        }
        Ok(())
    }

    fn finite(&self, what: &'static str, value: f64) -> Result<(), DrawingError> {
        if value.is_finite() {
            return Ok(());
        }
        Err(DrawingError::NotFinite {
            layer: self.layer.to_owned(),
            item: self.item,
            what,
            value,
        })
    }

    fn size(&self, what: &'static str, value: f64) -> Result<(), DrawingError> {
        self.finite(what, value)?;
        if value > 0.0 && value <= 1000.0 {
            return Ok(());
        }
        Err(DrawingError::BadSize {
            layer: self.layer.to_owned(),
            item: self.item,
            what,
            value,
            expected: "above 0 and at most 1000 mm",
        })
    }

    fn path(&self, what: &'static str) -> DrawingError {
        DrawingError::BadPath {
            layer: self.layer.to_owned(),
            item: self.item,
            what,
        }
    }
}
