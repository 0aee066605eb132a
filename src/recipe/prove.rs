//! Proof that a pattern can be sewn.

use crate::invariants::{Tolerances, check_all};
use crate::piece::Pattern;

/// The laws that the pattern breaks, a sentence each; empty when it can be sewn.
pub(super) fn prove(pattern: &Pattern) -> Vec<String> {
    check_all(pattern, &Tolerances::drafted())
        .iter()
        .map(|violation| format!("{}: {violation}", violation.law()))
        .collect()
}
