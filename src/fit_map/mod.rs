//! Where a pattern is too long or too short for a body: taut threads on the body in the round beside
//! straight threads in the pattern.
//!
//! A thread of the cloth runs straight in the pattern. On the body the same thread lies taut from the
//! nape, or from the level of the armpits, to the waist. What the pattern has more is cloth that has to
//! go somewhere: folds across the small of the back, most often. What it has less pulls. From the waist
//! to the level of the seat threads are compared in the same way. Round the body
//! the finished girths stand beside the body's.
//!
//! A map is as good as what is known of the wearer. A block drafted from the same numbers agrees by
//! construction, and the map says so. Its chief use is a block of a table size, or one's own block, on
//! a wearer who was measured. It replaces no toile in cloth.

mod advice;
mod girths;
mod map;
mod panel;
mod thread;

pub use advice::Advice;
pub use girths::RoundStation;
pub use map::{FitMap, Origin, fit_map};
pub(crate) use thread::tenth;
pub use thread::{Band, Thread, ThreadPlace};
