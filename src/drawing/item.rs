//! What a layer is made of.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _};

use super::{Ink, Pen, Text};

/// One thing to draw: a path or a line of text.
///
/// ```
/// use blockwright::drawing::{DrawnPath, Item, Pen};
///
/// let line = Item::from(DrawnPath::line((0.0, 0.0), (10.0, 0.0), Pen::solid(0.5)));
/// assert_eq!(line.bounds().height(), 0.5);
/// ```
#[derive(Debug, Clone, PartialEq)]
pub enum Item {
    /// A path, stroked, filled or both.
    Path(DrawnPath),
    /// One line of text.
    Text(Text),
}

impl Item {
    /// The box around the item in mm, with half the line width or the whole height of the text.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        match self {
            Self::Path(path) => path.bounds(),
            Self::Text(text) => text.bounds(),
        }
    }

    /// The item moved by `by` mm.
    #[must_use]
    pub fn moved(mut self, by: impl Into<kurbo::Vec2>) -> Self {
        let by = by.into();
        match &mut self {
            Self::Path(path) => path.path.apply_affine(Affine::translate(by)),
            Self::Text(text) => text.at += by,
        }
        self
    }

    /// The item turned by half a turn about the origin.
    ///
    /// ```
    /// use blockwright::drawing::{DrawnPath, Item, Pen};
    ///
    /// let line = Item::from(DrawnPath::line((0.0, 0.0), (10.0, 20.0), Pen::solid(0.5)));
    /// assert_eq!(line.clone().half_turned().half_turned(), line);
    /// assert!(line.half_turned().bounds().y0 < -19.0);
    /// ```
    #[must_use]
    pub fn half_turned(mut self) -> Self {
        match &mut self {
            Self::Path(path) => path.path.apply_affine(Affine::scale(-1.0)),
            Self::Text(text) => {
                text.at = (-text.at.to_vec2()).to_point();
                text.rotation += if text.rotation > 0.0 { -180.0 } else { 180.0 };
            }
        }
        self
    }
}

impl From<DrawnPath> for Item {
    fn from(path: DrawnPath) -> Self {
        Self::Path(path)
    }
}

impl From<Text> for Item {
    fn from(text: Text) -> Self {
        Self::Text(text)
    }
}

/// A path in mm, stroked, filled or both; the fill (non-zero rule) lies under the stroke.
///
/// ```
/// use blockwright::drawing::{DrawnPath, Ink, Pen};
/// use kurbo::{Circle, Shape};
///
/// let dot = DrawnPath::filled(Circle::new((5.0, 5.0), 1.0).to_path(0.01), Ink::BLACK);
/// let ring = DrawnPath::stroked(Circle::new((5.0, 5.0), 1.0).to_path(0.01), Pen::solid(0.2));
/// assert!(ring.bounds().width() > dot.bounds().width());
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct DrawnPath {
    /// The path in mm.
    pub path: BezPath,
    /// How it is stroked, if at all.
    pub pen: Option<Pen>,
    /// What it is filled with, if at all.
    pub fill: Option<Ink>,
    /// What it is, for programs that read the drawing: piece and edge, such as `back.side_seam`.
    pub name: Option<String>,
}

impl DrawnPath {
    /// A stroked path.
    #[must_use]
    pub fn stroked(path: BezPath, pen: Pen) -> Self {
        Self {
            path,
            pen: Some(pen),
            fill: None,
            name: None,
        }
    }

    /// A filled path.
    #[must_use]
    pub fn filled(path: BezPath, fill: Ink) -> Self {
        Self {
            path,
            pen: None,
            fill: Some(fill),
            name: None,
        }
    }

    /// The same with a name, which should be there once in a drawing.
    ///
    /// ```
    /// use blockwright::drawing::{DrawnPath, Pen};
    /// let line = DrawnPath::line((0.0, 0.0), (0.0, 90.0), Pen::solid(0.5)).named("back.side_seam");
    /// assert_eq!(line.name.as_deref(), Some("back.side_seam"));
    /// ```
    #[must_use]
    pub fn named(mut self, name: impl Into<String>) -> Self {
        self.name = Some(name.into());
        self
    }

    /// A straight line.
    pub fn line(from: impl Into<Point>, to: impl Into<Point>, pen: Pen) -> Self {
        let mut path = BezPath::new();
        path.move_to(from);
        path.line_to(to);
        Self::stroked(path, pen)
    }

    /// A stroked rectangle.
    #[must_use]
    pub fn rectangle(rect: Rect, pen: Pen) -> Self {
        Self::stroked(rect.to_path(0.1), pen)
    }

    /// The box around the path in mm, with half the line width.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        let half = self.pen.as_ref().map_or(0.0, |pen| pen.width / 2.0);
        self.path.bounding_box().inflate(half, half)
    }

    /// Whether a printer would put anything on the paper.
    #[must_use]
    pub fn leaves_ink(&self) -> bool {
        self.pen.as_ref().is_some_and(|pen| !pen.ink.is_white())
            || self.fill.is_some_and(|fill| !fill.is_white())
    }
}
