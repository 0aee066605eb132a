//! Slashes of the neckline, and wedges passed into a dart.

use super::bench::Bench;
use super::error::{Missing, Tried};
use super::instruction::Instruction;
use super::redrawn::redraw;
use super::slash::OpeningKind;
use super::words::{edge_words, mm};
use crate::geometry::Point;
use crate::piece::{Apexes, Dart, EdgeName};

/// A neckline that is drawn anew.
pub(super) fn neckline(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    let name = bench.old.name().to_owned();
    let done = redraw(bench, &EdgeName::NECKLINE)?;
    let said = if done.cut_off >= done.added {
        Instruction::new(
            format!("Draw the new neckline on the {name} and cut along it."),
            format!(
                "The strip falls off: {} where it is widest.",
                mm(done.cut_off)
            ),
        )
    } else {
        Instruction::new(
            format!("Nothing is cut on the {name}: the new neckline lies outside the paper."),
            format!(
                "Tape paper on and draw the new neckline: {} where it is widest.",
                mm(done.added)
            ),
        )
    };
    Ok(Some(said))
}

/// The dart whose angle changed most, before and after.
fn wider_dart<'a>(bench: &Bench<'a>) -> Option<(&'a Dart, &'a Dart)> {
    let new = bench.new.first()?;
    let pairs = bench
        .old
        .darts()
        .iter()
        .filter_map(|old| Some((old, new.dart(&old.name)?)));
    pairs
        .filter(|(old, _)| old.edge.is_some() && matches!(old.apexes, Apexes::One(_)))
        .filter(|(old, new)| (new.angle() - old.angle()).abs() > 1e-4)
        .max_by(|a, b| {
            let more = |(old, new): &(&Dart, &Dart)| (new.angle() - old.angle()).abs();
            more(a).total_cmp(&more(b))
        })
}

/// A wedge from an edge to the tip of a dart, passed into that dart.
fn wedge(bench: &mut Bench<'_>, edge: &EdgeName, from: Point) -> Tried<Option<Instruction>> {
    let Some((old, new)) = wider_dart(bench) else {
        return Ok(None);
    };
    let apex = old.apex();
    let gone = |k: usize| match (old.legs.get(k), new.legs.get(k)) {
        (Some(old), Some(new)) => (*old, *new, old.distance(*new)),
        _ => (apex, apex, 0.0),
    };
    let [first, second] = [gone(0), gone(1)];
    let (leg, to, _) = if first.2 >= second.2 { first } else { second };
    bench.cut(&[from, apex, leg])?;
    bench.hinge(apex);
    let fixed = {
        let centre = bench.centre()?;
        let [start, _] = bench.start(&centre)?;
        let [end, _] = bench.end(&centre)?;
        bench.beside(&centre, start.midpoint(end))?
    };
    let panel = 1 - fixed.min(1);
    bench.turn(panel, apex, [leg, to]);
    let dart = edge_words(&EdgeName::new(old.name.clone()));
    let at = edge_words(edge);
    let (gap, lap) = (
        bench.widest(OpeningKind::Gap),
        bench.widest(OpeningKind::Overlap),
    );
    let taken = new.angle() > old.angle();
    let by = mm(bench.longer(edge)?);
    let moved = if taken {
        format!(
            "Lap the cut at the {at} by {}: the {at} gets {by} shorter, and the {dart} dart opens by {}.",
            mm(lap),
            mm(gap)
        )
    } else {
        format!(
            "Open the cut at the {at} by {}: the {at} gets {by} longer, and the {dart} dart closes by {}.",
            mm(gap),
            mm(lap)
        )
    };
    Ok(Some(
        Instruction::new(
            format!("Cut from the {at} to the tip of the {dart} dart, and along one leg of that dart to its tip. Do not cut through at the tip: it is the hinge."),
            moved,
        )
        .drawn(format!("Draw the {dart} dart with its new legs.")),
    ))
}

/// A wedge from the neckline.
pub(super) fn neckline_gape(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::NECKLINE) {
        return Ok(None);
    }
    let new_dart = bench.new.first().and_then(|new| {
        let mut darts = new.darts().iter();
        darts.find(|d| d.edge == Some(EdgeName::NECKLINE) && bench.old.dart(&d.name).is_none())
    });
    if let Some(dart) = new_dart {
        let [a, b] = dart.legs;
        let said = Instruction::new(
            "Nothing is cut: the wedge stays in the paper as a dart. Draw it along the dashed line, from the neckline down to its tip and back.",
            format!(
                "Fold the dart, {} wide at the neckline: the neckline closes.",
                mm(dart.intake())
            ),
        );
        bench.mark(vec![a, dart.apex(), b]);
        return Ok(Some(said));
    }
    let from = bench.clear_of_darts(&EdgeName::NECKLINE, 0.5)?;
    let shoulder = bench.start(&EdgeName::SHOULDER)?;
    if let Some(said) = wedge(bench, &EdgeName::NECKLINE, from)? {
        return Ok(Some(said));
    }
    if shoulder[0].distance(shoulder[1]) < 0.3 {
        return Ok(None);
    }
    eased_shoulder(bench, from, shoulder).map(Some)
}

/// A wedge from the neckline to the blade that opens a shoulder without a dart.
fn eased_shoulder(bench: &mut Bench<'_>, from: Point, neck: [Point; 2]) -> Tried<Instruction> {
    let [nape, _] = bench.start(&EdgeName::NECKLINE)?;
    let [tip, _] = bench.end(&EdgeName::SHOULDER)?;
    let [underarm, _] = bench.end(&EdgeName::ARMSCYE)?;
    let blade = Point::new(0.5 * tip.x, 0.5 * (nape.y + underarm.y));
    let top = bench.clear_of_darts(&EdgeName::SHOULDER, 0.5)?;
    bench.cut(&[from, blade, top])?;
    bench.hinge(blade);
    let panel = bench.beside(&EdgeName::SHOULDER, neck[0])?;
    bench.turn(panel, blade, neck);
    let spread = bench.spread();
    Ok(Instruction::new(
        "Cut from the middle of the neckline down to the shoulder blade, and up from there to the middle of the shoulder. Do not cut through at the blade: it is the hinge.",
        format!("Turn the corner at the neck: {spread}."),
    )
    .drawn("Ease in the extra length of the shoulder."))
}

/// A wedge from the armscye.
pub(super) fn armscye_gape(bench: &mut Bench<'_>) -> Tried<Option<Instruction>> {
    if !bench.has(&EdgeName::ARMSCYE) || wider_dart(bench).is_none() {
        return Ok(None);
    }
    let width = bench.line_level("width")?;
    let from = bench.level(&EdgeName::ARMSCYE, width)?;
    let said = wedge(bench, &EdgeName::ARMSCYE, from)?;
    said.map_or_else(|| Err(Missing("a dart".to_owned())), |said| Ok(Some(said)))
}
