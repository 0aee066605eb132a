//! Law: a line that runs across a seam is smooth when the pieces are laid together.
//!
//! Where the edges next to a seam's end are the same line on both pieces (neckline at the
//! neck side point, armscye at the shoulder point and underarm, waist and hem at the side),
//! the two corners add up to half a turn. A waist seam is spared: the body turns there, and
//! side seams laid together across it do as well.

use super::corner::{Corner, End, corner};
use super::tolerances::beyond;
use super::walk::{Step, Walk, sides};
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::piece::{Edge, EdgeName, EdgeRole, Pattern, Seam};
use std::f64::consts::PI;
use std::ops::ControlFlow;
use thiserror::Error;

/// A corner in a line where it crosses a seam.
///
/// ```
/// use blockwright::invariants::JoinCorner;
/// let corner = JoinCorner {
///     seam: "shoulder".into(), first: "back armscye".into(), second: "front armscye".into(),
///     first_angle: 1.70, second_angle: 1.57, tolerance: 0.0175,
/// };
/// assert!(corner.to_string().contains("187.36°"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[error(
    "across seam {seam}, {first} and {second} make an angle of {:.2}° ({:.2}° and {:.2}°); the line must run straight on (180° within {:.2}°)",
    (first_angle + second_angle).to_degrees(),
    first_angle.to_degrees(), second_angle.to_degrees(), tolerance.to_degrees()
)]
pub struct JoinCorner {
    /// Name of the seam that is crossed.
    pub seam: String,
    /// Piece and edge on one side.
    pub first: String,
    /// Piece and edge on the other.
    pub second: String,
    /// Angle of the cloth on the one side, in radians.
    pub first_angle: f64,
    /// Angle of the cloth on the other side, in radians.
    pub second_angle: f64,
    /// The miss from half a turn allowed, in radians.
    pub tolerance: f64,
}

pub(super) const LAW: Law = Law {
    name: "smooth_joins",
    says: "a line that crosses a seam, laid together there, has no corner",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for seam in pattern.seams() {
        let walks = sides(pattern, seam);
        let [a, b] = &walks;
        let starts = a.steps.first().zip(b.steps.first());
        let ends = a.steps.last().zip(b.steps.last());
        let at_start = starts.map(|(a, b)| ((a, a.entered()), (b, b.entered())));
        let at_end = ends.map(|(a, b)| ((a, a.entered().other()), (b, b.entered().other())));
        let waist = walks.iter().any(is_waist);
        for (one, other) in [at_start, at_end].into_iter().flatten().filter(|_| !waist) {
            if let Some(fault) = across(seam, one, other, tolerances.join) {
                report(fault.into())?;
            }
        }
        for side in &walks {
            for (one, next) in side.steps.iter().zip(side.steps.iter().skip(1)) {
                if let Some(fault) = along(pattern, seam, one, next, tolerances.join) {
                    report(fault.into())?;
                }
            }
        }
    }
    ControlFlow::Continue(())
}

fn is_waist(side: &Walk<'_>) -> bool {
    side.steps.iter().any(|s| s.edge.name() == &EdgeName::WAIST)
}

/// The corners at one end of a seam, when one line crosses it there.
fn across(
    seam: &Seam,
    (one, one_end): (&Step<'_>, End),
    (other, other_end): (&Step<'_>, End),
    tolerance: f64,
) -> Option<JoinCorner> {
    let first = corner(one.piece, one.edge.name(), one_end)?;
    let second = corner(other.piece, other.edge.name(), other_end)?;
    let same = same_line(first.neighbour, second.neighbour);
    (same && beyond(first.angle + second.angle - PI, tolerance)).then(|| {
        fault(
            seam,
            (one, first.neighbour, &first),
            (other, second.neighbour, &second),
            tolerance,
        )
    })
}

/// Whether two edges are one line of the garment.
fn same_line(one: &Edge, other: &Edge) -> bool {
    one.name() == other.name() || (one.role() == EdgeRole::Hem && other.role() == EdgeRole::Hem)
}

/// The corner between two edges that follow each other along one side of a seam.
fn along(
    pattern: &Pattern,
    seam: &Seam,
    one: &Step<'_>,
    next: &Step<'_>,
    tolerance: f64,
) -> Option<JoinCorner> {
    let first = corner(one.piece, one.edge.name(), one.entered().other())?;
    let second = corner(next.piece, next.edge.name(), next.entered())?;
    if one.piece.name() == next.piece.name() && first.neighbour.name() == next.edge.name() {
        // Two edges of one piece: both corners are the same, and it is the whole angle.
        return beyond(first.angle - PI, tolerance).then(|| JoinCorner {
            second_angle: 0.0,
            ..fault(
                seam,
                (one, one.edge, &first),
                (next, next.edge, &second),
                tolerance,
            )
        });
    }
    let joined = sewn(pattern, (one, first.neighbour), (next, second.neighbour));
    (joined && beyond(first.angle + second.angle - PI, tolerance)).then(|| {
        fault(
            seam,
            (one, one.edge, &first),
            (next, next.edge, &second),
            tolerance,
        )
    })
}

/// Whether some seam joins the two edges.
fn sewn(
    pattern: &Pattern,
    (one, one_edge): (&Step<'_>, &Edge),
    (other, other_edge): (&Step<'_>, &Edge),
) -> bool {
    let on = |side: &[crate::piece::EdgeRef], step: &Step<'_>, edge: &Edge| {
        side.iter()
            .any(|r| r.piece == step.piece.name() && &r.edge == edge.name())
    };
    pattern.seams().iter().any(|s| {
        (on(&s.a, one, one_edge) && on(&s.b, other, other_edge))
            || (on(&s.b, one, one_edge) && on(&s.a, other, other_edge))
    })
}

fn fault(
    seam: &Seam,
    (one, one_edge, first): (&Step<'_>, &Edge, &Corner<'_>),
    (other, other_edge, second): (&Step<'_>, &Edge, &Corner<'_>),
    tolerance: f64,
) -> JoinCorner {
    JoinCorner {
        seam: seam.name.clone(),
        first: format!("{} {}", one.piece.name(), one_edge.name()),
        second: format!("{} {}", other.piece.name(), other_edge.name()),
        first_angle: first.angle,
        second_angle: second.angle,
        tolerance,
    }
}

impl Explain for JoinCorner {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(format!(
            "seam {}: {} and {}",
            self.seam, self.first, self.second
        ))
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
