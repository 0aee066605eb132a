//! Law: a folded dart lies flush in the seam it is caught in.
//!
//! The dart is stitched leg on leg, folded along its centre line and pressed to one side.
//! The garment lies flat up to the stitching; there the cloth folds back under it at the leg
//! of that side, runs out to the centre line, folds again, and from the other leg runs on as
//! garment. So the part of the mouth next to the leg of that side comes to lie mirrored in
//! that leg, and the rest turned with the leg of the other side; both must fall on the seam
//! line beside the dart, or the seam does not catch the fold, or catches too much of it.

use super::corner::interior_angle;
use super::tolerances::beyond;
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::{Curve, Point, Rigid};
use crate::piece::{Dart, EdgeName, Pattern, Piece, Pressed};
use crate::units::rounded;
use kurbo::ParamCurve;
use std::f64::consts::PI;
use std::ops::ControlFlow;
use thiserror::Error;

/// A dart mouth that spoils the seam.
///
/// ```
/// use blockwright::geometry::Point;
/// use blockwright::invariants::MouthFault;
/// let fault = MouthFault::NotFlush {
///     piece: "back".into(), dart: "waist".into(), edge: "waist".into(),
///     at: Point::new(90.0, 402.0), off: 1.5, tolerance: 0.1,
/// };
/// assert!(fault.to_string().contains("lies 1.500 mm off waist"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum MouthFault {
    /// The seam line has a corner where the dart closes.
    #[error(
        "with the {dart} dart of {piece} closed, {edge} makes an angle of {:.2}° there; it must run straight on (180° within {:.2}°)",
        angle.to_degrees(), tolerance.to_degrees()
    )]
    Corner {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
        /// Name of the edge.
        edge: String,
        /// Angle of the cloth where the dart closes, in radians.
        angle: f64,
        /// The miss from half a turn allowed, in radians.
        tolerance: f64,
    },
    /// The folded mouth does not lie on the seam line.
    #[error(
        "the mouth of the {dart} dart of {piece}, folded, lies {off:.3} mm off {edge}: worst at ({:.1}, {:.1}) mm; at most {tolerance} mm are allowed",
        rounded(at.x, 1), rounded(at.y, 1)
    )]
    NotFlush {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
        /// Name of the edge.
        edge: String,
        /// The point of the open mouth that comes to lie worst.
        at: Point,
        /// How far it lies off the seam line, in millimetres.
        off: f64,
        /// The distance allowed, in millimetres.
        tolerance: f64,
    },
}

pub(super) const LAW: Law = Law {
    name: "mouths_flush",
    says: "with a dart closed its edge runs on without a corner, and its folded mouth lies on the seam line",
    check,
};

/// A dart on its edge: the seam line before it, its mouth, the seam line after it.
struct Opening<'p> {
    piece: &'p Piece,
    dart: &'p Dart,
    edge: &'p EdgeName,
    /// From the corner or the dart before; none when the dart starts right there.
    before: Option<Curve>,
    mouth: Option<Curve>,
    /// To the corner or the dart after.
    after: Option<Curve>,
}

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        for edge in piece.outline().edges() {
            for opening in openings(piece, edge.name(), edge.curve()) {
                if let Some(fault) = corner(&opening, tolerances.closed_dart) {
                    report(fault.into())?;
                }
                if let Some(fault) = fold(&opening, tolerances.flush) {
                    report(fault.into())?;
                }
            }
        }
    }
    ControlFlow::Continue(())
}

fn openings<'p>(piece: &'p Piece, edge: &'p EdgeName, curve: &Curve) -> Vec<Opening<'p>> {
    let mouths = piece.mouths(edge);
    let length = curve.length();
    let part = |from: f64, to: f64| curve.part(from, to).ok();
    let before = |index: usize| {
        let before = index.checked_sub(1).and_then(|i| mouths.get(i));
        before.map_or(0.0, |mouth| mouth.2)
    };
    let of = |(index, &(dart, from, to)): (usize, &(&'p Dart, f64, f64))| Opening {
        piece,
        dart,
        edge,
        before: part(before(index), from),
        mouth: part(from, to),
        after: part(to, mouths.get(index + 1).map_or(length, |next| next.1)),
    };
    mouths.iter().enumerate().map(of).collect()
}

fn corner(opening: &Opening<'_>, tolerance: f64) -> Option<MouthFault> {
    let (before, after) = (opening.before.as_ref()?, opening.after.as_ref()?);
    let angle = interior_angle(before, &after.moved(&opening.dart.closing()));
    beyond(angle - PI, tolerance).then(|| MouthFault::Corner {
        piece: opening.piece.name().to_owned(),
        dart: opening.dart.name.clone(),
        edge: opening.edge.to_string(),
        angle,
        tolerance,
    })
}

fn fold(opening: &Opening<'_>, tolerance: f64) -> Option<MouthFault> {
    let dart = opening.dart;
    let [first, second] = dart.legs;
    // Seen from the leg the fold is pressed to: the seam line beside that leg, the leg, the
    // other leg, and whether the seam line leads up to the leg or away from it.
    let (beside, kept, other, leads_up) = match dart.pressed {
        Pressed::TowardFirstLeg => (opening.before.as_ref()?, first, second, true),
        Pressed::TowardSecondLeg => (opening.after.as_ref()?, second, first, false),
    };
    let apex = dart.apex();
    let centre = first.midpoint(second) - apex;
    let in_leg = Rigid::mirror(apex, kept - apex);
    let in_centre_and_leg = Rigid::mirror(apex, centre).then(in_leg);
    let side_of_kept = centre.cross(kept - other);
    let far_end = if leads_up {
        beside.start()
    } else {
        beside.end()
    };

    let mouth = opening.mouth.as_ref()?;
    let overhang = overhang(mouth, beside);
    let mut worst: Option<(f64, Point)> = None;
    for at in samples(mouth) {
        let next_to_kept = centre.cross(at - apex) * side_of_kept >= 0.0;
        let folded = if next_to_kept {
            in_leg
        } else {
            in_centre_and_leg
        }
        .apply(at);
        if !folded.is_finite() {
            continue;
        }
        let (off, along) = beside.nearest(folded);
        // Past the corner, or the next dart, there is no seam line to lie on.
        let to_far_end = if leads_up {
            along
        } else {
            beside.length() - along
        };
        let past_end = to_far_end <= tolerance && folded.distance(far_end) <= overhang;
        if !past_end && worst.is_none_or(|(most, _)| off > most) {
            worst = Some((off, at));
        }
    }
    let (off, at) = worst.filter(|(off, _)| beyond(*off, tolerance))?;
    Some(MouthFault::NotFlush {
        piece: opening.piece.name().to_owned(),
        dart: dart.name.clone(),
        edge: opening.edge.to_string(),
        at,
        off,
        tolerance,
    })
}

/// How far a fold may reach past the end of the seam line beside it, in millimetres: by what
/// half the mouth (and a tenth, for a mouth that is not true) is longer than that line.
fn overhang(mouth: &Curve, beside: &Curve) -> f64 {
    (mouth.length() * 0.55 - beside.length()).max(0.0)
}

/// Points along a curve, joints included.
fn samples(curve: &Curve) -> impl Iterator<Item = Point> + '_ {
    const STEPS: i32 = 12;
    let share = |k: i32| f64::from(k) / f64::from(STEPS);
    curve
        .segments()
        .iter()
        .flat_map(move |s| (0..=STEPS).map(move |k| s.eval(share(k))))
}

impl Explain for MouthFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::Corner { piece, dart, .. } | Self::NotFlush { piece, dart, .. } => {
                format!("{dart} dart of {piece}")
            }
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
