//! A pattern sewn on the body in the round on screen: a picture.
//!
//! Cloth is a sheet of triangles that resists stretch, shear and bending, hangs by its weight and
//! rests on a body with friction; [`settle`] brings it to rest and says by how much the forces are
//! still out of balance. The physics is checked against closed solutions: a hanging strip, a catenary,
//! the heavy elastica, a tube on a cylinder.
//!
//! # What it does not show
//!
//! It is a picture, good to about 5 mm; no toile in cloth has been compared with it. There is no sleeve,
//! no seam allowance, no contact of cloth with cloth. It replaces no toile in cloth.

mod balance;
mod bending;
mod cloth;
mod contact;
mod dissection;
mod error;
mod factor;
mod membrane;
mod settle;
mod sheet;
mod space;

pub use balance::Pin;
pub use cloth::Cloth;
pub use contact::Surface;
pub use error::ToileError;
pub use settle::{Loads, Patience, Rest, settle};
pub use sheet::{Hold, Sheet};
