//! What words are written with: the built-in font, another one for other scripts, or where the feature
//! `fonts` is off the two faces that every viewer carries.

mod error;
mod file;
mod letters;
#[cfg(feature = "fonts")]
mod order;
mod run;
#[cfg(feature = "fonts")]
mod subset;
mod which;

pub use error::FontError;
pub use file::FontFile;
pub use letters::Fonts;
pub(super) use run::Run;
#[cfg(feature = "fonts")]
pub(super) use subset::write;
pub(super) use which::{Used, Which};
