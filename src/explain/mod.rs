//! What every error of this crate says in one form: a code, a place, the cause, the cure.

mod explanation;
mod several;

pub use explanation::{Explain, Explanation};
pub use several::Several;
