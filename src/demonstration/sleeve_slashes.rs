//! Slashes of the sleeve.

use super::bench::Bench;
use super::error::{Missing, Tried};
use super::instruction::Instruction;
use super::redrawn::redraw;
use super::rings::{distance, length, point_along, steps};
use super::slash::OpeningKind;
use super::sleeve_edges::{underarm_back, underarm_front};
use super::width_slashes::{hinged_pair, sideways};
use super::words::mm;
use crate::geometry::{Curve, Point, Vec2};
use crate::piece::{EdgeName, Piece};

/// The highest point of a cap.
fn top(run: &[Point]) -> Option<Point> {
    run.iter().copied().min_by(|a, b| a.y.total_cmp(&b.y))
}

/// Where a point lies after the two ends of the biceps line went apart, as far from both as it was,
/// above or below the line.
fn meeting(ends: [[Point; 2]; 2], p: Point, up: bool) -> Option<Point> {
    let [[back, new_back], [front, new_front]] = ends;
    let (r, s) = (back.distance(p), front.distance(p));
    let between = new_front - new_back;
    let wide = between.hypot();
    if wide <= 0.0 {
        return None;
    }
    let along = (r * r - s * s + wide * wide) / (2.0 * wide);
    let off = (r * r - along * along).max(0.0).sqrt();
    let way = between / wide;
    let down = Vec2::new(-way.y, way.x);
    let sign = if up { -1.0 } else { 1.0 };
    Some(new_back + way * along + down * (off * sign))
}

/// A sleeve whose seam is shorter than this share of its width has no room for a cross of cuts.
const SHORT: f64 = 0.5;

/// A short sleeve wider or narrower at the biceps, to nothing at its lower edge.
fn short_sleeve(bench: &mut Bench<'_>, [back, front]: [[Point; 2]; 2]) -> Tried<Instruction> {
    let cap = bench.run(&EdgeName::SLEEVE_CAP)?;
    let long = length(&cap);
    let ends = [
        bench.end(&EdgeName::WRIST)?[0],
        bench.start(&EdgeName::WRIST)?[0],
    ];
    for ((at, corner), hinge) in [(INSIDE, back), (long - INSIDE, front)]
        .into_iter()
        .zip(ends)
    {
        let Some((from, _)) = point_along(&cap, at) else {
            continue;
        };
        bench.cut(&[from, hinge])?;
        bench.hinge(hinge);
        let panel = bench.beside(&EdgeName::SLEEVE_CAP, corner[0])?;
        bench.turn(panel, hinge, corner);
    }
    let by = front[1].x - front[0].x;
    let said = sideways(bench, by);
    Ok(Instruction::new(
        "Cut from both ends of the cap down to the lower corners. Do not cut through the corners: they are hinges.",
        format!("On both sides, swing the strips {said} at the biceps line."),
    )
    .drawn("Draw the cap lower or higher, so that it keeps its length."))
}

/// Wider or narrower at the biceps: a cross of cuts.
pub(super) fn upper_arm(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::SLEEVE_CAP) {
        return Ok(None);
    }
    let cap = bench.run(&EdgeName::SLEEVE_CAP)?;
    let nothing = || Missing("a cap".to_owned());
    let crown = top(&cap).ok_or_else(nothing)?;
    let back = bench.start(&EdgeName::SLEEVE_CAP)?;
    let front = bench.end(&EdgeName::SLEEVE_CAP)?;
    let wrist = bench.run(&EdgeName::WRIST)?;
    let (low, _) = point_along(&wrist, 0.5 * length(&wrist)).ok_or_else(nothing)?;
    if low.y - back[0].y < SHORT * (front[0].x - back[0].x) {
        return short_sleeve(bench, [back, front]).map(Some);
    }
    let biceps = Point::new(
        crown.x + (low.x - crown.x) * (back[0].y - crown.y) / (low.y - crown.y),
        back[0].y,
    );
    bench.cut(&[crown, biceps, low])?;
    bench.cut(&[back[0], biceps])?;
    bench.cut(&[biceps, front[0]])?;
    for hinge in [crown, low, back[0], front[0]] {
        bench.hinge(hinge);
    }
    // Four panels hold each other: the two upper ones meet at the crown, the lower ones at the wrist.
    let meet = |p: Point, up: bool| meeting([back, front], p, up).ok_or_else(nothing);
    let (new_crown, new_low) = (meet(crown, true)?, meet(low, false)?);
    // The altered sleeve is compared with its cap on the panels'.
    let inside = |x: f64, y: f64| biceps + Vec2::new(x, y);
    let corners = [
        (inside(-2.0, -2.0), [back, [crown, new_crown]]),
        (inside(2.0, -2.0), [front, [crown, new_crown]]),
        (inside(-2.0, 2.0), [back, [low, new_low]]),
        (inside(2.0, 2.0), [front, [low, new_low]]),
    ];
    for (within, [side, end]) in corners {
        let panel = bench.around(within)?;
        bench.lay(panel, side, end);
    }
    let gap = bench.widest(OpeningKind::Gap);
    let lap = bench.widest(OpeningKind::Overlap);
    let by = (front[1].x - back[1].x) - (front[0].x - back[0].x);
    let moved = if by > 0.0 {
        format!(
            "Open the upright cut at the biceps line by {}: the level cut overlaps by {}, and the cap gets lower.",
            mm(by),
            mm(lap)
        )
    } else {
        format!(
            "Lap the upright cut at the biceps line by {}: the level cut opens by {}, and the cap gets higher.",
            mm(by),
            mm(gap)
        )
    };
    Ok(Some(Instruction::new(
        "Cut from the top of the cap straight down to the wrist, and across along the biceps line. Do not cut through at the ends of both cuts: they are hinges.",
        moved,
    )
    .drawn("Draw the cap at its old length.")))
}

