//! What a fitter bothers with.

/// Below what a fitter does nothing, and how amounts are rounded.
///
/// ```
/// use blockwright::fit::FitSettings;
/// let settings = FitSettings::default();
/// assert_eq!((settings.least_length, settings.least_degrees), (3.0, 0.5));
/// assert_eq!(FitSettings::exact().least_length, 0.0);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct FitSettings {
    /// No amount smaller than this is made, in millimetres.
    pub least_length: f64,
    /// The same of angles, in degrees.
    pub least_degrees: f64,
    /// Amounts are whole multiples of this, in millimetres; nothing for amounts as solved.
    pub round_length: f64,
    /// The same of angles, in degrees.
    pub round_degrees: f64,
}

impl FitSettings {
    /// Every amount as it is solved, however small.
    #[must_use]
    pub const fn exact() -> Self {
        Self {
            least_length: 0.0,
            least_degrees: 0.0,
            round_length: 0.0,
            round_degrees: 0.0,
        }
    }
}

impl Default for FitSettings {
    /// 3 mm or half a degree at least, in steps of half a millimetre and a quarter of a degree.
    fn default() -> Self {
        Self {
            least_length: 3.0,
            least_degrees: 0.5,
            round_length: 0.5,
            round_degrees: 0.25,
        }
    }
}
