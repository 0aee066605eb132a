//! A list read as a ring.

/// Each item with the one after it, the last with the first.
pub(crate) fn with_next<T>(ring: &[T]) -> impl Iterator<Item = (&T, &T)> {
    ring.iter().zip(ring.iter().cycle().skip(1))
}

#[cfg(test)]
mod tests {
    use super::with_next;

    #[test]
    fn the_last_is_followed_by_the_first() {
        let pairs: Vec<_> = with_next(&[1, 2, 3]).collect();
        assert_eq!(pairs, [(&1, &2), (&2, &3), (&3, &1)]);
        assert_eq!(with_next(&[7]).collect::<Vec<_>>(), [(&7, &7)]);
        assert_eq!(with_next::<u8>(&[]).count(), 0);
    }
}
