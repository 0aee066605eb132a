//! Law: a dart's legs are equal, and it lies in its piece clear of the others.

use super::inside::Inside;
use super::tolerances::beyond;
use super::{Law, Report, Tolerances};
use crate::explain::Explain;
use crate::geometry::{Curve, Point, angle_between, crossings};
use crate::piece::{Apexes, Dart, Pattern, Piece};
use crate::units::rounded;
use kurbo::{BezPath, Shape};
use std::ops::ControlFlow;
use thiserror::Error;

/// A dart that cannot be stitched.
///
/// ```
/// use blockwright::invariants::DartFault;
/// let fault = DartFault::LegsUnequal {
///     piece: "front".into(), dart: "bust".into(), first: 120.0, second: 118.5, tolerance: 0.1,
/// };
/// assert!(fault.to_string().contains("120.000 and 118.500 mm"));
/// ```
#[derive(Debug, Clone, PartialEq, Error)]
#[non_exhaustive]
pub enum DartFault {
    /// A leg or apex has a coordinate that is not a number.
    #[error("the {dart} dart of {piece} has a point that is not a number")]
    NotFinite {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
    },
    /// The legs differ in length.
    #[error(
        "the legs of the {dart} dart of {piece} are {first:.3} and {second:.3} mm long; they must be equal (within {tolerance} mm)"
    )]
    LegsUnequal {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
        /// Length of the first leg, in millimetres.
        first: f64,
        /// Length of the second leg, in millimetres.
        second: f64,
        /// The difference allowed, in millimetres.
        tolerance: f64,
    },
    /// An apex, or a leg end of a dart inside the piece, is not on the cloth.
    #[error("the {dart} dart of {piece} reaches off the cloth at ({:.1}, {:.1}) mm", rounded(at.x, 1), rounded(at.y, 1))]
    OffCloth {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
        /// Where it does.
        at: Point,
    },
    /// The apexes of a double-pointed dart are not above and below its legs.
    #[error(
        "the {dart} dart of {piece} has its apexes at {:.1} and {:.1} mm down the piece; its legs, at {:.1} and {:.1} mm, must lie between",
        rounded(*upper, 1), rounded(*lower, 1), rounded(legs[0], 1), rounded(legs[1], 1)
    )]
    ApexesAstray {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
        /// Where the upper apex lies, in millimetres down the page.
        upper: f64,
        /// Where the lower apex lies.
        lower: f64,
        /// Where the ends of the legs lie.
        legs: [f64; 2],
    },
    /// It takes nothing in.
    #[error(
        "the {dart} dart of {piece} takes in {intake:.4} mm; a dart takes in more than {least} mm"
    )]
    NoIntake {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
        /// Distance of the leg ends, in millimetres.
        intake: f64,
        /// The least intake, in millimetres.
        least: f64,
    },
    /// It is too wide for its length.
    #[error(
        "the {dart} dart of {piece} opens by {:.1}°; beyond {:.0}° it must be divided",
        angle.to_degrees(), widest.to_degrees()
    )]
    TooWide {
        /// Name of the piece.
        piece: String,
        /// Name of the dart.
        dart: String,
        /// Angle at the apex, in radians.
        angle: f64,
        /// The widest angle allowed, in radians.
        widest: f64,
    },
    /// Two darts share cloth.
    #[error("the {dart} and {other} darts of {piece} run into each other at ({:.1}, {:.1}) mm", rounded(at.x, 1), rounded(at.y, 1))]
    Crossed {
        /// Name of the piece.
        piece: String,
        /// Name of one dart.
        dart: String,
        /// Name of the other.
        other: String,
        /// Where.
        at: Point,
    },
}

pub(super) const LAW: Law = Law {
    name: "darts_true",
    says: "a dart's legs are equal, it takes something in, and it lies on the cloth clear of other darts",
    check,
};

fn check(pattern: &Pattern, tolerances: &Tolerances, report: Report<'_>) -> ControlFlow<()> {
    for piece in pattern.pieces() {
        let inside = Inside::of(piece.outline());
        let mut sound: Vec<&Dart> = Vec::new();
        for dart in piece.darts() {
            if !points(dart).iter().all(|p| p.is_finite()) {
                let (piece, dart) = (piece.name().to_owned(), dart.name.clone());
                report(DartFault::NotFinite { piece, dart }.into())?;
                continue;
            }
            shape(piece, dart, tolerances, report)?;
            place(piece, dart, &inside, tolerances, report)?;
            for other in &sound {
                if let Some(at) = meeting(dart, other, tolerances.flush) {
                    let (piece, other) = (piece.name().to_owned(), other.name.clone());
                    let dart = dart.name.clone();
                    report(
                        DartFault::Crossed {
                            piece,
                            dart,
                            other,
                            at,
                        }
                        .into(),
                    )?;
                }
            }
            sound.push(dart);
        }
    }
    ControlFlow::Continue(())
}

/// Legs and apexes.
fn points(dart: &Dart) -> Vec<Point> {
    let mut points = dart.apexes.points();
    points.extend(dart.legs);
    points
}

