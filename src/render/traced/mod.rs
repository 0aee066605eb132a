//! A block traced from a drawing: an SVG in true size whose paths are named by piece and edge.
//!
//! The names are those that `pattern.svg` carries: `back.side_seam` is the edge `side_seam` of the piece
//! `back`, `back.waist_dart` a dart, `back.waist_line` a balance line, `back.hip_notch` a notch,
//! `front.bust_point` a point, `back.grain` the grain line. What such a block has (which edges, in
//! which order, what is sewn to what, which girths) is said by the draft of its kind; where everything
//! runs is said by the drawing.

mod ends;
mod error;
mod fault;
mod gap;
mod named_path;
mod outline;
mod place;
mod sew;
mod shapes;
mod svg_paths;
mod traced_darts;
mod traced_lines;
mod traced_marks;
mod traced_piece;
mod viewport;

pub use error::TracedError;
pub use gap::CLOSED_WITHIN;
pub use sew::trace;
