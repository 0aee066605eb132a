//! Law: notches of one name meet when the seam is sewn.

use super::tolerances::beyond;
use super::walk::{Walk, sides};
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::Span;
use crate::piece::{EaseOn, NotchKind, Pattern, Seam};
use crate::units::rounded;
use std::ops::ControlFlow;
use thiserror::Error;

/// A notch that misleads.
///
/// ```
/// use blockwright::invariants::NotchFault;
/// let fault = NotchFault::Alone { seam: "side".into(), notch: "hip".into(), edge: "back side_seam".into() };
/// assert_eq!(fault.to_string(), "seam side: notch hip on back side_seam has nothing to meet on the other side");
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum NotchFault {
    /// It has no partner.
    #[error("seam {seam}: notch {notch} on {edge} has nothing to meet on the other side")]
    Alone {
        /// Name of the seam.
        seam: String,
        /// Name of the notch.
        notch: String,
        /// Piece and edge it is on.
        edge: String,
    },
    /// It and its partner do not meet.
    #[error(
        "seam {seam}: notch {notch} lies {a:.3} mm along side a and {b:.3} mm along side b; a may be ahead by {:.3} to {:.3} mm (within {tolerance} mm)",
        rounded(*least, 3), rounded(*most, 3)
    )]
    Apart {
        /// Name of the seam.
        seam: String,
        /// Name of the notch.
        notch: String,
        /// Sewn distance from the seam's start along side `a`, in millimetres.
        a: f64,
        /// The same along side `b`.
        b: f64,
        /// The least by which `a` must be ahead: what the ease up to the mark before allows.
        least: f64,
        /// The most by which it may be.
        most: f64,
        /// The miss allowed, in millimetres.
        tolerance: f64,
    },
    /// One is single, its partner double.
    #[error("seam {seam}: notch {notch} is single on one side and double on the other")]
    Kinds {
        /// Name of the seam.
        seam: String,
        /// Name of the notch.
        notch: String,
    },
}

pub(super) const LAW: Law = Law {
    name: "notches_meet",
    says: "every notch on a seam has its partner at the same sewn distance, but for ease taken up on the way",
    check,
};

/// A notch where the sewn seam has it.
struct Mark {
    name: String,
    edge: String,
    kind: NotchKind,
    walked: f64,
}

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for seam in pattern.seams() {
        let walks = sides(pattern, seam);
        let [a, b] = [marks(&walks[0]), marks(&walks[1])];
        let mut pairs: Vec<(&Mark, &Mark)> = Vec::new();
        for (side, others, other_walk) in [(&a, &b, &walks[1]), (&b, &a, &walks[0])] {
            for mark in side {
                match partner(mark, side, others) {
                    Some(found) if std::ptr::eq(side, &a) => pairs.push((mark, found)),
                    Some(_) => {}
                    None if meets_joint(mark, other_walk, ease(seam) + tolerances.seam) => {}
                    None => report(
                        NotchFault::Alone {
                            seam: seam.name.clone(),
                            notch: mark.name.clone(),
                            edge: mark.edge.clone(),
                        }
                        .into(),
                    )?,
                }
            }
        }
        meet(seam, &pairs, tolerances.seam, report)?;
    }
    ControlFlow::Continue(())
}

/// The notches along one side, in the order of the walk.
fn marks(walk: &Walk<'_>) -> Vec<Mark> {
    let mut marks: Vec<Mark> = walk
        .steps
        .iter()
        .flat_map(|step| {
            let on_edge = step
                .piece
                .notches()
                .iter()
                .filter(|n| &n.edge == step.edge.name());
            on_edge.map(|notch| Mark {
                name: notch.name.clone(),
                edge: step.edge_ref().to_string(),
                kind: notch.kind,
                walked: step.walked_to(notch.at),
            })
        })
        .collect();
    marks.sort_by(|one, other| one.walked.total_cmp(&other.walked));
    marks
}

/// The notch on the other side that is to meet this one: of its name, in its turn.
fn partner<'m>(mark: &Mark, side: &[Mark], others: &'m [Mark]) -> Option<&'m Mark> {
    let turn = side
        .iter()
        .filter(|m| m.name == mark.name)
        .position(|m| std::ptr::eq(m, mark))?;
    others.iter().filter(|m| m.name == mark.name).nth(turn)
}

/// Whether a notch meets an end of the other side, or a joint of its edges, instead: the
/// shoulder notch of a sleeve does.
fn meets_joint(mark: &Mark, other: &Walk<'_>, margin: f64) -> bool {
    let mut joints = other.steps.iter().map(|s| s.before).chain([other.length]);
    joints.any(|joint| !beyond(joint - mark.walked, margin))
}

/// The ease a seam carries; none when what it declares is no ease.
fn ease(seam: &Seam) -> f64 {
    if seam.ease.is_finite() {
        seam.ease.max(0.0)
    } else {
        0.0
    }
}

/// Walks the pairs: the eased side gets ahead from mark to mark, never back, and in all by
/// no more than its ease.
fn meet(
    seam: &Seam,
    pairs: &[(&Mark, &Mark)],
    tolerance: f64,
    report: Report<'_>,
) -> ControlFlow<()> {
    let ease = ease(seam);
    let eased_b = seam.ease_on == Some(EaseOn::B);
    let mut taken = 0.0;
    for (a, b) in pairs {
        let (seam_name, notch) = (seam.name.clone(), a.name.clone());
        let ahead = a.walked - b.walked;
        let taken_here = if eased_b { -ahead } else { ahead };
        let allowed = taken - tolerance..=ease + tolerance;
        if allowed.contains(&taken_here) {
            taken = Span::from_low(taken, ease).nearest(taken_here);
        } else {
            let (least, most) = if eased_b {
                (-ease, -taken)
            } else {
                (taken, ease)
            };
            let (a, b) = (a.walked, b.walked);
            report(
                NotchFault::Apart {
                    seam: seam_name.clone(),
                    notch: notch.clone(),
                    a,
                    b,
                    least,
                    most,
                    tolerance,
                }
                .into(),
            )?;
        }
        if a.kind != b.kind {
            report(
                NotchFault::Kinds {
                    seam: seam_name,
                    notch,
                }
                .into(),
            )?;
        }
    }
    ControlFlow::Continue(())
}

impl Explain for NotchFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::Alone { seam, notch, .. }
            | Self::Apart { seam, notch, .. }
            | Self::Kinds { seam, notch } => format!("seam {seam}: notch {notch}"),
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
