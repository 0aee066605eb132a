//! A place in space.

use serde::Serialize;

/// A place on or near a form, in mm: `x` to the wearer's left, `y` up from the waist, `z` to the front.
///
/// ```
/// use blockwright::form::Point3;
/// let nape = Point3::new(0.0, 350.0, 60.0);
/// let front_neck = Point3::new(0.0, 275.0, 130.0);
/// assert!(nape.distance(front_neck) > 100.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Point3 {
    /// To the wearer's left.
    pub x: f64,
    /// Up from the natural waist.
    pub y: f64,
    /// To the front.
    pub z: f64,
}

impl Point3 {
    /// A place by its three numbers, in mm.
    #[must_use]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// How far another place is, straight through the air, in mm.
    #[must_use]
    pub fn distance(self, other: Self) -> f64 {
        let d = self.less(other);
        d.dot(d).sqrt()
    }

    /// The same place on the other side of the body.
    #[must_use]
    pub fn mirrored(self) -> Self {
        Self { x: -self.x, ..self }
    }

    pub(super) fn less(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y, self.z - other.z)
    }

    pub(super) fn plus(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y, self.z + other.z)
    }

    pub(super) fn times(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor, self.z * factor)
    }

    pub(super) fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    pub(super) fn cross(self, other: Self) -> Self {
        Self::new(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }

    /// At length one; as it is where it has none.
    pub(super) fn unit(self) -> Self {
        let length = self.dot(self).sqrt();
        if length > 0.0 {
            Self::new(self.x / length, self.y / length, self.z / length)
        } else {
            self
        }
    }
}
