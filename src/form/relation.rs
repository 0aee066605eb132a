//! What is expected of a parameter, from what was measured.

use super::parameter::ShapeParameter;
use crate::measurements::{Body, Measurement};

/// A linear relation to measurements, and the spread that it leaves.
#[derive(Debug, Clone, Copy)]
pub(super) struct Relation {
    pub(super) of: ShapeParameter,
    pub(super) constant: f64,
    pub(super) terms: &'static [(Measurement, f64)],
    pub(super) spread: f64,
}

impl Relation {
    pub(super) fn mean(&self, body: &Body) -> f64 {
        let term = |sum, (of, share): &(Measurement, f64)| sum + share * body.value(*of);
        self.terms.iter().fold(self.constant, term)
    }
}
