//! Slashes that give or take length above and below the waist.

use super::bench::Bench;
use super::error::{Tried, missing};
use super::instruction::Instruction;
use super::slash::OpeningKind;
use super::sleeve_edges::{underarm_back, underarm_front};
use super::words::mm;
use crate::geometry::{Point, Vec2};
use crate::piece::{Apexes, Dart, EdgeName};

/// What is left of the fold that is cut across near a waist, in millimetres.
const BESIDE_WAIST: f64 = 25.0;

/// A back in one piece is cut beside its waist dart by so much, in millimetres.
const BESIDE_DART: f64 = 8.0;

/// The centre back shortened above the waist.
pub(super) fn back_shorter(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::CENTRE_BACK) {
        return Ok(None);
    }
    if bench.has(&EdgeName::WAIST) {
        return waist_wedge(bench).map(Some);
    }
    let [nape, new_nape] = bench.start(&EdgeName::NECKLINE)?;
    let [neck, new_neck] = bench.start(&EdgeName::SHOULDER)?;
    let [tip, new_tip] = bench.end(&EdgeName::SHOULDER)?;
    let underarm = bench.end(&EdgeName::ARMSCYE)?[0];
    let waist = bench.line_level("waist")?;
    let level = 0.5 * (tip.y + underarm.y);
    let pointed = |d: &&Dart| matches!(d.apexes, Apexes::Two(..));
    let beside = match bench.old.darts().iter().find(pointed) {
        Some(dart) => dart.legs[0].x.max(dart.legs[1].x) + BESIDE_DART,
        None => 0.45 * underarm.x,
    };
    let scye = bench.level(&EdgeName::ARMSCYE, level)?;
    let corner = Point::new(beside.min(scye.x - 12.0), level);
    let amount = new_nape.y - nape.y;
    let across = waist - amount.max(0.0);
    bench.cut(&[
        Point::new(nape.x, across),
        Point::new(corner.x, across),
        corner,
        neck,
    ])?;
    bench.cut(&[corner, tip])?;
    // A flatter shoulder reaches farther: the middle goes over the old fold by as much, and the
    // altered piece, whose fold is drawn straight, lies on the table with its neck there.
    let gain = new_tip.x - tip.x;
    let [foot, _] = bench.start(&EdgeName::CENTRE_BACK)?;
    let turned = foot + (new_nape - foot) - Vec2::new(gain, 0.0);
    bench.lay_altered([foot, foot], [new_nape, turned]);
    let drop = new_tip.y - tip.y;
    bench.hinge(neck);
    let hinged = drop.abs() < 1.0;
    let (new_neck, new_tip) = if hinged {
        bench.hinge(tip);
        let aside = reach_aside(neck, tip, new_neck.y);
        (Point::new(tip.x - aside, new_neck.y), tip)
    } else {
        let aside = Vec2::new(-gain, 0.0);
        (new_neck + aside, new_tip + aside)
    };
    let centre = bench.around(Point::new(nape.x + 1.0, 0.5 * across))?;
    let swung = bench.around(neck.midpoint(tip).lerp(corner, 0.35))?;
    bench.shift(centre, new_neck - neck);
    bench.lay(swung, [tip, new_tip], [neck, new_neck]);
    let (lap, way) = if amount > 0.0 {
        ("overlaps", "drops")
    } else {
        ("opens", "rises")
    };
    let cut = "Cut in from the centre back just above the waist, then up beside the waist dart to the height of the middle of the armscye, and from there to the neck point and to the shoulder point.";
    let said = if hinged {
        Instruction::new(
            format!("{cut} Do not cut through at these two points: they are hinges."),
            format!(
                "The middle {way} by {} and {lap} at the waist. The shoulder swings on its hinges; the shoulder point stays where it is.",
                mm(amount)
            ),
        )
    } else {
        Instruction::new(
            format!("{cut} Do not cut through at the neck point: it is the hinge."),
            format!(
                "The middle {way} by {} and {lap} at the waist. The shoulder swings on the neck point and {lap} at the armscye: the shoulder point {way} by {}.",
                mm(amount),
                mm(drop)
            ),
        )
    };
    Ok(Some(said.drawn(
        "Draw the centre back straight, and take the width that this adds off at the side; draw the darts to their moved tips.",
    )))
}

