//! Words of the sentences.

use crate::piece::EdgeName;

/// A length as a sentence has it: whole millimetres, or tenths where they matter.
pub(super) fn mm(value: f64) -> String {
    let value = value.abs();
    if (value - value.round()).abs() < 0.05 {
        format!("{:.0} mm", value.round())
    } else {
        format!("{value:.1} mm")
    }
}

/// An edge as it is called in a sentence.
pub(super) fn edge_words(edge: &EdgeName) -> String {
    edge.as_str().replace('_', " ")
}

/// Parts of a sentence: `a`, `a and b`, `a, b and c`.
pub(super) fn listed(parts: &[String]) -> String {
    match parts {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lengths_and_lists() {
        assert_eq!(
            [mm(-15.0), mm(14.98), mm(2.34)],
            ["15 mm", "15 mm", "2.3 mm"]
        );
        let parts = ["a", "b", "c"].map(str::to_owned);
        assert_eq!(listed(&parts), "a, b and c");
        assert_eq!(listed(&parts[..1]), "a");
    }
}
