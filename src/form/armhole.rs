//! Where an armhole cuts a form, which has no arms.

use super::point::Point3;
use serde::Serialize;

/// The plane in which an arm is cut off: through the end of the shoulder seam and the folds of the
/// armpit on back and front, as back width and front width have them. Of the wearer's left side; the
/// other is its mirror.
///
/// ```
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let form = Form::of(&body)?;
/// let (armhole, landmarks) = (form.armhole(), form.landmarks());
/// assert!(armhole.beyond(landmarks.shoulder).abs() < 1e-6);
/// assert!(armhole.beyond(landmarks.nape) < 0.0); // the trunk is on the inside
/// assert!(armhole.beyond(landmarks.acromion) > 0.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Armhole {
    /// A place in the plane: the end of the shoulder seam.
    pub through: Point3,
    /// The direction out to the arm, of length one.
    pub normal: Point3,
}

impl Armhole {
    /// How far a place is beyond the plane, in mm: negative on the trunk's side.
    #[must_use]
    pub fn beyond(&self, place: Point3) -> f64 {
        place.less(self.through).dot(self.normal)
    }

    /// Through three places, with the normal to the wearer's left.
    pub(super) fn through(a: Point3, b: Point3, c: Point3) -> Self {
        let normal = b.less(a).cross(c.less(a)).unit();
        let normal = if normal.x < 0.0 {
            Point3::new(0.0, 0.0, 0.0).less(normal)
        } else {
            normal
        };
        Self { through: a, normal }
    }
}
