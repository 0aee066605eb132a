//! Numbers of a report.

/// To a thousandth, without a minus before zero.
pub(super) fn rounded(value: f64) -> f64 {
    (value * 1000.0).round() / 1000.0 + 0.0
}
