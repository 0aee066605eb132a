//! The run's token, and the addresses that carry it.

use std::fmt::Write as _;

/// Bits from the system that nobody can guess, as text.
pub(super) fn token() -> Result<String, getrandom::Error> {
    let mut bytes = [0_u8; 16];
    getrandom::fill(&mut bytes)?;
    let mut text = String::with_capacity(32);
    for byte in bytes {
        // Writing to a string cannot fail.
        let _ = write!(text, "{byte:02x}");
    }
    Ok(text)
}

/// Whether two texts are the same, in a time that does not depend on where they differ.
pub(super) fn same(a: &str, b: &str) -> bool {
    a.len() == b.len()
        && a.bytes()
            .zip(b.bytes())
            .fold(0, |differ, (x, y)| differ | (x ^ y))
            == 0
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::{same, token};

    #[test]
    fn tokens_have_128_bits_and_differ() {
        let (a, b) = (token().unwrap(), token().unwrap());
        assert_eq!(a.len(), 32);
        assert!(same(&a, &a.clone()) && !same(&a, &b) && !same(&a, &a[..31]));
    }
}
