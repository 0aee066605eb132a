//! Named places on a form.

use super::folds::Folds;
use super::lean::Lean;
use super::point::Point3;
use super::shape::Shape;
use serde::Serialize;

/// Named places on a form; of two the wearer's left, whose other is [`Point3::mirrored`].
///
/// ```
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
///     (Measurement::BustPointWidth, 190.0),
/// ])?;
/// let landmarks = Form::of(&body)?.landmarks();
/// let other = landmarks.bust_point.mirrored();
/// assert!((landmarks.bust_point.distance(other) - 190.0).abs() < 1e-9);
/// assert!(landmarks.bust_point.z > landmarks.waist_front.z);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Landmarks {
    /// The nape bone.
    pub nape: Point3,
    /// Where neck and shoulder meet.
    pub neck_side: Point3,
    /// The hollow between the collar bones.
    pub front_neck: Point3,
    /// The end of a sewn shoulder seam.
    pub shoulder: Point3,
    /// The tip of the shoulder bone.
    pub acromion: Point3,
    /// The fold of the armpit on the back.
    pub back_fold: Point3,
    /// The fold of the armpit on the front.
    pub front_fold: Point3,
    /// The armpit, at the side.
    pub armpit: Point3,
    /// The bust point.
    pub bust_point: Point3,
    /// The fullest shoulder blades, in the middle of the back.
    pub blades: Point3,
    /// The waist, in the middle of the back, at the side, in the middle of the front.
    pub waist_back: Point3,
    /// The waist at the side.
    pub waist_side: Point3,
    /// The waist in the middle of the front.
    pub waist_front: Point3,
    /// The hip level in the middle of the back.
    pub hip_back: Point3,
    /// The hip level at the side.
    pub hip_side: Point3,
    /// The hip level in the middle of the front.
    pub hip_front: Point3,
}

impl Landmarks {
    pub(super) fn of(shape: &Shape, lean: &Lean, folds: &Folds) -> Self {
        let levels = &shape.levels;
        let at = |x: f64, y: f64, z: f64| lean.bend(Point3::new(x, y, z));
        let back = |y: f64| at(0.0, y, shape.back_at(y));
        let front = |y: f64| at(0.0, y, shape.front_at(0.0, y));
        let side = |y: f64| at(shape.section(y).half, y, shape.side_at(y));
        let blades = shape.blades();
        Self {
            nape: back(levels.nape),
            neck_side: side(levels.neck_side),
            front_neck: front(levels.front_neck),
            shoulder: at(
                shape.shoulder_half,
                levels.shoulder,
                shape.side_at(levels.shoulder),
            ),
            acromion: at(
                shape.acromion_half,
                levels.acromion,
                shape.side_at(levels.acromion),
            ),
            back_fold: lean.bend(folds.back),
            front_fold: lean.bend(folds.front),
            armpit: side(levels.armpit),
            bust_point: at(
                shape.bust_point,
                levels.bust,
                shape.front_at(shape.bust_point, levels.bust),
            ),
            blades: back(blades),
            waist_back: back(levels.waist),
            waist_side: side(levels.waist),
            waist_front: front(levels.waist),
            hip_back: back(levels.hip),
            hip_side: side(levels.hip),
            hip_front: front(levels.hip),
        }
    }
}
