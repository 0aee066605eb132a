//! Law: a sleeve cap is eased into its armscye, never the armscye into the cap, and by no more
//! than cloth can be shrunk.

use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::piece::{EaseOn, EdgeName, EdgeRef, Pattern};
use std::ops::ControlFlow;
use thiserror::Error;

/// Most ease a cap can carry, in millimetres: 48 is the most of a fitted sleeve (Santa Rosa
/// Junior College, FASH 60), 50 of one in tailored wool (value from memory); and a margin.
const MOST: f64 = 60.0;

/// A sleeve cap that cannot be set in.
///
/// ```
/// use blockwright::invariants::CapFault;
/// let fault = CapFault::TooMuch { seam: "armscye".into(), ease: 75.0, most: 60.0 };
/// assert!(fault.to_string().contains("75.0 mm"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum CapFault {
    /// More ease than can be shrunk away.
    #[error(
        "seam {seam}: the sleeve cap is longer than its armscye by {ease:.1} mm; at most {most:.0} mm can be eased in"
    )]
    TooMuch {
        /// Name of the seam.
        seam: String,
        /// The ease, in millimetres.
        ease: f64,
        /// The most that can be.
        most: f64,
    },
    /// The armscye is longer than the cap.
    #[error(
        "seam {seam}: the armscye is longer than the sleeve cap by {ease:.1} mm; a cap is as long as its armscye or longer"
    )]
    OnArmscye {
        /// Name of the seam.
        seam: String,
        /// The ease, in millimetres.
        ease: f64,
    },
}

pub(super) const LAW: Law = Law {
    name: "cap_ease",
    says: "a sleeve cap is as long as its armscye or longer, by no more than can be eased in",
    check,
};

fn check(pattern: &Pattern, _: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    let is_cap = |edges: &[EdgeRef]| edges.iter().any(|e| e.edge == EdgeName::SLEEVE_CAP);
    for seam in pattern.seams() {
        let cap_on = match (is_cap(&seam.a), is_cap(&seam.b)) {
            (true, false) => EaseOn::A,
            (false, true) => EaseOn::B,
            _ => continue,
        };
        let (name, ease) = (seam.name.clone(), seam.ease);
        if seam.ease_on.is_some_and(|on| on != cap_on) {
            report(CapFault::OnArmscye { seam: name, ease }.into())?;
        } else if ease > MOST {
            report(
                CapFault::TooMuch {
                    seam: name,
                    ease,
                    most: MOST,
                }
                .into(),
            )?;
        }
    }
    ControlFlow::Continue(())
}

impl Explain for CapFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::TooMuch { seam, .. } | Self::OnArmscye { seam, .. } => format!("seam {seam}"),
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
