//! Paths and numbers as text with fixed decimals.

use kurbo::{BezPath, PathEl};

/// SVG path data with so many decimals.
pub(crate) fn path_data(path: &BezPath, decimals: usize) -> String {
    let mut data = String::new();
    for element in path.elements() {
        let (letter, points) = match element {
            PathEl::MoveTo(p) => ('M', vec![p]),
            PathEl::LineTo(p) => ('L', vec![p]),
            PathEl::QuadTo(a, p) => ('Q', vec![a, p]),
            PathEl::CurveTo(a, b, p) => ('C', vec![a, b, p]),
            PathEl::ClosePath => ('Z', vec![]),
        };
        data.push(letter);
        let numbers: Vec<_> = points
            .into_iter()
            .flat_map(|p| [fixed(p.x, decimals), fixed(p.y, decimals)])
            .collect();
        data.push_str(&numbers.join(" "));
    }
    data
}

/// A number with so many decimals, and no minus before a zero.
pub(crate) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if rest.chars().all(|c| c == '0' || c == '.') => rest.to_owned(),
        _ => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zero_has_no_sign() {
        assert_eq!(fixed(-0.0001, 3), "0.000");
        assert_eq!(fixed(-0.1, 1), "-0.1");
    }
}
