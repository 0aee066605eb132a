//! A shoulder dart aimed anew, so that it runs on from the waist dart as it did.

use crate::alterations::AlterationError;
use crate::alterations::cutting::true_up::{with_mouth, without_mouth};
use crate::geometry::elementary::asin;
use crate::geometry::{Curve, Point, Rigid, angle_between, root, unit};
use crate::piece::{Apexes, Dart, EdgeName, Piece};

/// A shoulder with its dart aimed anew.
pub(in crate::alterations) struct Aimed {
    pub edge: Curve,
    pub dart: Dart,
    pub turn_at_neck: f64,
    pub turn_at_tip: f64,
}

/// The shoulder with its dart aimed at the waist dart's upper apex where that has moved to, so that
/// both run in one sweep as they did: what the dart's first leg turned away from the straight line
/// between them before, it does after. The sewn shoulder is as long as before, the dart's intake
/// and place are kept, and the open shoulder runs from `side` toward `tip`.
pub(in crate::alterations) fn aimed_shoulder(
    piece: &Piece,
    side: Point,
    tip: Point,
    moved: impl Fn(Point) -> Point,
) -> Result<Option<Aimed>, AlterationError> {
    let on_shoulder = |d: &&Dart| d.edge == Some(EdgeName::SHOULDER);
    let Some(dart) = piece.darts().iter().find(on_shoulder) else {
        return Ok(None);
    };
    let mut waists = piece.darts().iter();
    let Some(old) = waists.find_map(|d| match d.apexes {
        Apexes::Two(upper, _) => Some(upper),
        Apexes::One(_) => None,
    }) else {
        return Ok(None);
    };
    let target = moved(old);
    let (before, after) = without_mouth(piece, &EdgeName::SHOULDER)?;
    let (inner, outer) = (before.length(), after.length());
    let leg = dart.legs[0].distance(dart.apex());
    let beside = angle_between(old - dart.legs[0], dart.apex() - dart.legs[0]);
    let beside = Rigid::turn_about(Point::ORIGIN, beside);
    let slope = (tip - side).atan2();
    let turn = 2.0 * asin(dart.intake() / 2.0 / leg);
    let open = |sewn: f64| -> (Point, Point, Point) {
        let first = side + unit(sewn) * inner;
        let apex = first + beside.apply_direction((target - first).normalize()) * leg;
        let opening = Rigid::turn_about(apex, turn);
        let end = opening.apply(first + unit(sewn) * outer);
        (first, apex, end)
    };
    let sewn = root(
        "slope of the sewn shoulder",
        slope - 0.4,
        slope + 0.15,
        |sewn| (open(sewn).2 - side).atan2() - slope,
    )?;
    let (first, apex, end) = open(sewn);
    let second = Rigid::turn_about(apex, turn).apply(first);
    let dart = Dart {
        legs: [first, second],
        apexes: Apexes::One(apex),
        ..dart.clone()
    };
    let edge = with_mouth(
        &Curve::line(side, first)?,
        &dart,
        &Curve::line(second, end)?,
    )?;
    Ok(Some(Aimed {
        turn_at_neck: sewn - before.start_direction().atan2(),
        turn_at_tip: sewn + turn - after.end_direction().atan2(),
        edge,
        dart,
    }))
}
