//! How deep an armscye is drawn between the same points.

use crate::geometry::Span;

/// How an armscye is drawn between the same points: how low its width point lies and how far
/// it reaches into the corner under the arm.
///
/// A deeper form is longer. It is one number, from -2, as flat as it gets, by -1, flat, to 1, deep.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Form(f64);

impl Form {
    /// The depth of the flattest.
    pub const FLATTEST: f64 = -2.0;

    /// The form of a depth from -2 to 1.
    pub fn of(depth: f64) -> Self {
        Self(Span::from_low(Self::FLATTEST, 1.0).nearest(depth))
    }

    /// The depth.
    pub fn depth(self) -> f64 {
        self.0
    }

    /// Level of the width point between shoulder point and underarm, from the shoulder: the
    /// width is measured about the middle of the curve (tailored waist, 1916, read).
    pub fn width_level(self) -> f64 {
        0.53 + 0.05 * self.0.max(-1.0)
    }

    /// How far the curve reaches into the corner under the arm, 0 to 1: 0.55 is a quarter of an
    /// ellipse. The back is filled, the front scooped; the corner stays 22 to 25 mm (back) and
    /// 17 to 20 mm (front) clear (values from memory).
    pub fn scoop(self, of_half: f64) -> f64 {
        of_half + 0.05 * self.0
    }
}
