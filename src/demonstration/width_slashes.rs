//! Slashes that give or take width of back, front and underarm.

use super::bench::Bench;
use super::error::Tried;
use super::instruction::Instruction;
use super::rings::{length, point_along};
use super::slash::OpeningKind;
use super::words::mm;
use crate::geometry::{Point, Vec2, perpendicular};
use crate::piece::EdgeName;

/// How far inside an edge a cut runs along it, in millimetres.
const INSIDE: f64 = 25.0;

/// A cut along an edge, inside it, from one of its places to another and to nothing at both; and the
/// corner of it that lies opposite a place between them.
pub(super) fn along_inside(
    bench: &Bench<'_>,
    edge: &EdgeName,
    [from, middle, to]: [Point; 3],
) -> Tried<(Vec<Point>, Point)> {
    let run = bench.run(edge)?;
    let long = length(&run);
    let at = |p: Point| {
        let mut walked = 0.0;
        let mut best = (f64::INFINITY, 0.0);
        for (a, b) in super::rings::steps(&run) {
            let (near, share) = super::rings::nearest_on((a, b), p);
            let far = near.distance(p);
            if far < best.0 {
                best = (far, walked + share * a.distance(b));
            }
            walked += a.distance(b);
        }
        best.1
    };
    let (start, through, end) = (at(from), at(middle), at(to));
    let inside = |place: f64, share: f64| {
        let (p, way) = point_along(&run, place.min(long)).unwrap_or((from, Vec2::new(0.0, 1.0)));
        // Clockwise: inside lies on the right.
        let depth = INSIDE * 4.0 * share * (1.0 - share);
        p + perpendicular(way) * depth
    };
    let mut path = vec![from];
    for k in 1..=7_u8 {
        let share = f64::from(k) / 8.0;
        let place = start + share * (through - start);
        path.push(inside(place, share * 0.5));
    }
    let opposite = inside(through, 0.5);
    path.push(opposite);
    for k in 1..=7_u8 {
        let share = f64::from(k) / 8.0;
        let place = through + share * (end - through);
        path.push(inside(place, 0.5 + share * 0.5));
    }
    path.push(to);
    Ok((path, opposite))
}

/// Two panels along an edge, hinged at their far ends, that move out or in where they meet.
pub(super) fn hinged_pair(
    bench: &mut Bench<'_>,
    edge: &EdgeName,
    [from, middle, to]: [Point; 3],
    moved: Point,
) -> Tried<()> {
    let (path, opposite) = along_inside(bench, edge, [from, middle, to])?;
    bench.cut(&path)?;
    bench.cut(&[middle, opposite])?;
    bench.hinge(from);
    bench.hinge(to);
    for (hinge, other) in [(from, to), (to, from)] {
        // Just beside the middle, on the hinge's side of it.
        let near = middle + (hinge - other).normalize() * 2.0;
        let panel = bench.beside(edge, near)?;
        bench.turn(panel, hinge, [middle, moved]);
    }
    Ok(())
}

/// What opens or overlaps sideways, in words.
pub(super) fn sideways(bench: &Bench<'_>, by: f64) -> String {
    let does = if by > 0.0 { "out" } else { "in" };
    let (gap, lap) = (
        bench.widest(OpeningKind::Gap),
        bench.widest(OpeningKind::Overlap),
    );
    let how = if by > 0.0 {
        format!("the cut opens by {}", mm(gap))
    } else {
        format!("the cut overlaps by {}", mm(lap))
    };
    format!("{does} by {}: {how}", mm(by))
}

/// A broader or narrower back.
pub(super) fn back_width(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let level = bench.line_level("width")?;
    let width = bench.level(&EdgeName::ARMSCYE, level)?;
    let new_run = bench.new_run(&EdgeName::ARMSCYE)?;
    let new_width = super::rings::at_level(&new_run, level).unwrap_or(width);
    let by = new_width.x - width.x;
    let tip = bench.end(&EdgeName::SHOULDER)?;
    if tip[0].distance(tip[1]) < 0.3 {
        return width_at_armscye(bench);
    }
    let low = bench.level(&EdgeName::ARMSCYE, level + 8.0)?;
    let top = bench.clear_of_darts(&EdgeName::SHOULDER, 0.6)?;
    let x = top.x.min(low.x - 12.0);
    bench.cut(&[top, Point::new(x, low.y), low])?;
    let panel = bench.beside(&EdgeName::ARMSCYE, tip[0].lerp(width, 0.5))?;
    // The shoulder point may move out by less: then the panel swings a little.
    bench.lay(panel, [width, new_width], tip);
    let said = sideways(bench, by);
    let parallel = if (tip[1].x - tip[0].x - by).abs() < 0.3 {
        ", parallel".to_owned()
    } else {
        format!(
            "; the shoulder point moves only {}",
            mm(tip[1].x - tip[0].x)
        )
    };
    let drawn = if bench.shoulder_dart().is_some() {
        "Draw the shoulder straight, and its dart wider or narrower, so that the shoulder keeps its length."
    } else {
        "Draw the shoulder straight; ease in its extra length."
    };
    Ok(Some(
        Instruction::new(
            "Cut from the shoulder straight down to below chest width, and out to the armscye. Cut through: there is no hinge.",
            format!("Slide the panel {said} at chest width{parallel}."),
        )
        .drawn(drawn),
    ))
}

/// A broader or narrower chest, to nothing at shoulder point and underarm.
pub(super) fn width_at_armscye(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let level = bench.line_level("width")?;
    let width = bench.level(&EdgeName::ARMSCYE, level)?;
    let new_run = bench.new_run(&EdgeName::ARMSCYE)?;
    let moved = super::rings::at_level(&new_run, level).unwrap_or(width);
    let [tip, _] = bench.start(&EdgeName::ARMSCYE)?;
    let [underarm, _] = bench.end(&EdgeName::ARMSCYE)?;
    let by = moved.x - width.x;
    hinged_pair(bench, &EdgeName::ARMSCYE, [tip, width, underarm], moved)?;
    let said = sideways(bench, by);
    Ok(Some(Instruction::new(
        "Cut along the armscye, inside it, from the shoulder point to the underarm, and across to the armscye at chest width. Do not cut through at shoulder point and underarm: they are hinges.",
        format!("Swing both strips {said}."),
    )))
}

/// Wider or narrower under the arm, to nothing at the waist.
pub(super) fn bust_girth(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) {
        return Ok(None);
    }
    let waist = bench.waist_on_side()?;
    let underarm = bench.end(&EdgeName::ARMSCYE)?;
    let by = underarm[1].x - underarm[0].x;
    let from = bench.share(&EdgeName::ARMSCYE, 0.8)?;
    bench.cut(&[from, waist])?;
    bench.hinge(waist);
    let panel = bench.beside(&EdgeName::ARMSCYE, underarm[0])?;
    bench.turn(panel, waist, underarm);
    let said = sideways(bench, by);
    Ok(Some(
        Instruction::new(
            "Cut from the lower armscye down to the side seam at the waist. Do not cut through at the waist: it is the hinge.",
            format!("Swing the side {said} at the armscye."),
        )
        .drawn("Extend the legs of a bust dart to the new side seam."),
    ))
}
