//! The laws a pattern must meet so that it can be sewn.
//!
//! One law a file; what breaks it is that law's own error, with numbers and culprits. The
//! laws see a [`Pattern`](crate::piece::Pattern) only, never how it was made. [`LAWS`] lists
//! them; [`visit`] walks them, and [`check_all`], [`first`] and [`is_valid`] follow from it.

mod cap_ease;
mod corner;
mod darts_true;
mod edges_smooth;
mod fold_straight;
mod girths_as_asked;
mod inside;
mod law;
mod marks_clear;
mod mouths_flush;
mod notches_meet;
mod one_way;
mod outline_simple;
mod seams_match;
mod size_sane;
mod smooth_joins;
mod square_to_fold;
mod tolerances;
mod violation;
mod visit;
mod waists_meet;
mod walk;

pub use cap_ease::CapFault;
pub use darts_true::DartFault;
pub use edges_smooth::EdgeCorner;
pub use fold_straight::FoldFault;
pub use girths_as_asked::GirthFault;
pub use law::{LAWS, Law, Report};
pub use marks_clear::MarkFault;
pub use mouths_flush::MouthFault;
pub use notches_meet::NotchFault;
pub use one_way::BendsBack;
pub(crate) use one_way::bends_back;
pub use outline_simple::OutlineFault;
pub use seams_match::SeamFault;
pub use size_sane::PieceTooLarge;
pub use smooth_joins::JoinCorner;
pub use square_to_fold::NotSquareToFold;
pub use tolerances::Tolerances;
pub use violation::Violation;
pub use visit::{check_all, first, is_valid, visit};
pub use waists_meet::WaistDartAlone;