/// How far beside its point a shoulder of that length begins at another level.
fn reach_aside(neck: Point, tip: Point, level: f64) -> f64 {
    let up = tip.y - level;
    (neck.distance_squared(tip) - up * up).max(0.0).sqrt()
}

/// A wedge from the waist at the centre to nothing at the side seam, on a piece with a waist edge.
fn waist_wedge(bench: &mut Bench<'_>) -> Tried<Instruction> {
    let centre = bench.centre()?;
    let from_fold = bench.waist_starts_at_centre()?;
    let ([old, new], [side, _]) = if from_fold {
        (bench.start(&EdgeName::WAIST)?, bench.end(&EdgeName::WAIST)?)
    } else {
        (bench.end(&EdgeName::WAIST)?, bench.start(&EdgeName::WAIST)?)
    };
    let into = if from_fold {
        BESIDE_WAIST
    } else {
        -BESIDE_WAIST
    };
    let hinge = bench.level(&EdgeName::SIDE_SEAM, side.y + into)?;
    let amount = new.y - old.y;
    let reach = amount.abs() + BESIDE_WAIST;
    let start = bench.level(&centre, old.y + if from_fold { reach } else { -reach })?;
    bench.cut(&[start, hinge])?;
    bench.hinge(hinge);
    let strip = bench.beside(&EdgeName::WAIST, old.midpoint(side))?;
    bench.turn(strip, hinge, [old, new]);
    let lap = bench.widest(OpeningKind::Overlap);
    let gap = bench.widest(OpeningKind::Gap);
    Ok(Instruction::new(
        "Cut across near the waist, from the centre back to the side seam. Do not cut through the side seam: it is the hinge.",
        if lap > 0.0 {
            format!("Lap the cut by {} at the centre back, to nothing at the side seam.", mm(lap))
        } else {
            format!("Open the cut by {} at the centre back, to nothing at the side seam.", mm(gap))
        },
    )
    .drawn("Draw the centre back straight and the waist square to it, its darts as wide as they were."))
}

/// The centre back lengthened over the shoulder blades.
pub(super) fn back_longer(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::CENTRE_BACK) {
        return Ok(None);
    }
    let [nape, new_nape] = bench.start(&EdgeName::NECKLINE)?;
    let [tip, new_tip] = bench.end(&EdgeName::SHOULDER)?;
    let underarm = bench.end(&EdgeName::ARMSCYE)?[0];
    let dart = bench.shoulder_dart();
    let (place, blade) = match &dart {
        Some(dart) => (dart.legs[0], dart.apex()),
        None => {
            let level = 0.5 * (nape.y + underarm.y);
            (
                bench.share(&EdgeName::SHOULDER, 0.5)?,
                Point::new(0.5 * tip.x, level),
            )
        }
    };
    let hinge = bench.level(&EdgeName::ARMSCYE, blade.y)?;
    let fold = Point::new(nape.x, blade.y);
    bench.cut(&[fold, blade, hinge])?;
    bench.cut(&[place, blade])?;
    bench.hinge(hinge);
    let by = new_nape.y - nape.y;
    let neck = bench.beside(&EdgeName::NECKLINE, nape)?;
    bench.shift(neck, Vec2::new(0.0, by));
    let shoulder = bench.beside(&EdgeName::SHOULDER, tip)?;
    bench.turn(shoulder, hinge, [tip, new_tip]);
    let down = if dart.is_some() {
        "beside the shoulder dart"
    } else {
        "from the middle of the shoulder"
    };
    let (way, does) = if by < 0.0 {
        ("up", "opens")
    } else {
        ("down", "overlaps")
    };
    Ok(Some(
        Instruction::new(
            format!(
                "Cut across over the shoulder blades from the centre back to the armscye, and {down} down to that cut. Do not cut through the armscye: it is the hinge."
            ),
            format!(
                "The neck goes straight {way} by {}, where the cut {does}; the shoulder swings {way} on the armscye.",
                mm(by)
            ),
        )
        .drawn(if dart.is_some() {
            "Redraw the shoulder dart: it takes up the difference between the two panels."
        } else {
            "Ease in the extra length of the shoulder."
        }),
    ))
}

