//! Slashes of waist, hip, seat and abdomen.

use super::bench::Bench;
use super::error::{Tried, missing};
use super::instruction::Instruction;
use super::rings::at_level;
use super::slash::OpeningKind;
use super::width_slashes::{along_inside, hinged_pair, sideways};
use super::words::mm;
use crate::geometry::{Point, Vec2};
use crate::piece::EdgeName;

/// How far from the side seam the waist is cut, in millimetres.
const FROM_SIDE: f64 = 25.0;

/// Where a level crosses the side seam after.
fn new_on_side(bench: &Bench<'_>, level: f64) -> Tried<Point> {
    let run = bench.new_run(&EdgeName::SIDE_SEAM)?;
    let found = at_level(&run, level);
    found.map_or_else(|| missing("a level on the new side seam"), Ok)
}

/// What the waist darts give or take, in words.
fn darts_change(bench: &Bench<'_>) -> String {
    let new = bench.new.first();
    let intake = |piece: &crate::piece::Piece| -> f64 {
        let darts = piece.darts().iter().filter(|d| d.name.starts_with("waist"));
        darts.map(crate::piece::Dart::intake).sum()
    };
    let change = new.map_or(0.0, |new| intake(new) - intake(bench.old));
    if change.abs() < 0.3 {
        return String::new();
    }
    format!(
        "Draw the waist darts {} {} in all, their tips as they were.",
        mm(change),
        if change > 0.0 { "wider" } else { "narrower" }
    )
}

/// Wider or narrower at the waist.
pub(super) fn waist_girth(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::SIDE_SEAM) {
        return Ok(None);
    }
    let waist = bench.waist_on_side()?;
    let drawn = darts_change(bench);
    if !bench.has(&EdgeName::WAIST) {
        let hip = bench.line_level("hip")?;
        let [underarm, _] = bench.start(&EdgeName::SIDE_SEAM)?;
        let hip = bench.level(&EdgeName::SIDE_SEAM, hip)?;
        let moved = new_on_side(bench, waist.y)?;
        let by = moved.x - waist.x;
        hinged_pair(bench, &EdgeName::SIDE_SEAM, [underarm, waist, hip], moved)?;
        let said = sideways(bench, by);
        return Ok(Some(
            Instruction::new(
                "Cut along the side seam, inside it, from the underarm to the hip, and across to the seam at the waist. Do not cut through at underarm and hip: they are hinges.",
                format!("Swing both strips {said} at the waist."),
            )
            .drawn(drawn),
        ));
    }
    let from_centre = bench.waist_starts_at_centre()?;
    let (ends, hinge, words) = if from_centre {
        let hip = bench.line_level("hip")?;
        let hinge = bench.level(&EdgeName::SIDE_SEAM, hip)?;
        (bench.start(&EdgeName::SIDE_SEAM)?, hinge, "hip")
    } else {
        let [underarm, _] = bench.start(&EdgeName::SIDE_SEAM)?;
        (bench.end(&EdgeName::SIDE_SEAM)?, underarm, "underarm")
    };
    let by = ends[1].x - ends[0].x;
    let from = bench.upright(&EdgeName::WAIST, ends[0].x - FROM_SIDE)?;
    bench.cut(&[from, hinge])?;
    bench.hinge(hinge);
    let panel = bench.beside(&EdgeName::WAIST, ends[0])?;
    bench.turn(panel, hinge, ends);
    let said = sideways(bench, by);
    Ok(Some(
        Instruction::new(
            format!("Cut from the waist near the side seam to the side seam at the {words}. Do not cut through there: it is the hinge."),
            format!("Swing the side {said} at the waist."),
        )
        .drawn(drawn),
    ))
}

