//! Curves, constructions and rigid motions over [`kurbo`]; knows nothing of clothes.
//!
//! Millimetres throughout, y runs down the page, and a positive angle turns clockwise as
//! seen on the page. Every epsilon is named in [`tolerance`] with its reason.
//!
//! Points, vectors, rectangles and segments are those of `kurbo` 0.13, which is handed on as
//! `geometry::kurbo`: what is taken from there always fits.

mod blend;
mod carried;
mod construct;
mod counted;
mod cubic_length;
mod curve;
pub(crate) mod elementary;
mod error;
mod flatten;
mod intersect;
mod measure;
mod offset;
pub(crate) mod path_data;
mod region;
mod rigid;
pub(crate) mod ring;
mod round;
mod slivers;
mod solve;
mod span;
pub mod tolerance;
mod which;

pub(crate) use blend::as_cubic;
pub(crate) use blend::carried;
pub use blend::{blend_end, blend_start};
pub(crate) use carried::carried_smoothly;
pub use construct::{along, angle_between, intersect_lines, perpendicular, unit};
pub(crate) use counted::counted;
pub(crate) use curve::on_paper;
pub use curve::{Curve, arriving, leaving};
pub use error::GeometryError;
pub(crate) use intersect::ring_crossing;
pub use intersect::{Crossing, crossings, first_self_crossing};
pub use kurbo::{self, Point, Vec2};
pub(crate) use measure::hull;
pub use measure::{arc_length, signed_area};
pub(crate) use offset::{OffsetRun, carried_on, offset_runs, without_loops};
pub use region::Region;
pub use rigid::{Rigid, mirror_about};
pub(crate) use round::with_next;
pub(crate) use slivers::{at_joint, without_slivers};
pub use solve::{bend_to_length, root};
pub use span::Span;
pub(crate) use which::Which;
