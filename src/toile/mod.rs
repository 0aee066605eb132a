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
mod both_sides;
mod chains;
mod contact;
mod dissection;
mod dressing;
mod error;
mod fabric;
mod factor;
mod garment;
mod lines;
mod measures;
mod membrane;
mod model;
mod obj;
mod panel;
mod png;
mod raster;
mod refining;
mod seating;
mod settings;
mod settle;
mod sewn;
mod sheet;
mod shown;
mod solid;
mod space;
mod stand;
mod stitches;
mod triangles;

pub use balance::Pin;
pub use contact::Support;
pub use error::ToileError;
pub use fabric::Fabric;
pub use measures::{Gap, Heights, Plumb, Pulls, Slack, Strain, ToileMeasures};
pub use model::ToileModel;
pub use png::Picture;
pub use seating::Seating;
pub use settings::{Quality, ToileSettings};
pub use settle::{Loads, Patience, Rest, settle};
pub use sewn::Toile;
pub use sheet::{Hold, Sheet};
pub use shown::Shown;