/// The ends of a line of a sleeve on back and front seam.
fn ends(piece: &Piece, line: &str) -> Option<[Point; 2]> {
    let curve: &Curve = &piece.line(line)?.curve;
    let (a, b) = (curve.start(), curve.end());
    Some(if a.x < b.x { [a, b] } else { [b, a] })
}

/// Wider or narrower at a line between biceps and wrist, at both seams.
fn at_line(bench: &mut Bench<'_>, line: &str, place: &str) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::SLEEVE_CAP) {
        return Ok(None);
    }
    let nothing = || Missing(format!("a line {line}"));
    let new = bench
        .new
        .first()
        .and_then(|p| ends(p, line))
        .ok_or_else(nothing)?;
    let old = ends(bench.old, line);
    let [back_top, _] = bench.start(&EdgeName::SLEEVE_CAP)?;
    let [front_top, _] = bench.end(&EdgeName::SLEEVE_CAP)?;
    let [wrist_front, _] = bench.start(&EdgeName::WRIST)?;
    let [wrist_back, _] = bench.end(&EdgeName::WRIST)?;
    let by = new[1].x - bench.level(&underarm_front(), new[1].y)?.x;
    let back_at = old.map_or(Ok(new[0]), |o| Ok(o[0]))?;
    let back_at = bench.level(&underarm_back(), back_at.y)?;
    let front_at = bench.level(&underarm_front(), old.map_or(new[1].y, |o| o[1].y))?;
    hinged_pair(
        bench,
        &underarm_front(),
        [front_top, front_at, wrist_front],
        new[1],
    )?;
    hinged_pair(
        bench,
        &underarm_back(),
        [wrist_back, back_at, back_top],
        new[0],
    )?;
    let said = sideways(bench, by);
    Ok(Some(
        Instruction::new(
            format!("Cut along both underarm seams, inside them, from the biceps line to the wrist, and across to the seam at the {place}. Do not cut through at biceps line and wrist: they are hinges."),
            format!("On both sides, swing the strips {said} at the {place}."),
        )
        .drawn("Extend the legs of an elbow dart to the new seam."),
    ))
}

/// Wider or narrower at the elbow.
pub(super) fn elbow_width(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    at_line(bench, "elbow", "elbow")
}

/// Wider or narrower at the forearm.
pub(super) fn forearm_width(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    at_line(bench, "forearm", "forearm")
}

/// How far inside the seam the wrist is cut, in millimetres.
const INSIDE: f64 = 25.0;

/// Wider or narrower at the wrist, to nothing at the elbow.
pub(super) fn wrist_width(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::SLEEVE_CAP) {
        return Ok(None);
    }
    let wrist = bench.run(&EdgeName::WRIST)?;
    let long = length(&wrist);
    let front = moves_from(bench, &underarm_front(), false)?;
    let back = moves_from(bench, &underarm_back(), true)?;
    let starts = bench.start(&EdgeName::WRIST)?;
    let stops = bench.end(&EdgeName::WRIST)?;
    let mut by = 0.0;
    for (at, hinge, end) in [(INSIDE, front, starts), (long - INSIDE, back, stops)] {
        let Some((from, _)) = point_along(&wrist, at) else {
            continue;
        };
        bench.cut(&[from, hinge])?;
        bench.hinge(hinge);
        let panel = bench.beside(&EdgeName::WRIST, end[0])?;
        bench.turn(panel, hinge, end);
        by = if hinge == front {
            end[1].x - end[0].x
        } else {
            by
        };
    }
    let said = sideways(bench, by);
    Ok(Some(Instruction::new(
        "Cut from the wrist up to both underarm seams at the elbow. Do not cut through the seams: they are hinges.",
        format!("On both sides, swing the strips {said} at the wrist."),
    )))
}

/// Where a seam begins to move, walked from the biceps line down.
fn moves_from(bench: &Bench<'_>, seam: &EdgeName, upward: bool) -> Tried<Point> {
    let (mut old, new) = (bench.run(seam)?, bench.new_run(seam)?);
    if upward {
        old.reverse();
    }
    let long = length(&old);
    let mut still = old.first().copied().unwrap_or_default();
    for k in 1..=STEPS {
        let Some((p, _)) = point_along(&old, long * f64::from(k) / f64::from(STEPS)) else {
            continue;
        };
        if distance(steps(&new), p) > STILL {
            break;
        }
        still = p;
    }
    Ok(still)
}

/// How finely a seam is searched, and what moves by less stands still, in millimetres.
const STEPS: u8 = 60;
const STILL: f64 = 0.15;

/// The sleeve turned in its armscye.
pub(super) fn sleeve_pitch(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::SLEEVE_CAP) {
        return Ok(None);
    }
    let front = redraw(bench, &underarm_front())?;
    let back = redraw(bench, &underarm_back())?;
    let forward = front.cut_off > front.added;
    let (from, to, by) = if forward {
        ("front", "back", front.cut_off.max(back.added))
    } else {
        ("back", "front", front.added.max(back.cut_off))
    };
    Ok(Some(
        Instruction::new(
            format!("Draw a line along the {from} underarm seam, inside it, and cut the strip off. Cut through: there is no hinge."),
            format!("Tape the strip to the {to} underarm seam: {} wide at most.", mm(by)),
        )
        .drawn("Set the sleeve in by its notches: it then hangs turned by this amount."),
    ))
}
