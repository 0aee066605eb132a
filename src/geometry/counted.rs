//! A number as a count.

/// How often the whole of something fits: a number without its fraction. What is less than one or no
/// number at all counts nothing, and what is too large to count, the most there is.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "that the fraction goes, and that negative numbers count nothing, is what it is for"
)]
pub(crate) const fn counted(number: f64) -> usize {
    number as usize
}

#[cfg(test)]
mod tests {
    use super::counted;

    #[test]
    fn fractions_and_what_cannot_be_counted_go() {
        let counts = [3.99, 0.99, -7.0, f64::NAN, f64::INFINITY].map(counted);
        assert_eq!(counts, [3, 0, 0, 0, usize::MAX]);
    }
}
