//! All signs in one list.

use super::lower::LOWER;
use super::rounded::ROUNDED;
use super::sign::{BodyPlace, Sign};
use super::sleeve::SLEEVE;
use super::upper::UPPER;

const LISTS: [&[Sign]; 4] = [&UPPER, &SLEEVE, &ROUNDED, &LOWER];
const COUNT: usize = UPPER.len() + SLEEVE.len() + ROUNDED.len() + LOWER.len();

/// Every sign, from the neck down: by place, and at one place in the order of the lists.
#[expect(
    clippy::indexing_slicing,
    reason = "worked out while compiling: a place that is not there does not compile"
)]
pub const SIGNS: &[Sign] = &{
    let mut all = [UPPER[0]; COUNT];
    let (mut at, mut place) = (0, 0);
    while place < BodyPlace::ALL.len() {
        let mut list = 0;
        while list < LISTS.len() {
            let mut sign = 0;
            while sign < LISTS[list].len() {
                if LISTS[list][sign].place as usize == BodyPlace::ALL[place] as usize {
                    all[at] = LISTS[list][sign];
                    at += 1;
                }
                sign += 1;
            }
            list += 1;
        }
        place += 1;
    }
    all
};
