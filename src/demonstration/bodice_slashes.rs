//! Slashes of shoulder and armscye.

use super::bench::Bench;
use super::error::{Tried, missing};
use super::instruction::Instruction;
use super::redrawn::redraw;
use super::slash::OpeningKind;
use super::words::mm;
use crate::geometry::{Point, Vec2};
use crate::piece::EdgeName;

/// How far below the underarm, and inside the width point, an armscye is cut out, in millimetres.
const BELOW_UNDERARM: f64 = 30.0;
const INSIDE: f64 = 25.0;

/// Length and width over a shoulder blade.
pub(super) fn shoulder_blade(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::CENTRE_BACK) {
        return Ok(None);
    }
    let [nape, _] = bench.start(&EdgeName::NECKLINE)?;
    let shoulder = bench.end(&EdgeName::SHOULDER)?;
    let [underarm, _] = bench.end(&EdgeName::ARMSCYE)?;
    let level = 0.5 * (nape.y + underarm.y);
    let dart = bench.shoulder_dart();
    let (place, blade) = match &dart {
        Some(dart) => (dart.legs[0], dart.apex()),
        None => (
            bench.share(&EdgeName::SHOULDER, 0.5)?,
            Point::new(0.5 * shoulder[0].x, level),
        ),
    };
    let hinge = bench.level(&EdgeName::ARMSCYE, level.max(blade.y + 4.0))?;
    bench.cut(&[place, blade, hinge])?;
    bench.hinge(hinge);
    let panel = bench.beside(&EdgeName::SHOULDER, shoulder[0])?;
    bench.turn(panel, hinge, shoulder);
    let spread = bench.spread();
    Ok(Some(
        Instruction::new(
            format!(
                "Cut from the shoulder{} to the blade, and on across to the armscye. Do not cut through the armscye: it is the hinge.",
                if dart.is_some() { ", along the dart," } else { "" }
            ),
            format!("Swing the shoulder on the armscye: {spread} at the shoulder."),
        )
        .drawn(if dart.is_some() {
            "Redraw the shoulder dart, as wide as the shoulder opened."
        } else {
            "Ease in the extra length of the shoulder."
        }),
    ))
}

/// A shoulder that slopes more or less.
pub(super) fn shoulder_slope(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let tip = bench.end(&EdgeName::SHOULDER)?;
    let underarm = bench.end(&EdgeName::ARMSCYE)?;
    let drop = underarm[1].y - underarm[0].y;
    if drop.abs() < 0.3 {
        // The underarm stays: the shoulder turns alone.
        let [neck, _] = bench.start(&EdgeName::SHOULDER)?;
        let scye = bench.share(&EdgeName::ARMSCYE, 0.3)?;
        bench.cut(&[scye, neck])?;
        bench.hinge(neck);
        let strip = bench.beside(&EdgeName::SHOULDER, tip[0])?;
        bench.turn(strip, neck, tip);
        let spread = bench.spread();
        return Ok(Some(Instruction::new(
            "Cut from the armscye below the shoulder to the neck point. Do not cut through the neckline: it is the hinge.",
            format!("Turn the shoulder about the neck point: {spread} at the armscye."),
        )));
    }
    let top = bench.clear_of_darts(&EdgeName::SHOULDER, 0.5)?;
    let low = bench.below_underarm(underarm[0].y, BELOW_UNDERARM);
    let side = bench.level(&EdgeName::SIDE_SEAM, low)?;
    let width = bench.share(&EdgeName::ARMSCYE, 0.5)?;
    let x = top.x.min(width.x - 12.0);
    bench.cut(&[top, Point::new(x, low), side])?;
    let panel = bench.beside(&EdgeName::ARMSCYE, width)?;
    bench.shift(panel, Vec2::new(0.0, drop));
    let (way, does) = if drop > 0.0 {
        ("down", "overlaps")
    } else {
        ("up", "opens")
    };
    Ok(Some(Instruction::new(
        "Cut down from the middle of the shoulder to below the armscye, and out to the side seam. Cut through: there is no hinge.",
        format!("Slide the armscye straight {way} by {}; the cut {does} at the side seam.", mm(drop)),
    )
    .drawn("Draw the shoulder straight from the neck point to the shoulder point.")))
}

/// The shoulder seam moved forward at the shoulder point.
pub(super) fn forward_shoulder(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let done = redraw(bench, &EdgeName::SHOULDER)?;
    bench.hinge(bench.start(&EdgeName::SHOULDER)?[0]);
    let said = if done.cut_off >= done.added {
        Instruction::new(
            "Draw the new shoulder from the neck point to the armscye and cut along it.",
            format!(
                "The wedge falls off: {} at the shoulder point, nothing at the neck. Tape it to the shoulder of the other piece.",
                mm(done.cut_off)
            ),
        )
    } else {
        Instruction::new(
            "Nothing is cut: the wedge cut from the other piece is put on along the shoulder, to nothing at the neck point.",
            format!(
                "Tape the wedge on: {} at the shoulder point, nothing at the neck.",
                mm(done.added)
            ),
        )
    };
    Ok(Some(said))
}

/// Broader or narrower shoulders.
pub(super) fn shoulder_width(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let width = bench.line_level("width")?;
    let hinge = bench.level(&EdgeName::ARMSCYE, width)?;
    let top = bench.clear_of_darts(&EdgeName::SHOULDER, 0.5)?;
    bench.cut(&[top, hinge])?;
    bench.hinge(hinge);
    let panel = bench.beside(&EdgeName::SHOULDER, bench.end(&EdgeName::SHOULDER)?[0])?;
    bench.turn(panel, hinge, bench.end(&EdgeName::SHOULDER)?);
    let gap = bench.widest(OpeningKind::Gap);
    let lap = bench.widest(OpeningKind::Overlap);
    let by = mm(bench.longer(&EdgeName::SHOULDER)?);
    Ok(Some(
        Instruction::new(
            "Cut from the middle of the shoulder to the armscye at chest width. Do not cut through the armscye: it is the hinge.",
            if gap > 0.0 {
                format!("Spread the cut by {} at the shoulder: ruled straight, the shoulder is then {by} longer.", mm(gap))
            } else {
                format!("Lap the cut by {} at the shoulder: ruled straight, the shoulder is then {by} shorter.", mm(lap))
            },
        )
        .drawn("Draw the shoulder straight."),
    ))
}

/// A lower or higher underarm.
pub(super) fn armscye_depth(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let width = bench.line_level("width")?;
    let [old, new] = bench.end(&EdgeName::ARMSCYE)?;
    let drop = new.y - old.y;
    let scye = bench.level(&EdgeName::ARMSCYE, width + 0.1 * (old.y - width))?;
    let low = bench.below_underarm(old.y, BELOW_UNDERARM.max(drop + 10.0));
    let side = bench.level(&EdgeName::SIDE_SEAM, low)?;
    if low - old.y < 4.0 {
        return missing("room below the underarm");
    }
    let x = scye.x - INSIDE;
    bench.cut(&[scye, Point::new(x, scye.y), Point::new(x, low), side])?;
    let panel = bench.beside(&EdgeName::ARMSCYE, old)?;
    bench.shift(panel, Vec2::new(0.0, drop));
    let way = if drop > 0.0 { "down" } else { "up" };
    Ok(Some(Instruction::new(
        "Cut out the lower armscye: in at chest width, down, and out to the side seam below it. Cut through: there is no hinge.",
        format!(
            "Slide the panel straight {way} by {}: one cut opens, the other overlaps.",
            mm(drop)
        ),
    )))
}
