//! Law: the two sides of a seam are equally long, but for the ease one of them carries.

use super::tolerances::beyond;
use super::{Law, Report, Tolerances, walk};
use crate::explain::Explain;
use crate::piece::{EaseOn, Pattern, Seam};
use crate::units::rounded;
use std::ops::ControlFlow;
use thiserror::Error;

/// A seam whose sides do not fit.
///
/// ```
/// use blockwright::invariants::SeamFault;
/// let fault = SeamFault::Lengths {
///     seam: "side".into(), a: 402.0, b: 400.0, expected: 0.0, found: 2.0, tolerance: 0.01,
/// };
/// assert!(fault.to_string().contains("is longer by 2.000 mm"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum SeamFault {
    /// The difference is not the ease declared.
    #[error(
        "seam {seam}: side a ({a:.3} mm) is longer by {:.3} mm than side b ({b:.3} mm), but should be by {:.3} mm (within {tolerance} mm)",
        rounded(*found, 3), rounded(*expected, 3)
    )]
    Lengths {
        /// Name of the seam.
        seam: String,
        /// Sewn length of side `a`, in millimetres.
        a: f64,
        /// Sewn length of side `b`, in millimetres.
        b: f64,
        /// By how much `a` should be longer, in millimetres; negative when `b` is eased.
        expected: f64,
        /// By how much it is.
        found: f64,
        /// The miss allowed, in millimetres.
        tolerance: f64,
    },
    /// The ease is negative or not a number.
    #[error("seam {seam} declares an ease of {ease} mm; ease is never negative")]
    Ease {
        /// Name of the seam.
        seam: String,
        /// The ease declared, in millimetres.
        ease: f64,
    },
    /// There is ease, but on no side.
    #[error("seam {seam} declares {ease:.3} mm of ease, but not which side carries it")]
    NoSide {
        /// Name of the seam.
        seam: String,
        /// The ease declared, in millimetres.
        ease: f64,
    },
    /// A side has no edge.
    #[error("seam {seam} has no edge on one side; it joins nothing")]
    NoEdges {
        /// Name of the seam.
        seam: String,
    },
}

pub(super) const LAW: Law = Law {
    name: "seams_match",
    says: "with darts closed, the sides of a seam differ by the ease declared, on the side declared",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for seam in pattern.seams() {
        if let Some(fault) = fault(pattern, seam, tolerances.seam) {
            report(fault.into())?;
        }
    }
    ControlFlow::Continue(())
}

fn fault(pattern: &Pattern, seam: &Seam, tolerance: f64) -> Option<SeamFault> {
    let (name, ease) = (seam.name.clone(), seam.ease);
    if seam.a.is_empty() || seam.b.is_empty() {
        return Some(SeamFault::NoEdges { seam: name });
    }
    if !ease.is_finite() || ease < 0.0 {
        return Some(SeamFault::Ease { seam: name, ease });
    }
    let expected = match seam.ease_on {
        Some(EaseOn::A) => ease,
        Some(EaseOn::B) => -ease,
        None if ease > 0.0 => return Some(SeamFault::NoSide { seam: name, ease }),
        None => 0.0,
    };
    let [a, b] = walk::sides(pattern, seam).map(|side| side.length);
    let found = a - b;
    beyond(found - expected, tolerance).then_some(SeamFault::Lengths {
        seam: name,
        a,
        b,
        expected,
        found,
        tolerance,
    })
}

impl Explain for SeamFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::Lengths { seam, .. }
            | Self::Ease { seam, .. }
            | Self::NoSide { seam, .. }
            | Self::NoEdges { seam } => format!("seam {seam}"),
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
