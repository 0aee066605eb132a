//! Something for every measurement.

use super::measurement::Measurement;

/// A list with a place for each measurement, in the order of [`Measurement::ALL`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ByMeasurement<T>([T; Measurement::ALL.len()]);

#[expect(
    clippy::indexing_slicing,
    reason = "there are as many places as measurements"
)]
impl<T> ByMeasurement<T> {
    /// What stands at the place of a measurement.
    pub(super) const fn of(&self, measurement: Measurement) -> &T {
        &self.0[measurement.index()]
    }

    /// The same, to be changed.
    pub(super) const fn of_mut(&mut self, measurement: Measurement) -> &mut T {
        &mut self.0[measurement.index()]
    }
}

impl<T> ByMeasurement<T> {
    /// The same in every place.
    pub(super) const fn all(value: T) -> Self
    where
        T: Copy,
    {
        Self([value; Measurement::ALL.len()])
    }

    /// Something else made of each.
    pub(super) fn map<U>(self, make: impl FnMut(T) -> U) -> ByMeasurement<U> {
        ByMeasurement(self.0.map(make))
    }

    /// All of them, each with its measurement.
    pub(super) fn iter_mut(&mut self) -> impl Iterator<Item = (Measurement, &mut T)> {
        Measurement::ALL.into_iter().zip(&mut self.0)
    }
}
