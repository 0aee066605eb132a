//! One of the two things of a pair.

/// The first or the second of two: what picks from a pair, which a number could miss.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Which {
    First,
    Second,
}

impl Which {
    pub const BOTH: [Self; 2] = [Self::First, Self::Second];

    /// The second where that is so, else the first.
    pub const fn second_if(so: bool) -> Self {
        if so { Self::Second } else { Self::First }
    }

    pub const fn other(self) -> Self {
        match self {
            Self::First => Self::Second,
            Self::Second => Self::First,
        }
    }

    pub const fn of<T>(self, [first, second]: &[T; 2]) -> &T {
        match self {
            Self::First => first,
            Self::Second => second,
        }
    }

    pub const fn of_mut<T>(self, [first, second]: &mut [T; 2]) -> &mut T {
        match self {
            Self::First => first,
            Self::Second => second,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Which;

    #[test]
    fn each_picks_its_own() {
        let mut pair = ["one", "two"];
        assert_eq!(Which::BOTH.map(|which| *which.of(&pair)), pair);
        *Which::Second.of_mut(&mut pair) = "other";
        assert_eq!(Which::First.other().of(&pair), &"other");
        assert_eq!(Which::second_if(false).of_mut(&mut pair), &"one");
    }
}
