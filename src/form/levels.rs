//! Heights on a form.

use serde::Serialize;

/// Heights of a form in mm above the natural waist; what lies below it is negative.
///
/// ```
/// use blockwright::form::Form;
/// use blockwright::measurements::{Body, Measurement};
/// let body = Body::from_taken([
///     (Measurement::Height, 1680.0), (Measurement::BustGirth, 920.0),
///     (Measurement::WaistGirth, 760.0), (Measurement::HipGirth, 1000.0),
/// ])?;
/// let levels = Form::of(&body)?.levels();
/// assert!(levels.nape > levels.armpit && levels.armpit > levels.bust);
/// assert_eq!(levels.waist, 0.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Levels {
    /// The nape bone.
    pub nape: f64,
    /// Where neck and shoulder meet.
    pub neck_side: f64,
    /// The hollow between the collar bones.
    pub front_neck: f64,
    /// The tip of the shoulder bone.
    pub acromion: f64,
    /// The end of a sewn shoulder seam.
    pub shoulder: f64,
    /// The armpit.
    pub armpit: f64,
    /// The bust points.
    pub bust: f64,
    /// Directly below the bust.
    pub underbust: f64,
    /// The natural waist: 0.
    pub waist: f64,
    /// The fullest seat.
    pub hip: f64,
    /// The knee, where the form ends.
    pub knee: f64,
}
