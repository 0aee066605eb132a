//! A shoulder dart aimed anew, so that it runs on from the waist dart.

use super::true_up::{with_mouth, without_mouth};
use super::{AlterationError, Sketch};
use crate::geometry::elementary::asin;
use crate::geometry::{Curve, Point, Rigid, Vec2, root, unit};
use crate::piece::{Apexes, Dart, EdgeName, Piece};

/// A shoulder with its dart aimed anew.
pub(super) struct Aimed {
    pub edge: Curve,
    pub dart: Dart,
    pub turn_at_neck: f64,
    pub turn_at_tip: f64,
}

/// The shoulder with its dart aimed at the waist dart's upper apex, so that both run in one
/// sweep: the sewn shoulder as long as before, its intake and place kept, and the open
/// shoulder running from `side` toward `tip`.
pub(super) fn aimed_shoulder(
    piece: &Piece,
    sketch: &Sketch,
    side: Point,
    tip: Point,
    drop: f64,
) -> Result<Option<Aimed>, AlterationError> {
    let on_shoulder = |d: &&Dart| d.edge == Some(EdgeName::SHOULDER);
    let waist = |d: &&Dart| matches!(d.apexes, Apexes::Two(..));
    let Some(dart) = piece.darts().iter().find(on_shoulder) else {
        return Ok(None);
    };
    let Some(waist) = sketch.darts().iter().find(waist) else {
        return Ok(None);
    };
    // The waist dart's upper apex, moved with the centre panel.
    let target = piece.dart(&waist.name).map_or(waist.apex(), Dart::apex) + Vec2::new(0.0, drop);
    let (before, after) = without_mouth(piece, &EdgeName::SHOULDER)?;
    let (inner, outer) = (before.length(), after.length());
    let leg = dart.legs[0].distance(dart.apex());
    let slope = (tip - side).atan2();
    let turn = 2.0 * asin(dart.intake() / 2.0 / leg);
    let open = |sewn: f64| -> (Point, Point, Point) {
        let first = side + unit(sewn) * inner;
        let apex = first + (target - first).normalize() * leg;
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
