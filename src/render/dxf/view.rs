//! From the page to the file: y up, and a piece cut face down as it lies in the garment.

use crate::geometry::{Point, Vec2};
use crate::piece::{Cut, Piece};

/// How a piece is seen in the file.
#[derive(Debug, Clone, Copy)]
pub(super) struct View {
    mirrored: bool,
}

impl View {
    /// How that piece is seen.
    pub(super) fn of(piece: &Piece) -> Self {
        Self {
            mirrored: piece.cut() == Cut::SingleFaceDown,
        }
    }

    /// Whether the piece is the mirror of the printed one.
    pub(super) const fn mirrored(self) -> bool {
        self.mirrored
    }

    /// A point of the page in the file.
    pub(super) fn point(self, on_page: Point) -> Point {
        let x = if self.mirrored { -on_page.x } else { on_page.x };
        Point::new(x, -on_page.y)
    }

    /// Points of the page in the file.
    pub(super) fn points(self, on_page: &[Point]) -> Vec<Point> {
        on_page.iter().map(|p| self.point(*p)).collect()
    }

    /// A direction on the page as an angle in the file, in degrees, anticlockwise from x,
    /// from 0 to 360.
    pub(super) fn degrees(self, on_page: Vec2) -> f64 {
        let v = self.point(on_page.to_point()).to_vec2();
        v.atan2().to_degrees().rem_euclid(360.0)
    }
}
