//! From finished positions to files: SVG and, with the feature `pdf`, PDF as one sheet or as
//! pages for a home printer; the pattern document as JSON; the pieces as DXF; the fitting page as HTML. Nothing here reads a clock or
//! touches a file.

pub mod demonstration;
pub mod dxf;
pub mod fitting;
pub mod json;
#[cfg(feature = "pdf")]
pub mod pdf;
pub mod svg;
#[cfg(feature = "own-block")]
pub mod traced;
