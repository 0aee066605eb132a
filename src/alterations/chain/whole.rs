//! A pattern as it was before its darts were merged or made into seams.
//!
//! A cutter alters the whole pieces and divides them last. A chain that names its steps in another
//! order comes to the same: what follows is made on the pieces as they were, which are then divided
//! again.

use super::proof::{Marks, Proof, proved, with_warnings};
use super::readings::Readings;
use super::refused::Reason;
use crate::alterations::Alteration;
use crate::piece::Pattern;
use std::sync::Arc;

/// Alterations that finish darts: after them their piece is no longer what a block is altered on.
pub(in crate::alterations) const FINISHES: [&str; 2] = ["dart_to_seam", "dart_merging"];

/// A pattern before its darts were finished, and the steps that finish them, in order.
#[derive(Debug, Clone)]
pub(in crate::alterations) struct Whole {
    pub pattern: Pattern,
    last: Vec<Arc<dyn Alteration>>,
}

/// What finishes darts has no amount: by any it is itself.
fn itself(step: &dyn Alteration) -> Arc<dyn Alteration> {
    Arc::from(step.with_amount(0.0))
}

impl Whole {
    /// A pattern that a step is about to finish.
    pub fn of(pattern: &Pattern, step: &dyn Alteration) -> Self {
        Self {
            pattern: pattern.clone(),
            last: vec![itself(step)],
        }
    }

    /// The same, finished by one step more.
    pub fn finished_by(&self, step: &dyn Alteration) -> Self {
        let mut more = self.clone();
        more.last.push(itself(step));
        more
    }

    /// The same of an altered pattern.
    pub fn with(&self, pattern: Pattern) -> Self {
        Self {
            pattern,
            last: self.last.clone(),
        }
    }

    /// The finished pattern, every step proved.
    ///
    /// # Errors
    /// When a step can no longer be made.
    pub fn finish(&self) -> Result<Pattern, Reason> {
        let mut pattern = self.pattern.clone();
        for step in &self.last {
            let readings = Readings::of(&pattern);
            let proof = Proof::of(&pattern, step.as_ref())?;
            let (made, _) = proved(&pattern, &readings, step.as_ref(), &proof, Marks::Now)?;
            let mut new = made.warnings;
            new.retain(|warning| !made.pattern.warnings().contains(warning));
            pattern = with_warnings(made.pattern, new)?;
        }
        Ok(pattern)
    }
}
