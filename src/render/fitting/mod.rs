//! The fitting page: one self-contained HTML file to read beside the toile.
//!
//! Every piece before and after the alterations, one over the other; what each alteration
//! changed and kept, and what other ways would have; how it is cut and
//! taped on paper; finished measurements beside body and ease; how every measurement is
//! known; seams, darts, warnings. No script, no network, no font of its own: what can be
//! switched is switched by style alone, and without styles everything is there to read.

mod align;
mod document;
mod figure;
#[cfg(feature = "form")]
mod fit_map;
#[cfg(feature = "form")]
mod form_figure;
#[cfg(feature = "form")]
mod map_figure;
pub(crate) mod markup;
mod methods;
mod shown;
#[cfg(feature = "form")]
mod shown_fit_map;
mod tables;

#[cfg(feature = "message")]
pub(crate) use align::Align;
pub use document::{Fitting, page};
#[cfg(feature = "message")]
pub(crate) use figure::pairs;
#[cfg(feature = "message")]
pub(crate) use form_figure::form_figure;
#[cfg(feature = "message")]
pub(crate) use map_figure::{map_figures, map_legend};
#[cfg(feature = "form")]
pub use shown_fit_map::ShownFitMap;
