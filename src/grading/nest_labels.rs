//! What a nest is to say.

use crate::units::Unit;

/// What is written on the nest.
///
/// ```
/// use blockwright::grading::NestLabels;
/// let labels = NestLabels::new("Dress block");
/// assert_eq!(labels.title, "Dress block");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NestLabels {
    /// The job's title.
    pub title: String,
    /// Its date, as it is to be written, if it should be said.
    pub date: Option<String>,
    /// Whether every size has a colour of its own besides its dashes.
    pub colour: bool,
    /// The unit in which lengths are written.
    pub unit: Unit,
}

impl NestLabels {
    /// A title alone, in black.
    #[must_use]
    pub fn new(title: impl Into<String>) -> Self {
        Self {
            title: title.into(),
            date: None,
            colour: false,
            unit: Unit::Mm,
        }
    }
}
