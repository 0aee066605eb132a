//! Slashes at the bust.

use super::bench::Bench;
use super::error::{Missing, Tried};
use super::instruction::Instruction;
use super::rings::{length, point_along};
use super::words::mm;
use crate::geometry::{Point, Vec2, perpendicular};
use crate::piece::{Apexes, Dart, EdgeName};

/// How far beyond the dart and the bust point a panel is cut out, in millimetres.
const ROUND: f64 = 12.0;

/// The dart that points at the bust from an edge.
fn bust_dart(bench: &Bench<'_>) -> Option<Dart> {
    let open = |d: &&Dart| d.edge.is_some() && matches!(d.apexes, Apexes::One(_));
    let mut darts = bench.old.darts().iter().filter(open);
    let named = darts.clone().find(|d| d.name == "bust");
    named
        .or_else(|| darts.find(|d| Some(bench.old.fullness(d)) == bench.old.bust_point()))
        .cloned()
}

/// The bust point moved with its darts.
pub(super) fn bust_point(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let Some(bust) = bench.old.bust_point() else {
        return Ok(None);
    };
    let after = bench.new.first().and_then(|piece| piece.bust_point());
    let by = after.map_or(Vec2::ZERO, |after| after - bust);
    let dart = bust_dart(bench).ok_or_else(|| Missing("a bust dart".to_owned()))?;
    let edge = dart.edge.clone().unwrap_or(EdgeName::SIDE_SEAM);
    let mouths = bench.old.mouths(&edge);
    let mouth = mouths.iter().find(|(d, ..)| d.name == dart.name);
    let (from, to) = mouth
        .map(|(_, from, to)| (*from, *to))
        .ok_or_else(|| Missing("a mouth".to_owned()))?;
    let run = bench.run(&edge)?;
    let long = length(&run);
    let place = |at: f64| {
        point_along(&run, at)
            .map(|(p, _)| p)
            .ok_or_else(|| Missing("a place".to_owned()))
    };
    let (a, b) = (
        place((from - ROUND).max(2.0))?,
        place((to + ROUND).min(long - 2.0))?,
    );
    let middle = dart.legs[0].midpoint(dart.legs[1]);
    let toward = (bust - middle).normalize();
    let aside = perpendicular(toward);
    let half = |p: Point| (p - middle).dot(aside);
    let far = bust + toward * ROUND;
    let (first, second) = (far + aside * half(a), far + aside * half(b));
    bench.cut(&[a, first, second, b])?;
    let panel = bench.around(bust)?;
    bench.shift(panel, by);
    let way = match (by.x.abs() > by.y.abs(), by.x > 0.0, by.y > 0.0) {
        (true, true, _) => "out",
        (true, false, _) => "in",
        (_, _, true) => "down",
        _ => "up",
    };
    Ok(Some(
        Instruction::new(
            "Cut out a panel around the bust dart and the bust point. Cut through: there is no hinge.",
            format!("Slide the panel {way} by {}: the dart and the bust point move with it.", mm(by.hypot())),
        )
        .drawn("Draw the other darts to the moved bust point; the seams keep their old line and length."),
    ))
}

/// Room for a full bust, or less for a small one.
pub(super) fn bust(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if bench.old.bust_point().is_none() || !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let dart = bust_dart(bench).filter(|d| d.edge == Some(EdgeName::SIDE_SEAM));
    let dart = dart.ok_or_else(|| Missing("a bust dart at the side".to_owned()))?;
    let new = bench.new.first().and_then(|piece| piece.dart(&dart.name));
    let new = new.ok_or_else(|| Missing("the bust dart after".to_owned()))?;
    let mut notches = bench.old.notches().iter();
    let notch = notches.find(|n| n.edge == EdgeName::ARMSCYE).map(|n| n.at);
    let scye = bench.run(&EdgeName::ARMSCYE)?;
    let at = notch.unwrap_or(0.5 * length(&scye));
    let hinge = point_along(&scye, at)
        .map(|(p, _)| p)
        .ok_or_else(|| Missing("a notch".to_owned()))?;
    let (tip, new_tip) = (dart.apex(), new.apex());
    let shift = new_tip - tip;
    let low = if bench.has(&EdgeName::WAIST) {
        EdgeName::WAIST
    } else {
        EdgeName::HEM
    };
    let below = bench.upright(&low, tip.x)?;
    let centre = bench.centre()?;
    let [underarm, _] = bench.end(&EdgeName::ARMSCYE)?;
    bench.cut(&[below, tip, hinge])?;
    bench.cut(&[tip, dart.legs[1]])?;
    let waist = bench.waist_on_side().map_or(below.y, |p| p.y);
    let level = 0.5 * (tip.y + waist);
    let across = bench.level(&centre, level)?;
    bench.cut(&[across, Point::new(tip.x, level)])?;
    bench.hinge(hinge);
    let side = bench.beside(&EdgeName::ARMSCYE, underarm)?;
    bench.turn(side, hinge, [tip, new_tip]);
    let [side_low, _] = bench.end(&EdgeName::SIDE_SEAM)?;
    let lower = bench.beside(&EdgeName::SIDE_SEAM, side_low)?;
    bench.shift(lower, shift);
    let middle = bench.beside(&low, below + Vec2::new(-4.0, 0.0))?;
    bench.shift(middle, Vec2::new(0.0, shift.y));
    let (does, level) = if shift.x > 0.0 {
        ("Spread", "down")
    } else {
        ("Lap", "up")
    };
    Ok(Some(
        Instruction::new(
            "Cut from below up to the tip of the bust dart and on to the notch of the armscye, along the bust dart, and across from the centre front below the bust. Do not cut through at the armscye: it is the hinge.",
            format!("{does} the upright cut by {}, its edges parallel. The side moves with it; slide the lower front {level} by {} until it is level with the side.", mm(shift.x), mm(shift.y)),
        )
        .drawn("Draw the bust dart to the moved tip. Take the extra width out at the waist dart, or at the side seam below."),
    ))
}
