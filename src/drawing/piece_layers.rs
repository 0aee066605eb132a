//! The layers of one piece.

use kurbo::BezPath;

use super::room::Room;
use super::{DrawnPath, Ink, Layer, Pen};

/// The layers of one piece, in the order in which they are drawn.
pub(super) struct PieceLayers {
    pub guides: Layer,
    pub lengthen: Layer,
    pub cutting: Layer,
    pub stitching: Layer,
    pub darts: Layer,
    pub marks: Layer,
    pub words: Layer,
}

impl PieceLayers {
    pub fn new() -> Self {
        Self {
            guides: Layer::new("balance lines"),
            lengthen: Layer::new("lengthen or shorten lines"),
            cutting: Layer::new("cutting lines"),
            stitching: Layer::new("stitching lines"),
            darts: Layer::new("darts"),
            marks: Layer::new("marks"),
            words: Layer::new("words"),
        }
    }

    /// The layers that hold anything.
    pub fn into_layers(self) -> Vec<Layer> {
        [
            self.guides,
            self.lengthen,
            self.cutting,
            self.stitching,
            self.darts,
            self.marks,
            self.words,
        ]
        .into_iter()
        .filter(|l| !l.items.is_empty())
        .collect()
    }
}

/// Draws a line and keeps words off it.
pub(super) fn mark(layer: &mut Layer, room: &mut Room, path: BezPath, pen: Pen) {
    room.take_stroke(&path);
    layer.push(DrawnPath::stroked(path, pen));
}

/// Draws a line that bears a name and keeps words off it.
pub(super) fn mark_named(
    layer: &mut Layer,
    room: &mut Room,
    path: BezPath,
    pen: Pen,
    name: String,
) {
    room.take_stroke(&path);
    layer.push(DrawnPath::stroked(path, pen).named(name));
}

/// Draws a filled shape and keeps words off it.
pub(super) fn solid(layer: &mut Layer, room: &mut Room, path: BezPath) {
    room.take_stroke(&path);
    layer.push(DrawnPath::filled(path, Ink::BLACK));
}