/// The front lengthened above the chest.
pub(super) fn front_longer(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::CENTRE_FRONT) {
        return Ok(None);
    }
    let [neck, new_neck] = bench.start(&EdgeName::NECKLINE)?;
    let width = bench.line_level("width")?;
    let level = neck.y + 0.55 * (width - neck.y);
    let scye = bench.level(&EdgeName::ARMSCYE, level)?;
    bench.cut(&[Point::new(neck.x, level), scye])?;
    let upper = bench.beside(&EdgeName::NECKLINE, neck)?;
    let by = new_neck.y - neck.y;
    bench.shift(upper, Vec2::new(0.0, by));
    let does = if by < 0.0 { "Spread" } else { "Lap" };
    Ok(Some(Instruction::new(
        "Cut straight across from the centre front to the armscye, between neck and chest. Cut through: there is no hinge.",
        format!(
            "{does} the cut by {}, parallel; neck and shoulder move with it as one piece.",
            mm(by)
        ),
    )))
}

/// A parallel spread or tuck of bodice, hips, skirt, sleeve or forearm.
pub(super) fn longer(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let is_sleeve = bench.has(&EdgeName::SLEEVE_CAP);
    let moved = |line: &str| {
        let level = |piece: &crate::piece::Piece| piece.line(line).map(|l| l.curve.start().y);
        let (old, new) = (level(bench.old), bench.new.first().and_then(|p| level(p)));
        matches!((old, new), (Some(old), Some(new)) if (new - old).abs() > 0.3)
    };
    let (y, words, [left, right]) = if is_sleeve {
        let [_, wrist] = [
            bench.start(&EdgeName::WRIST)?[0],
            bench.end(&EdgeName::WRIST)?[0],
        ];
        let elbow = bench.line_level("elbow").unwrap_or(0.5 * wrist.y);
        let sides = [underarm_back(), underarm_front()];
        if moved("elbow") {
            (0.5 * elbow, "between upper arm and elbow", sides)
        } else {
            (
                0.45 * elbow + 0.55 * wrist.y,
                "between elbow and wrist",
                sides,
            )
        }
    } else {
        let sides = [bench.centre()?, EdgeName::SIDE_SEAM];
        let side = bench.end(&EdgeName::SIDE_SEAM)?[0];
        let hip = bench.line_level("hip").ok();
        let waist = bench.line_level("waist").ok();
        let top = bench.start(&EdgeName::SIDE_SEAM)?[0].y;
        match (waist, hip) {
            // A bodice, whose waist is its end.
            (None, None) => (bench.below_darts(side.y), "between bust and waist", sides),
            (Some(waist), _) if moved("waist") => {
                (bench.below_darts(waist), "between bust and waist", sides)
            }
            (_, Some(hip)) if moved("hip") => (
                0.5 * (waist.unwrap_or(top) + hip),
                "between waist and hip",
                sides,
            ),
            (_, Some(hip)) => (0.5 * (hip + side.y), "below the hip", sides),
            (Some(waist), None) => (0.5 * (waist + side.y), "below the waist", sides),
        }
    };
    let (a, b) = (bench.level(&left, y)?, bench.level(&right, y)?);
    bench.cut(&[a, b])?;
    let low = if is_sleeve {
        bench.start(&EdgeName::WRIST)?
    } else {
        bench.end(&EdgeName::SIDE_SEAM)?
    };
    let panel = bench.beside(
        if is_sleeve {
            &EdgeName::WRIST
        } else {
            &EdgeName::SIDE_SEAM
        },
        low[0],
    )?;
    let fold = if is_sleeve { low } else { bench.start(&left)? };
    let by = fold[1].y - fold[0].y;
    if by.abs() < 0.01 {
        return missing("a length that changed");
    }
    bench.shift(panel, Vec2::new(0.0, by));
    let does = if by > 0.0 { "Spread" } else { "Lap" };
    Ok(Some(Instruction::new(
        format!(
            "Cut straight across {words}, square to the grain. Cut through: there is no hinge."
        ),
        format!(
            "{does} the cut by {}, parallel, with the grain in one line.",
            mm(by)
        ),
    )))
}
