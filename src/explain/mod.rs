//! What every error of this crate says in one form: a code, a place, the cause, the cure.

mod explanation;

pub use explanation::{Explain, Explanation};
