//! Several errors at once.

use super::Explain;
use std::error::Error;
use std::fmt;

/// Everything that is wrong, where one thing alone would send the user back once for each.
///
/// Written out, one error a line; its code and place are those of the first.
///
/// # Guarantees
/// There is at least one.
///
/// ```
/// use blockwright::explain::{Explain, Several};
/// use blockwright::measurements::{Body, Measurement, MeasurementError};
/// let errors: Several<MeasurementError> =
///     Body::from_taken([(Measurement::BustGirth, f64::NAN)]).unwrap_err();
/// assert_eq!(errors.all().len(), 4); // bust_girth, and three that are missing
/// assert_eq!(errors.to_string().lines().count(), 4);
/// assert_eq!(errors.code(), errors.all()[0].code());
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Several<E>(Vec<E>);

impl<E> Several<E> {
    /// All of them; `None` if there are none.
    pub(crate) fn of(errors: Vec<E>) -> Option<Self> {
        (!errors.is_empty()).then_some(Self(errors))
    }

    /// One alone.
    pub(crate) fn one(error: E) -> Self {
        Self(vec![error])
    }

    /// The errors; never empty.
    #[must_use]
    pub fn all(&self) -> &[E] {
        &self.0
    }
}

impl<E> IntoIterator for Several<E> {
    type Item = E;
    type IntoIter = std::vec::IntoIter<E>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a, E> IntoIterator for &'a Several<E> {
    type Item = &'a E;
    type IntoIter = std::slice::Iter<'a, E>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

impl<E: fmt::Display> fmt::Display for Several<E> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, error) in self.0.iter().enumerate() {
            if place > 0 {
                f.write_str("\n")?;
            }
            write!(f, "{error}")?;
        }
        Ok(())
    }
}

impl<E: Error> Error for Several<E> {}

impl<E: Explain> Explain for Several<E> {
    /// That of the first.
    fn code(&self) -> String {
        self.0.first().map_or_else(String::new, Explain::code)
    }

    /// That of the first.
    fn place(&self) -> Option<String> {
        self.0.first().and_then(Explain::place)
    }

    /// Each once.
    fn cure(&self) -> String {
        let mut cures: Vec<String> = self.0.iter().map(Explain::cure).collect();
        cures.dedup();
        cures.join("; ")
    }
}
