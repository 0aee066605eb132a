//! What a form reproduces, and what its dimensions are.

use super::parameter::ShapeParameter as P;
use crate::measurements::Measurement as M;
use serde::Serialize;

/// A measurement as a tape finds it on the form.
///
/// ```
/// use blockwright::form::Reproduced;
/// use blockwright::measurements::Measurement;
/// let back = Reproduced { of: Measurement::BackWaistLength, given: 380.0, found: 380.02, is_taken: true };
/// assert!(back.miss().abs() < 0.1);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Reproduced {
    /// Which; `nape_height` is above the waist.
    pub of: M,
    /// As taken or estimated, in mm.
    pub given: f64,
    /// As found on the form, in mm.
    pub found: f64,
    /// Whether it was taken.
    pub is_taken: bool,
}

impl Reproduced {
    /// By how much the form is larger, in mm.
    #[must_use]
    pub fn miss(&self) -> f64 {
        self.found - self.given
    }
}

/// A dimension that was solved for, beside what the survey expects.
///
/// ```
/// use blockwright::form::{Dimension, ShapeParameter};
/// let depth = Dimension { of: ShapeParameter::BustDepth, value: 250.0, expected: 240.0, spread: 8.0 };
/// assert_eq!(depth.spreads(), 1.25);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Dimension {
    /// Which.
    pub of: P,
    /// As solved: mm, for shares and roundness a number.
    pub value: f64,
    /// As the survey expects it of these measurements.
    pub expected: f64,
    /// Standard deviation of one woman about that.
    pub spread: f64,
}

impl Dimension {
    /// By how many spreads it is off.
    #[must_use]
    pub fn spreads(&self) -> f64 {
        (self.value - self.expected) / self.spread
    }
}