/// Every leg as its end and its apex.
fn legs(dart: &Dart) -> Vec<(Point, Point)> {
    let apexes = dart.apexes.points();
    apexes
        .into_iter()
        .flat_map(|apex| dart.legs.map(|end| (end, apex)))
        .collect()
}

/// What is wrong with a dart in itself.
fn shape(
    piece: &Piece,
    dart: &Dart,
    tolerances: &Tolerances,
    report: Report<'_>,
) -> ControlFlow<()> {
    let names = || (piece.name().to_owned(), dart.name.clone());
    let (intake, least) = (dart.intake(), tolerances.seam);
    if intake <= least {
        let (piece, dart) = names();
        report(
            DartFault::NoIntake {
                piece,
                dart,
                intake,
                least,
            }
            .into(),
        )?;
    }
    for apex in dart.apexes.points() {
        let [first, second] = dart.legs.map(|end| end.distance(apex));
        if beyond(first - second, tolerances.leg) {
            let (piece, dart) = names();
            let tolerance = tolerances.leg;
            report(
                DartFault::LegsUnequal {
                    piece,
                    dart,
                    first,
                    second,
                    tolerance,
                }
                .into(),
            )?;
        }
        let angle = angle_between(dart.legs[0] - apex, dart.legs[1] - apex).abs();
        if beyond(angle, Tolerances::WIDEST_DART) {
            let (piece, dart) = names();
            let widest = Tolerances::WIDEST_DART;
            report(
                DartFault::TooWide {
                    piece,
                    dart,
                    angle,
                    widest,
                }
                .into(),
            )?;
        }
    }
    if let Apexes::Two(upper, lower) = dart.apexes {
        let legs = dart.legs.map(|end| end.y);
        if !legs.iter().all(|y| upper.y < *y && *y < lower.y) {
            let (piece, dart) = names();
            let (upper, lower) = (upper.y, lower.y);
            report(
                DartFault::ApexesAstray {
                    piece,
                    dart,
                    upper,
                    lower,
                    legs,
                }
                .into(),
            )?;
        }
    }
    ControlFlow::Continue(())
}

/// Whether a dart lies on the cloth.
fn place(
    piece: &Piece,
    dart: &Dart,
    inside: &Inside,
    tolerances: &Tolerances,
    report: Report<'_>,
) -> ControlFlow<()> {
    let mut within = dart.apexes.points();
    if dart.edge.is_none() {
        within.extend(dart.legs);
    }
    let off = within
        .into_iter()
        .find(|p| !inside.holds_deep(*p, tolerances.seam))
        .or_else(|| {
            legs(dart)
                .into_iter()
                .find_map(|(end, apex)| inside.leaves(end, apex, tolerances.flush))
        });
    if let Some(at) = off {
        let (piece, dart) = (piece.name().to_owned(), dart.name.clone());
        report(DartFault::OffCloth { piece, dart, at }.into())?;
    }
    ControlFlow::Continue(())
}

/// Where two darts share cloth, if they do; they may share an apex or a leg's end.
fn meeting(one: &Dart, other: &Dart, margin: f64) -> Option<Point> {
    let ends: Vec<Point> = points(other);
    let shared: Vec<Point> = points(one)
        .into_iter()
        .filter(|p| ends.iter().any(|q| p.distance(*q) <= margin))
        .collect();
    let apart = |p: &Point| shared.iter().all(|q| q.distance(*p) > margin);
    let crossing = legs(one).into_iter().find_map(|(end, apex)| {
        let leg = Curve::line(end, apex).ok()?;
        legs(other).into_iter().find_map(|(end, apex)| {
            let across = Curve::line(end, apex).ok()?;
            crossings(leg.segments(), across.segments())
                .into_iter()
                .map(|c| c.point)
                .find(apart)
        })
    });
    let contained = |dart: &Dart, within: &Dart| {
        let area = area(within);
        points(dart)
            .into_iter()
            .find(|p| apart(p) && area.contains(*p))
    };
    crossing
        .or_else(|| contained(one, other))
        .or_else(|| contained(other, one))
}

/// The cloth a dart takes in, its mouth taken as straight.
fn area(dart: &Dart) -> BezPath {
    let mut path = BezPath::new();
    path.move_to(dart.apex());
    path.line_to(dart.legs[0]);
    if let Apexes::Two(_, lower) = dart.apexes {
        path.line_to(lower);
    }
    path.line_to(dart.legs[1]);
    path.close_path();
    path
}

impl Explain for DartFault {
    fn code(&self) -> String {
        LAW.name.to_owned()
    }

    fn place(&self) -> Option<String> {
        Some(match self {
            Self::NotFinite { piece, dart }
            | Self::LegsUnequal { piece, dart, .. }
            | Self::OffCloth { piece, dart, .. }
            | Self::ApexesAstray { piece, dart, .. }
            | Self::NoIntake { piece, dart, .. }
            | Self::TooWide { piece, dart, .. }
            | Self::Crossed { piece, dart, .. } => format!("{dart} dart of {piece}"),
        })
    }

    fn cure(&self) -> String {
        format!("change the pattern so that {}", LAW.says)
    }
}
