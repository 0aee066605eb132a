//! A body in the round, from measurements.
//!
//! [`Form::of`] finds the body that reproduces what was taped and otherwise stays as near as it can to
//! the women surveyed: every taped length and girth is measured on the surface as a tape would be, and
//! breadths, depths and heights that no tape gives have a mean and a spread from the survey. What it
//! finds is reported: each measurement as found on the form, and each dimension's distance from what
//! the survey expects. Measurements that no body can have are refused, and the two that contradict each
//! other are named.
//!
//! # Frame
//!
//! Millimetres. `x` runs to the wearer's left, `y` up from the natural waist, `z` to the front; the
//! middle of the body is at x = 0, and z = 0 is the upright plane that touches the shoulder blades. The
//! form is the same left and right, ends at the knee below and 60 mm above the nape, and has no arms: a
//! plane on each side says where an armhole cuts it. Below the seat it is a plain column, round which a
//! skirt can hang.
//!
//! # What it does not know
//!
//! Shape between the levels is invented, and a form made from the measurements that drafted a block
//! agrees with that block by construction. It replaces no toile in cloth.

mod armhole;
mod contradiction;
mod error;
mod faults;
mod finding;
mod folds;
mod form_of_body;
mod found;
mod fullness;
mod landmarks;
mod lean;
mod leaning;
mod levels;
mod parameter;
mod point;
mod posture;
mod prior;
mod profile;
mod relation;
mod section;
mod shape;
mod solve;
mod surface;
#[rustfmt::skip]
mod surveyed;
mod tape;
mod taped;
mod thread;

pub use armhole::Armhole;
pub use error::{FormError, OutOfReach};
pub use form_of_body::Form;
pub use found::{Dimension, Reproduced};
pub use landmarks::Landmarks;
pub use levels::Levels;
pub use parameter::ShapeParameter;
pub use point::Point3;
pub use posture::{Posture, PostureSign};
pub use surface::{Ring, Surface};
pub use thread::Half;
