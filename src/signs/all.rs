//! All signs in one list.

use super::lower::LOWER;
use super::sign::Sign;
use super::upper::UPPER;

/// Every sign, from the neck down.
#[expect(
    clippy::indexing_slicing,
    reason = "worked out while compiling: a place that is not there does not compile"
)]
pub const SIGNS: &[Sign] = &{
    let mut all = [UPPER[0]; UPPER.len() + LOWER.len()];
    let mut at = 0;
    while at < UPPER.len() {
        all[at] = UPPER[at];
        at += 1;
    }
    while at < UPPER.len() + LOWER.len() {
        all[at] = LOWER[at - UPPER.len()];
        at += 1;
    }
    all
};
