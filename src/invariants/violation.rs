//! What broke a law: one variant a law.

use super::{
    BendsBack, CapFault, DartFault, EdgeCorner, FoldFault, GirthFault, JoinCorner, MarkFault,
    MouthFault, NotSquareToFold, NotchFault, OutlineFault, PieceTooLarge, SeamFault,
    WaistDartAlone,
};
use crate::explain::Explain;
use thiserror::Error;

/// A law broken, with the culprits and the numbers.
///
/// ```
/// use blockwright::invariants::{PieceTooLarge, Violation};
/// let v = Violation::from(PieceTooLarge { piece: "back".into(), found: 2e4, largest: 1e4 });
/// assert_eq!(v.law(), "size_sane");
/// assert!(v.to_string().starts_with("back"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum Violation {
    /// Of `size_sane`.
    #[error(transparent)]
    SizeSane(#[from] PieceTooLarge),
    /// Of `outline_simple`.
    #[error(transparent)]
    OutlineSimple(#[from] OutlineFault),
    /// Of `edges_smooth`.
    #[error(transparent)]
    EdgesSmooth(#[from] EdgeCorner),
    /// Of `one_way`.
    #[error(transparent)]
    OneWay(#[from] BendsBack),
    /// Of `fold_straight`.
    #[error(transparent)]
    FoldStraight(#[from] FoldFault),
    /// Of `square_to_fold`.
    #[error(transparent)]
    SquareToFold(#[from] NotSquareToFold),
    /// Of `darts_true`.
    #[error(transparent)]
    DartsTrue(#[from] DartFault),
    /// Of `mouths_flush`.
    #[error(transparent)]
    MouthsFlush(#[from] MouthFault),
    /// Of `seams_match`.
    #[error(transparent)]
    SeamsMatch(#[from] SeamFault),
    /// Of `cap_ease`.
    #[error(transparent)]
    CapEase(#[from] CapFault),
    /// Of `smooth_joins`.
    #[error(transparent)]
    SmoothJoins(#[from] JoinCorner),
    /// Of `notches_meet`.
    #[error(transparent)]
    NotchesMeet(#[from] NotchFault),
    /// Of `marks_clear`.
    #[error(transparent)]
    MarksClear(#[from] MarkFault),
    /// Of `waists_meet`.
    #[error(transparent)]
    WaistsMeet(#[from] WaistDartAlone),
    /// Of `girths_as_asked`.
    #[error(transparent)]
    GirthsAsAsked(#[from] GirthFault),
}

impl Violation {
    /// Name of the law that is broken, as in [`LAWS`](super::LAWS).
    #[must_use]
    pub fn law(&self) -> &'static str {
        match self {
            Self::SizeSane(_) => super::size_sane::LAW.name,
            Self::OutlineSimple(_) => super::outline_simple::LAW.name,
            Self::EdgesSmooth(_) => super::edges_smooth::LAW.name,
            Self::OneWay(_) => super::one_way::LAW.name,
            Self::FoldStraight(_) => super::fold_straight::LAW.name,
            Self::SquareToFold(_) => super::square_to_fold::LAW.name,
            Self::DartsTrue(_) => super::darts_true::LAW.name,
            Self::MouthsFlush(_) => super::mouths_flush::LAW.name,
            Self::SeamsMatch(_) => super::seams_match::LAW.name,
            Self::CapEase(_) => super::cap_ease::LAW.name,
            Self::SmoothJoins(_) => super::smooth_joins::LAW.name,
            Self::NotchesMeet(_) => super::notches_meet::LAW.name,
            Self::MarksClear(_) => super::marks_clear::LAW.name,
            Self::WaistsMeet(_) => super::waists_meet::LAW.name,
            Self::GirthsAsAsked(_) => super::girths_as_asked::LAW.name,
        }
    }
}

impl Violation {
    fn inner(&self) -> &dyn Explain {
        match self {
            Self::SizeSane(fault) => fault,
            Self::OutlineSimple(fault) => fault,
            Self::EdgesSmooth(fault) => fault,
            Self::OneWay(fault) => fault,
            Self::FoldStraight(fault) => fault,
            Self::SquareToFold(fault) => fault,
            Self::DartsTrue(fault) => fault,
            Self::MouthsFlush(fault) => fault,
            Self::SeamsMatch(fault) => fault,
            Self::CapEase(fault) => fault,
            Self::SmoothJoins(fault) => fault,
            Self::NotchesMeet(fault) => fault,
            Self::MarksClear(fault) => fault,
            Self::WaistsMeet(fault) => fault,
            Self::GirthsAsAsked(fault) => fault,
        }
    }
}

impl Explain for Violation {
    fn code(&self) -> String {
        self.inner().code()
    }

    fn place(&self) -> Option<String> {
        self.inner().place()
    }

    fn cure(&self) -> String {
        self.inner().cure()
    }
}
