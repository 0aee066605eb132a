//! Three frames side by side, each with what is done in it.

use super::frame::{Brush, cut, moved, trued};
use super::key::key;
use super::window::Window;
use crate::demonstration::Slash;
use crate::drawing::{Drawing, DrawingError, DrawnPath, Face, Ink, Layer, Pen, Text, TextStyle};
use crate::geometry::Point;
use crate::units::{Unit, speak};
use kurbo::Size;

/// A frame on paper, in millimetres.
pub(super) const FRAME: Size = Size::new(84.0, 112.0);

/// White between two frames.
const BETWEEN: f64 = 5.0;

/// How wide a row is.
pub(super) const WIDTH: f64 = 3.0 * FRAME.width + 2.0 * BETWEEN;

/// What stands above each frame.
const HEADS: [&str; 3] = ["1  Cut", "2  Move and tape", "3  True"];

/// Between the lines of a sentence.
const LINE: f64 = 4.1;

/// A piece cut, moved and trued: three frames with a sentence or two each, lengths in `unit`, and a
/// key. It is 262 mm wide, with its upper left corner near the origin.
///
/// ```
/// use blockwright::alterations::{Alteration, HipGirth, alter};
/// use blockwright::demonstration::demonstrate;
/// use blockwright::draft::{Ease, Figure, Fit, skirt};
/// use blockwright::render::{demonstration, svg};
/// use blockwright::units::Unit;
/// let mut figure = Figure::cylinder(960.0);
/// figure.waist_girth = 720.0;
/// let before = skirt(&figure, &Ease::of(Fit::Regular), None)?;
/// let step: Box<dyn Alteration> = Box::new(HipGirth { amount: 24.0 });
/// let after = alter(&before, &[step])?.pattern;
/// let shown = demonstrate("hip_girth", &before, &after)?;
/// let picture = svg::render(&demonstration::row(&shown.slashes[0], Unit::Cm)?);
/// assert!(picture.contains("hinge") && picture.contains("0.6 cm"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
///
/// # Errors
/// When something lies too far away to be drawn.
pub fn row(slash: &Slash, unit: Unit) -> Result<Drawing, DrawingError> {
    let mut lines = Layer::new("lines");
    let mut words = Layer::new("words");
    let low = draw(slash, unit, Point::ORIGIN, (&mut lines, &mut words));
    key(&mut lines, &mut words, Point::new(0.0, low + 7.0));
    Drawing::new(vec![lines, words])
}

/// Draws a row from a place; how far down it reaches.
pub(super) fn draw(
    slash: &Slash,
    unit: Unit,
    at: Point,
    (lines, words): (&mut Layer, &mut Layer),
) -> f64 {
    let head = TextStyle::new(Face::Bold, 4.0);
    let plain = TextStyle::new(Face::Regular, 3.3);
    let top = at.y + 6.0;
    let first = Window::of(slash, Point::new(at.x, top), FRAME);
    let mut low = top + FRAME.height;
    let drawers: [fn(&Slash, &mut Brush<'_>); 3] = [cut, moved, trued];
    for (k, ((drawer, title), sentence)) in drawers
        .into_iter()
        .zip(HEADS)
        .zip(&slash.sentences)
        .enumerate()
    {
        let aside = k as f64 * (FRAME.width + BETWEEN);
        let window = first.beside(aside);
        let x = at.x + aside;
        words.push(Text::new((x, top - 2.0), title, head));
        lines.push(DrawnPath::rectangle(
            window.frame,
            Pen::solid(0.15).ink(Ink::Grey(150)),
        ));
        drawer(slash, &mut Brush::new(window, unit, lines, words));
        let mut y = top + FRAME.height + 1.2;
        for line in plain.wrap(&speak(sentence, unit), FRAME.width) {
            y += LINE;
            words.push(Text::new((x, y), line, plain));
        }
        low = low.max(y);
    }
    low
}
