//! Lengths and angles: read in the units of the trade, held in millimetres and radians.
//!
//! * [`Unit`] names the unit of a number: millimetres, centimetres or inches.
//! * [`Length`] reads `92 cm`, `36 1/2 in`, `36½"` or `5'4"` and writes the same.
//! * [`Angle`] reads `23`, `23°` or `0.4 rad`.
//! * [`speak`] says the lengths of a sentence in another unit.
//! * [`UnitError`] says what was wrong with a text that is neither.

mod angle;
mod error;
mod format;
mod length;
mod number;
mod speech;
mod unit;

pub use angle::Angle;
pub use error::UnitError;
pub use format::{Fraction, LengthStyle, rounded};
pub use length::{LONGEST_MM, Length};
pub use speech::speak;
pub use unit::Unit;
