//! Seam allowance: how wide it is along each edge, how its corners are cut, the line on which
//! the cloth is cut.
//!
//! The stitching line is never touched: alterations are made on it, and the allowance is added
//! last.

mod allowances;
mod beside;
mod corner;
mod cut_line;
mod cut_lines;
mod error;

pub use allowances::Allowances;
pub use beside::cut_line_beside;
pub use cut_line::cut_line;
pub use cut_lines::CutLines;
pub use error::AllowanceError;
