//! What a form reproduces, and what its dimensions are.

use super::parameter::ShapeParameter as P;
use crate::measurements::Measurement as M;
use crate::units::rounded;
use serde::{Serialize, Serializer, ser::SerializeStruct as _};

/// A measurement as a tape finds it on the form.
///
/// Serialised with the miss.
///
/// ```
/// use blockwright::form::Reproduced;
/// use blockwright::measurements::Measurement;
/// let back = Reproduced { of: Measurement::BackWaistLength, given: 380.0, found: 380.02, is_taken: true };
/// assert!(back.miss().abs() < 0.1);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
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
/// Serialised with the spreads that it is off.
///
/// ```
/// use blockwright::form::{Dimension, ShapeParameter};
/// let depth = Dimension { of: ShapeParameter::BustDepth, value: 250.0, expected: 240.0, spread: 8.0 };
/// assert_eq!(depth.spreads(), 1.25);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
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

impl Serialize for Reproduced {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Reproduced", 5)?;
        out.serialize_field("of", &self.of)?;
        out.serialize_field("given", &rounded(self.given, 2))?;
        out.serialize_field("found", &rounded(self.found, 2))?;
        out.serialize_field("miss", &rounded(self.miss(), 2))?;
        out.serialize_field("is_taken", &self.is_taken)?;
        out.end()
    }
}

impl Serialize for Dimension {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Dimension", 5)?;
        out.serialize_field("of", &self.of)?;
        out.serialize_field("value", &rounded(self.value, 3))?;
        out.serialize_field("expected", &rounded(self.expected, 3))?;
        out.serialize_field("spread", &rounded(self.spread, 3))?;
        out.serialize_field("spreads", &rounded(self.spreads(), 2))?;
        out.end()
    }
}
