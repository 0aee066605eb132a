//! How the value of a measurement is written for a person and for a program.

use super::measurement::{Kind, Measurement};
use crate::units::{Angle, Fraction, Length, LengthStyle, Unit};

/// The value with its unit: `402 mm`, `15 7/8 in`, `23.5°`.
pub(super) fn show(measurement: Measurement, value: f64, unit: Unit) -> String {
    let text = match measurement.kind() {
        Kind::Length => Length::from_mm(value).map(|l| l.to_text(LengthStyle::usual(unit))),
        Kind::Angle => Angle::from_radians(value).map(|a| a.to_string()),
    };
    text.unwrap_or_else(|_| value.to_string())
}

/// A difference, such as a spread, as a bare number of the same unit: `22`, `7/8 in`,
/// `3.7°`.
pub(super) fn difference(measurement: Measurement, value: f64, unit: Unit) -> String {
    let style = match unit {
        Unit::In => LengthStyle::Inches(Fraction::Eighths),
        other => LengthStyle::usual(other),
    };
    let text = match measurement.kind() {
        Kind::Length => Length::from_mm(value).map(|l| l.to_text(style)),
        Kind::Angle => Angle::from_radians(value).map(|a| a.to_string()),
    };
    let text = text.unwrap_or_else(|_| value.to_string());
    match unit {
        Unit::In => text,
        other => text
            .strip_suffix(other.name())
            .map_or(text.clone(), |bare| bare.trim().to_owned()),
    }
}

/// The number for machine output: mm or degrees, to a thousandth.
pub(super) fn rounded(measurement: Measurement, value: f64) -> f64 {
    let edge = match measurement.kind() {
        Kind::Length => value,
        Kind::Angle => value.to_degrees(),
    };
    (edge * 1000.0).round() / 1000.0
}
