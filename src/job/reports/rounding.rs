//! Numbers of a report.

#[cfg(feature = "lay")]
use crate::units::{Length, LengthStyle, Unit};

/// To a thousandth, without a minus before zero.
pub(in crate::job) fn rounded(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0 + 0.0
}

/// A length in millimetres as the trade writes it.
#[cfg(feature = "lay")]
pub(in crate::job) fn shown(mm: f64, unit: Unit) -> String {
    Length::from_mm(mm).map_or_else(
        |_| format!("{mm:.0} mm"),
        |length| length.to_text(LengthStyle::usual(unit)),
    )
}
