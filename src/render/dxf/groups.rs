//! The text of a DXF file: group codes and values, and the few entities used.

use super::layer::Layer;
use super::letters::ascii;
use crate::geometry::Point;
use crate::geometry::path_data::fixed;

/// Decimals of a coordinate, as in the pattern document.
const DECIMALS: usize = 4;

/// Decimals of an angle in degrees.
const ANGLE_DECIMALS: usize = 3;

/// A file or a part of it, in the making: a group code on one line, its value on the next.
/// Points are those of the file, y up.
#[derive(Debug, Default)]
pub(super) struct Groups(String);

impl Groups {
    /// A value that is written as it is.
    pub(super) fn put(&mut self, code: u16, value: &str) {
        self.0.push_str(&format!("{code:>3}\r\n{value}\r\n"));
    }

    fn number(&mut self, code: u16, value: f64) {
        self.put(code, &fixed(value, DECIMALS));
    }

    /// A point under codes 10, 20 and 30.
    pub(super) fn place(&mut self, at: Point) {
        self.number(10, at.x);
        self.number(20, at.y);
        self.number(30, 0.0);
    }

    fn entity(&mut self, kind: &str, layer: Layer) {
        self.put(0, kind);
        self.put(8, &layer.name());
    }

    /// A point.
    pub(super) fn point(&mut self, layer: Layer, at: Point) {
        self.entity("POINT", layer);
        self.place(at);
    }

    /// A notch: a point with a direction, in degrees from the x axis, anticlockwise, and a depth as its
    /// thickness (value from memory).
    pub(super) fn notch(&mut self, layer: Layer, at: Point, degrees: f64, depth: f64) {
        self.point(layer, at);
        self.number(39, depth);
        self.put(50, &fixed(degrees, ANGLE_DECIMALS));
    }

    /// A straight line.
    pub(super) fn line(&mut self, layer: Layer, [from, to]: [Point; 2]) {
        self.entity("LINE", layer);
        self.place(from);
        self.number(11, to.x);
        self.number(21, to.y);
        self.number(31, 0.0);
    }

    /// Straight lines through all the points; a closed one does not name its first point again.
    pub(super) fn polyline(&mut self, layer: Layer, points: &[Point], closed: bool) {
        self.entity("POLYLINE", layer);
        self.put(66, "1");
        self.place(Point::ORIGIN);
        self.put(70, if closed { "1" } else { "0" });
        for point in points {
            self.entity("VERTEX", layer);
            self.place(*point);
        }
        self.entity("SEQEND", layer);
    }

    /// A line of text, its lower left corner at `at`.
    pub(super) fn text(&mut self, layer: Layer, at: Point, height: f64, text: &str) {
        self.entity("TEXT", layer);
        self.place(at);
        self.number(40, height);
        self.put(1, &ascii(text));
    }

    /// A block of these entities.
    pub(super) fn block(&mut self, name: &str, content: &Self) {
        self.entity("BLOCK", Layer::Boundary);
        self.put(2, name);
        self.put(70, "0");
        self.place(Point::ORIGIN);
        self.put(3, name);
        self.0.push_str(&content.0);
        self.entity("ENDBLK", Layer::Boundary);
    }

    /// A block put at a place.
    pub(super) fn insert(&mut self, name: &str, at: Point) {
        self.entity("INSERT", Layer::Boundary);
        self.put(2, name);
        self.place(at);
    }

    /// A section of these groups.
    pub(super) fn section(&mut self, name: &str, content: &Self) {
        self.put(0, "SECTION");
        self.put(2, name);
        self.0.push_str(&content.0);
        self.put(0, "ENDSEC");
    }

    /// The text.
    pub(super) fn into_text(self) -> String {
        self.0
    }
}