/// Wider or narrower between waist and hip.
pub(super) fn high_hip(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let Some(new) = bench.new.first() else {
        return Ok(None);
    };
    let Some(line) = new.line("high_hip") else {
        return Ok(None);
    };
    let moved = line.curve.end();
    let moved = if line.curve.start().x > moved.x {
        line.curve.start()
    } else {
        moved
    };
    let waist = bench.waist_on_side()?;
    let hip = bench.line_level("hip")?;
    let hip = bench.level(&EdgeName::SIDE_SEAM, hip)?;
    let middle = bench.level(&EdgeName::SIDE_SEAM, moved.y)?;
    let by = moved.x - middle.x;
    hinged_pair(bench, &EdgeName::SIDE_SEAM, [waist, middle, hip], moved)?;
    let said = sideways(bench, by);
    Ok(Some(Instruction::new(
        "Cut along the side seam, inside it, from waist to hip, and across to the seam at the high hip. Do not cut through at waist and hip: they are hinges.",
        format!("Swing both strips {said} at the high hip."),
    )))
}

/// Wider or narrower at the hip, nothing at the waist, parallel below.
pub(super) fn hip_girth(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let waist = bench.waist_on_side()?;
    let level = bench.line_level("hip")?;
    let hip = bench.level(&EdgeName::SIDE_SEAM, level)?;
    let moved = new_on_side(bench, level)?;
    let by = moved.x - hip.x;
    let end = bench.end(&EdgeName::SIDE_SEAM)?;
    let inner = Point::new(hip.x - FROM_SIDE, hip.y);
    let low = bench.upright(&EdgeName::HEM, end[0].x - FROM_SIDE)?;
    let (path, _) = along_inside(
        bench,
        &EdgeName::SIDE_SEAM,
        [waist, waist.lerp(hip, 0.5), hip],
    )?;
    let mut cut: Vec<Point> = path.into_iter().take(9).collect();
    cut.extend([inner, low]);
    bench.cut(&cut)?;
    bench.cut(&[hip, inner])?;
    bench.hinge(waist);
    let upper = bench.beside(&EdgeName::SIDE_SEAM, waist.lerp(hip, 0.6))?;
    bench.turn(upper, waist, [hip, moved]);
    let lower = bench.beside(&EdgeName::SIDE_SEAM, hip.lerp(end[0], 0.5))?;
    bench.shift(lower, Vec2::new(by, 0.0));
    let said = sideways(bench, by);
    Ok(Some(Instruction::new(
        "Cut from the hem up along the side seam to the waist, and across to the seam at the hip. Do not cut through at the waist: it is the hinge.",
        format!("Slide the lower strip {said}, parallel; the upper strip swings on the waist."),
    )))
}

/// Length at the centre over seat or abdomen.
pub(super) fn centre_length(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let centre = bench.centre()?;
    let hip = bench.line_level("hip")?;
    let waist = bench.waist_on_side()?;
    let level = 0.5 * (waist.y + hip);
    let hinge = bench.level(&EdgeName::SIDE_SEAM, level)?;
    let start = bench.level(&centre, level)?;
    bench.cut(&[start, hinge])?;
    bench.hinge(hinge);
    let upper = !bench.has(&EdgeName::SHOULDER);
    // A skirt opens upward; a piece that reaches to the neck opens downward.
    let (ends, which) = if upper {
        (bench.end(&centre)?, "upper")
    } else {
        (bench.start(&centre)?, "lower")
    };
    let by = ends[0].distance(ends[1]);
    let panel = bench.beside(&centre, ends[0])?;
    // The cut at the centre opens by what the centre gains.
    let way = Vec2::new(0.0, ends[1].y - ends[0].y);
    bench.turn(panel, hinge, [start, start + way]);
    let gap = bench.widest(OpeningKind::Gap) > 0.0;
    let does = if gap { "Open" } else { "Lap" };
    Ok(Some(
        Instruction::new(
            "Cut across from the centre to the side seam, half way between waist and hip. Do not cut through the side seam: it is the hinge.",
            format!("{does} the cut by {} at the centre, to nothing at the side seam; the {which} part turns.", mm(by)),
        )
        .drawn("Draw the centre straight again, and the side seam back to its old line."),
    ))
}
