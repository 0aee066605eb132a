//! What a pattern is made of: edges, outlines, darts, marks, pieces, seams, the whole pattern.
//!
//! An outline runs clockwise as seen on the page, from the top of the fold. A dart that
//! opens on an edge is drawn open: the edge runs to its first leg, round the shaped mouth,
//! and on from its second leg; the *seam length* of an edge is its length less those mouths.

mod aim;
mod closing;
mod dart;
mod edge;
mod error;
mod fullness;
mod girth;
mod level;
mod marks;
mod measure;
mod measuring;
mod mouth;
mod outline;
mod pattern;
mod seam;
mod sewing_piece;
mod side;
mod side_name;
mod wide_dart;

pub(crate) use aim::{AimedEdge, aim_edge};
pub use dart::{Apexes, Dart, Pressed};
pub use edge::{Edge, EdgeName, EdgeRole};
pub use error::PieceError;
pub use fullness::BUST_POINT;
pub use girth::{Girth, GirthRun, RunAlong};
pub(crate) use level::level_through;
pub use marks::{BalanceLine, Cut, DrillPoint, NamedPoint, Notch, NotchKind};
pub use measure::{Measure, MeasureKind, MeasureUnit};
pub use measuring::shoulder_slope;
pub use mouth::shaped_mouth;
pub use outline::Outline;
pub use pattern::{Pattern, PatternParts, Warning};
pub use seam::{EaseOn, EdgeRef, Seam};
pub use sewing_piece::{Piece, PieceParts};
pub use side::BodySide;
pub(crate) use wide_dart::{newly_wide, wide_darts};
