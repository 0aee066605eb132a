//! Measures of a pattern by the words they have in accounts.

use blockwright::piece::Pattern;

/// The value of a measure, `back centre_back length` for example, in millimetres or degrees.
pub fn reading(pattern: &Pattern, what: &str) -> Option<f64> {
    let mut all = pattern.measures().into_iter();
    all.find(|(measure, _)| measure.to_string() == what)
        .map(|(_, value)| value)
}
