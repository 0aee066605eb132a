//! Law: a finished girth is the body's and the ease.

use super::tolerances::beyond;
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::piece::{Girth, Pattern, RunAlong};
use std::ops::ControlFlow;
use thiserror::Error;

/// A girth that is not what was asked for.
///
/// ```
/// use blockwright::invariants::GirthFault;
/// let fault = GirthFault::Off { girth: "bust".into(), expected: 980.0, found: 975.0, tolerance: 0.04 };
/// assert!(fault.to_string().contains("975.000 mm"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum GirthFault {
    /// It is not body and ease.
    #[error(
        "the finished {girth} is {found:.3} mm, but body and ease make {expected:.3} mm (within {tolerance} mm)"
    )]
    Off {
        /// Name of the girth.
        girth: String,
        /// Body and ease, in millimetres.
        expected: f64,
        /// What the sewn pattern has, in millimetres.
        found: f64,
        /// The miss allowed, in millimetres.
        tolerance: f64,
    },
    /// It is measured along nothing.
    #[error("the girth {girth} is measured along nothing, so nothing is known of it")]
    NoRuns {
        /// Name of the girth.
        girth: String,
    },
    /// One of its runs has no width.
    #[error(
        "the girth {girth} runs over {width:.3} mm of {piece} {along}; it must be more than none"
    )]
    EmptyRun {
        /// Name of the girth.
        girth: String,
        /// Name of the piece.
        piece: String,
        /// Name of the line or edge.
        along: String,
        /// The width found, in millimetres.
        width: f64,
    },
}

pub(super) const LAW: Law = Law {
    name: "girths_as_asked",
    says: "every finished girth, darts closed, is the body's measurement and its ease",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for girth in pattern.girths() {
        if girth.runs.is_empty() {
            report(
                GirthFault::NoRuns {
                    girth: girth.name.clone(),
                }
                .into(),
            )?;
            continue;
        }
        for run in &girth.runs {
            let width = pattern.finished(&Girth {
                runs: vec![run.clone()],
                ..girth.clone()
            });
            if width.is_nan() || width <= tolerances.seam {
                let along = match &run.along {
                    RunAlong::Line(name) => format!("{name} line"),
                    RunAlong::Edge(name) => name.to_string(),
                };
                let (girth, piece) = (girth.name.clone(), run.piece.clone());
                report(
                    GirthFault::EmptyRun {
                        girth,
                        piece,
                        along,
                        width,
                    }
                    .into(),
                )?;
            }
        }
        let (expected, found) = (girth.asked(), pattern.finished(girth));
        if beyond(found - expected, tolerances.girth) {
            report(
                GirthFault::Off {
                    girth: girth.name.clone(),
                    expected,
                    found,
                    tolerance: tolerances.girth,
                }
                .into(),
            )?;
        }
    }
    ControlFlow::Continue(())
}

impl Explain for GirthFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::Off { girth, .. } | Self::NoRuns { girth } | Self::EmptyRun { girth, .. } => {
                girth.clone()
            }
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
