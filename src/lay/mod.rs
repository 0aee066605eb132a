//! The lay: how the pieces lie on cloth of a width, and what length of it they need.
//!
//! Pieces keep the grain: they are turned end to end or laid face down, never askew. A piece cut
//! on the fold lies with its fold on the cloth's fold; on cloth that is not folded it is unfolded.
//! [`parts`] makes of a pattern what is laid on a [`Cloth`]; a [`Search`] lays it again and again
//! and keeps the shortest [`Lay`], as long as the caller asks for rounds; [`picture`] draws it.
//! The same parts, seed and number of rounds give the same lay.

mod apart;
mod clearances;
mod cloth;
mod cut_shape;
mod error;
mod laid;
mod line;
mod order;
mod part;
mod parts;
mod picture;
mod picture_piece;
mod pushed;
mod room_beside;
mod rows;
mod search;
mod separation;
mod simplified;
mod spacing;
mod strip;
mod unfold;

pub use cloth::Cloth;
pub use cut_shape::{CutShape, Pose};
pub use error::LayError;
pub use laid::{Laid, Lay, Stretch};
pub use part::LayPart;
pub use parts::parts;
pub use picture::{LayLabels, picture};
pub use search::Search;
