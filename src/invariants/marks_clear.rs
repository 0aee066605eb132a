//! Law: a notch or a drill point never lies on a dart leg.
//!
//! A notch beside a leg is taken for the dart's own mark, or is snipped into its stitching; one in
//! the mouth is folded away. A drill point on the leg of another dart is a hole in its stitching line.

use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::{Curve, Point};
use crate::piece::{Pattern, Piece};
use crate::units::rounded;
use std::ops::ControlFlow;
use thiserror::Error;

/// A mark that lies on a dart.
///
/// ```
/// use blockwright::invariants::MarkFault;
/// let fault = MarkFault::Notch {
///     piece: "front".into(), notch: "front armscye".into(), dart: "bust".into(), apart: 0.2, least: 1.0,
/// };
/// assert!(fault.to_string().starts_with("the front armscye notch of front lies 0.2 mm"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum MarkFault {
    /// A notch at a leg, or in the mouth, of a dart on its edge.
    #[error(
        "the {notch} notch of {piece} lies {apart:.1} mm from a leg of the {dart} dart; at least {least:.1} mm are wanted, outside its mouth"
    )]
    Notch {
        /// Name of the piece.
        piece: String,
        /// Name of the notch.
        notch: String,
        /// Name of the dart.
        dart: String,
        /// How far along the edge it lies from the nearer leg, in millimetres; less than nothing in
        /// the mouth.
        apart: f64,
        /// The least distance, in millimetres.
        least: f64,
    },
    /// A drill point on the leg of another dart.
    #[error(
        "the drill point of the {drilled} dart of {piece} at ({:.1}, {:.1}) mm lies {apart:.1} mm from a leg of the {dart} dart; at least {least:.1} mm are wanted",
        rounded(at.x, 1), rounded(at.y, 1)
    )]
    Drill {
        /// Name of the piece.
        piece: String,
        /// Name of the dart that it is for.
        drilled: String,
        /// Name of the dart on whose leg it lies.
        dart: String,
        /// Where it lies.
        at: Point,
        /// How far from the leg, in millimetres.
        apart: f64,
        /// The least distance, in millimetres.
        least: f64,
    },
}

pub(super) const LAW: Law = Law {
    name: "marks_clear",
    says: "no notch and no drill point lies on a dart leg",
    check,
};

fn check(pattern: &Pattern, _: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        notches(piece, report)?;
        drill_points(piece, report)?;
    }
    ControlFlow::Continue(())
}

fn notches(piece: &Piece, report: Report<'_>) -> ControlFlow<()> {
    for notch in piece.notches() {
        for (dart, from, to) in piece.mouths(&notch.edge) {
            let apart = (from - notch.at).max(notch.at - to);
            if apart.is_nan() || apart < Tolerances::MARK_FROM_LEG {
                let fault = MarkFault::Notch {
                    piece: piece.name().to_owned(),
                    notch: notch.name.clone(),
                    dart: dart.name.clone(),
                    apart,
                    least: Tolerances::MARK_FROM_LEG,
                };
                report(fault.into())?;
            }
        }
    }
    ControlFlow::Continue(())
}

fn drill_points(piece: &Piece, report: Report<'_>) -> ControlFlow<()> {
    for drilled in piece.darts() {
        for dart in piece.darts().iter().filter(|d| d.name != drilled.name) {
            let apexes = dart.apexes.points();
            let ends = dart
                .legs
                .iter()
                .flat_map(|leg| apexes.iter().map(move |a| (*leg, *a)));
            let legs: Vec<Curve> = ends
                .filter_map(|(leg, apex)| Curve::line(leg, apex).ok())
                .collect();
            for point in drilled.drill_points() {
                let distances = legs.iter().map(|leg| leg.nearest(point.at).0);
                let apart = distances.fold(f64::INFINITY, f64::min);
                if apart < Tolerances::MARK_FROM_LEG {
                    let fault = MarkFault::Drill {
                        piece: piece.name().to_owned(),
                        drilled: drilled.name.clone(),
                        dart: dart.name.clone(),
                        at: point.at,
                        apart,
                        least: Tolerances::MARK_FROM_LEG,
                    };
                    report(fault.into())?;
                }
            }
        }
    }
    ControlFlow::Continue(())
}

impl Explain for MarkFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::Notch { piece, notch, .. } => format!("{piece} notch {notch}"),
            Self::Drill { piece, drilled, .. } => format!("{piece} {drilled} dart"),
        })
    }

    fn cure(&self) -> String {
        match self {
            Self::Notch { dart, .. } => format!("open the {dart} dart farther from the notch"),
            Self::Drill { dart, .. } => format!("open the {dart} dart in another place"),
        }
    }
}
