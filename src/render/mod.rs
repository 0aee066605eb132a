//! From finished positions to files: SVG and, with the feature `pdf`, PDF as one sheet or as
//! pages for a home printer. Nothing here knows of garments, reads a clock or touches a file.

#[cfg(feature = "pdf")]
pub mod pdf;
pub mod svg;
