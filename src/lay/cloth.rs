//! The cloth pieces are laid on.

use super::LayError;

/// Cloth: how wide, how it lies, and what pieces keep from one another.
///
/// # Guarantees
/// Width and gap are finite and within their limits.
///
/// ```
/// use blockwright::lay::Cloth;
/// let linen = Cloth::new(1400.0)?.folded();
/// assert_eq!(linen.lay_width(), 700.0);
/// assert!(!linen.is_one_way());
/// assert_eq!(linen.gap(), Cloth::USUAL_GAP);
/// # Ok::<(), blockwright::lay::LayError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cloth {
    width: f64,
    folded: bool,
    one_way: bool,
    gap: f64,
}

impl Cloth {
    /// What pieces usually keep from one another, from the selvedges and from the cut ends, in
    /// millimetres: room for the shears and for a cut that wanders (common practice: a few
    /// millimetres where cut lines are drawn).
    pub const USUAL_GAP: f64 = 5.0;
    /// The narrowest cloth, in millimetres: a ribbon.
    pub const NARROWEST: f64 = 50.0;
    /// The widest cloth, in millimetres.
    pub const WIDEST: f64 = 10_000.0;
    /// The greatest gap, in millimetres.
    pub const WIDEST_GAP: f64 = 100.0;

    /// Cloth of that width between the selvedges in millimetres, not folded, whose pieces may lie
    /// both ways, with the usual gap.
    ///
    /// # Errors
    /// When the width is no width of cloth.
    pub fn new(width: f64) -> Result<Self, LayError> {
        if !(Self::NARROWEST..=Self::WIDEST).contains(&width) {
            return Err(LayError::Width {
                width,
                least: Self::NARROWEST,
                most: Self::WIDEST,
            });
        }
        Ok(Self {
            width,
            folded: false,
            one_way: false,
            gap: Self::USUAL_GAP,
        })
    }

    /// The same cloth folded lengthwise, selvedges together: every piece is cut from two layers.
    #[must_use]
    pub fn folded(self) -> Self {
        Self {
            folded: true,
            ..self
        }
    }

    /// The same cloth not folded.
    #[must_use]
    pub fn opened(self) -> Self {
        Self {
            folded: false,
            ..self
        }
    }

    /// The same cloth with a nap, a pile or a print that has an upper end: all pieces lie one way.
    #[must_use]
    pub fn one_way(self) -> Self {
        Self {
            one_way: true,
            ..self
        }
    }

    /// The same cloth with another gap between pieces, in millimetres.
    ///
    /// # Errors
    /// When the gap is negative or out of reach.
    pub fn with_gap(self, gap: f64) -> Result<Self, LayError> {
        if !(0.0..=Self::WIDEST_GAP).contains(&gap) {
            return Err(LayError::Gap {
                gap,
                most: Self::WIDEST_GAP,
            });
        }
        Ok(Self { gap, ..self })
    }

    /// Width between the selvedges, in millimetres.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.width
    }

    /// Width as it lies, in millimetres: half when it is folded.
    #[must_use]
    pub fn lay_width(&self) -> f64 {
        if self.folded {
            self.width / 2.0
        } else {
            self.width
        }
    }

    /// Whether it is folded lengthwise.
    #[must_use]
    pub fn is_folded(&self) -> bool {
        self.folded
    }

    /// Whether all pieces lie one way.
    #[must_use]
    pub fn is_one_way(&self) -> bool {
        self.one_way
    }

    /// What pieces keep from one another, from the selvedges and from the cut ends, in
    /// millimetres.
    #[must_use]
    pub fn gap(&self) -> f64 {
        self.gap
    }
}
