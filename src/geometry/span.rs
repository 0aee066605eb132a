//! The numbers from a low to a high one, and the nearest of them to any value.

/// The numbers from `low` to `high`, both included.
///
/// The standard library's `clamp` panics where its bounds cross or are not numbers. A span
/// cannot be made of such bounds: who makes it from measurements decides what their crossing
/// means, most often that two of them contradict each other.
///
/// # Guarantees
/// Both bounds are numbers, and `low` is not above `high`.
///
/// ```
/// use blockwright::geometry::Span;
/// let widths = Span::new(900.0, 1600.0).ok_or("no cloth is that wide")?;
/// assert_eq!(widths.nearest(1500.0), 1500.0);
/// assert_eq!(widths.nearest(2200.0), 1600.0);
/// assert_eq!(Span::new(1600.0, 900.0), None);
/// # Ok::<(), &str>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    low: f64,
    high: f64,
}

impl Span {
    /// From nothing to the whole: the shares.
    pub const SHARES: Self = Self {
        low: 0.0,
        high: 1.0,
    };

    /// From `low` to `high`; `None` where they cross or one is not a number.
    ///
    /// ```
    /// use blockwright::geometry::Span;
    /// assert!(Span::new(2.0, 2.0).is_some());
    /// assert!(Span::new(f64::NAN, 2.0).is_none());
    /// ```
    #[must_use]
    pub const fn new(low: f64, high: f64) -> Option<Self> {
        if low <= high {
            Some(Self { low, high })
        } else {
            None
        }
    }

    /// From `low` up to `high`, or `low` alone where `high` does not lie above it.
    ///
    /// For bounds of which the lower one decides.
    ///
    /// ```
    /// use blockwright::geometry::Span;
    /// assert_eq!(Span::from_low(5.0, 3.0).nearest(4.0), 5.0);
    /// ```
    #[must_use]
    pub const fn from_low(low: f64, high: f64) -> Self {
        let low = if low.is_nan() { 0.0 } else { low };
        Self {
            low,
            high: if high > low { high } else { low },
        }
    }

    /// At most `most` to either side of nothing, whatever its sign.
    ///
    /// ```
    /// use blockwright::geometry::Span;
    /// assert_eq!(Span::about_zero(30.0).nearest(-45.0), -30.0);
    /// ```
    #[must_use]
    pub const fn about_zero(most: f64) -> Self {
        let most = if most.is_nan() { 0.0 } else { most.abs() };
        Self {
            low: -most,
            high: most,
        }
    }

    /// The value, or the bound that it lies beyond; what is not a number stays so.
    #[must_use]
    pub const fn nearest(self, value: f64) -> f64 {
        if value < self.low {
            self.low
        } else if value > self.high {
            self.high
        } else {
            value
        }
    }

    /// Whether the value lies within the span, bounds included; nothing that is not a number
    /// does.
    #[must_use]
    pub const fn contains(self, value: f64) -> bool {
        self.low <= value && value <= self.high
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn never_made_of_bounds_that_cross() {
        for (low, high) in [(1.0, 0.0), (f64::NAN, 1.0), (0.0, f64::NAN)] {
            assert_eq!(Span::new(low, high), None);
            let span = Span::from_low(low, high);
            assert!(span.low <= span.high);
        }
        assert_eq!(Span::about_zero(f64::NAN).nearest(3.0), 0.0);
        assert_eq!(Span::about_zero(-2.0).nearest(3.0), 2.0);
    }

    #[test]
    fn what_is_no_number_is_not_made_one() {
        assert!(Span::SHARES.nearest(f64::NAN).is_nan());
        assert!(!Span::SHARES.contains(f64::NAN));
    }
}
