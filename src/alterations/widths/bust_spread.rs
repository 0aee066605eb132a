//! A front spread at the bust point.

use super::redrawn_waist::{WaistMoves, redraw_waist};
use crate::alterations::cutting::quarter::{hem, line_on_side, waist_on_side};
use crate::alterations::cutting::stations::{Station, move_edge, moved_at};
use crate::alterations::cutting::true_up::{carried, with_mouth};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, root, tolerance};
use crate::piece::{Apexes, BUST_POINT, Dart, EdgeName, Piece};
use kurbo::{CubicBez, PathSeg};

/// What a dart keeps of its angle, in radians, and of its intake, in millimetres.
const LEAST_ANGLE: f64 = 0.03;
const LEAST_INTAKE: f64 = 3.0;

/// What the underarm moves out of what the bust point does. It lies about half way from the hinge on
/// the armscye down to the bust point; as a fixed share it gains the same before and after the
/// underarm is lowered or raised.
const AT_UNDERARM: f64 = 0.5;

/// The front wider by an amount at the apex of its bust dart.
pub(in crate::alterations) fn spread(
    piece: &Piece,
    dart: &Dart,
    amount: f64,
) -> Result<Piece, AlterationError> {
    let (side, armscye) = (&EdgeName::SIDE_SEAM, &EdgeName::ARMSCYE);
    let mut sketch = Sketch::of(piece);
    let scye = sketch.curve(armscye)?.clone();
    let at = piece
        .notches()
        .iter()
        .find(|n| &n.edge == armscye)
        .map_or(scye.length() / 2.0, |n| n.at);
    let hinge = scye.point_at(at)?.0;

    // The panel beside the armscye swings about its hinge until the apex has moved out by the
    // amount; how far it drops with it, everything below drops.
    let tip = dart.apex();
    let turn = swing(hinge, tip, dart.angle(), amount)?;
    let swung = Rigid::turn_about(hinge, turn);
    let apex = swung.apply(tip);
    let drop = apex.y - tip.y;
    let shift = Vec2::new(amount, drop);

    // Side seam: above the dart with the panel, below it shifted.
    let seam = sketch.curve(side)?.clone();
    let mouths = piece.mouths(side);
    let Some((_, from, to)) = mouths.first() else {
        return Err(GeometryError::Empty.into());
    };
    let above = seam.part(0.0, *from)?.moved(&swung);
    let trued = underarm_trued(
        &above,
        AT_UNDERARM * amount - (above.start().x - seam.start().x),
    )?;
    let above = carried(&above, &trued)?;
    sketch.replace(armscye, swung_below(&scye, at, &swung.then(trued))?)?;
    let waist = waist_on_side(piece).unwrap_or(seam.length()) - to;
    let below = seam.part(*to, seam.length())?;
    let darted = waist_dart_bears(piece, amount);
    let (after, back_at) = if piece.outline().edge(&EdgeName::WAIST).is_some() {
        (below.moved(&Rigid::shift(shift)), shift)
    } else {
        let give = if darted {
            line_on_side(piece, "hip").map_or(below.length(), |h| h - to)
        } else {
            waist
        };
        given_back(&below, (darted.then_some(waist), give), shift)?
    };
    let deeper = Dart {
        legs: [above.end(), after.start()],
        apexes: Apexes::One(apex),
        ..dart.clone()
    };
    let drawn = with_mouth(&above, &deeper, &after)?;
    let slid = drawn.length() - seam.length();
    sketch.replace(side, drawn)?;
    for notch in &mut sketch.parts_mut().notches {
        if &notch.edge == side && notch.at >= *to {
            notch.at += slid;
        }
    }
    if let Some(slot) = sketch.dart_mut(&dart.name) {
        *slot = deeper;
    }
    // The bust point goes with the tip about which the dart turned.
    let bust = piece.bust_point();
    for point in sketch
        .points_mut()
        .iter_mut()
        .filter(|p| p.name == BUST_POINT)
    {
        point.at = bust.map_or(point.at, |bust| bust + shift);
    }
    lower_front(&mut sketch, piece, (shift, back_at), darted)?;
    sketch.finish()
}

/// The motion by which an underarm is trued outward, the side seam above the dart at its length.
fn underarm_trued(above: &Curve, out: f64) -> Result<Rigid, AlterationError> {
    let motion = |down: f64| Rigid::shift(Vec2::new(out, down));
    let reach = 1.0 + out.abs();
    let down = root("drop of the underarm", -reach, reach, |down| {
        carried(above, &motion(down)).map_or(f64::NAN, |c| c.length() - above.length())
    })
    .map_err(|source| AlterationError::Construction {
        step: "underarm trued after the side front swung",
        source,
    })?;
    Ok(motion(down))
}

/// By how much the panel turns; the dart has to stay a dart.
fn swing(hinge: Point, tip: Point, angle: f64, amount: f64) -> Result<f64, AlterationError> {
    let out = |turn: f64| Rigid::turn_about(hinge, turn).apply(tip).x - tip.x;
    // Against the clock the tip, which lies below the hinge, moves out.
    let turn = root("swing of the side front", -0.5, 0.5, |turn| {
        out(turn) - amount
    })
    .map_err(|source| AlterationError::Construction {
        step: "front spread at the bust point",
        source,
    })?;
    if angle - turn >= LEAST_ANGLE {
        return Ok(turn);
    }
    Err(AlterationError::TooMuch {
        amount,
        most: out((angle - LEAST_ANGLE).max(0.0)),
        unit: "mm",
        why: "the bust dart would be closed".to_owned(),
    })
}

/// The armscye with its lower part swung about the hinge, blended there and as long as before.
fn swung_below(scye: &Curve, at: f64, swung: &Rigid) -> Result<Curve, AlterationError> {
    let (upper, lower) = scye.split_at(at)?;
    let wanted = lower.length();
    let blended = carried(&lower.reversed(), swung)?.reversed();
    let full = |fullness: f64| with_fullness(&blended, fullness);
    let fullness = root("fullness of the armscye", 0.5, 1.6, |f| {
        full(f).map_or(f64::NAN, |c| c.length() - wanted)
    })
    .map_err(|source| AlterationError::Construction {
        step: "armscye below its hinge",
        source,
    })?;
    Ok(upper.then(&full(fullness)?)?)
}

/// A curve with all its handles longer or shorter by a factor: its directions stay.
fn with_fullness(curve: &Curve, by: f64) -> Result<Curve, GeometryError> {
    let segments = curve.segments().iter().map(|s| match *s {
        PathSeg::Cubic(c) => PathSeg::Cubic(CubicBez::new(
            c.p0,
            c.p0 + (c.p1 - c.p0) * by,
            c.p3 - (c.p3 - c.p2) * by,
            c.p3,
        )),
        other => other,
    });
    Curve::new(segments.collect())
}

/// The side seam below the dart: shifted at its start (and down to the waist, where a dart takes
/// the width back there), not wider any more at `give`, and as long as before; and by how much it
/// moved there.
fn given_back(
    below: &Curve,
    (waist, give): (Option<f64>, f64),
    shift: Vec2,
) -> Result<(Curve, Vec2), AlterationError> {
    let drawn = |extra: f64| {
        let mut stations = vec![Station::new(0.0, shift)];
        stations.extend(waist.map(|at| Station::new(at, shift)));
        stations.push(Station::new(give, Vec2::new(0.0, shift.y + extra)));
        moved_at(below, &stations)
    };
    let length = below.length();
    let reach = 2.0 + shift.x.abs();
    let extra = root("drop of the side seam", -reach, reach, |extra| {
        drawn(extra).map_or(f64::NAN, |c| c.length() - length)
    })
    .map_err(|source| AlterationError::Construction {
        step: "side seam below the bust dart",
        source,
    })?;
    Ok((drawn(extra)?, Vec2::new(0.0, shift.y + extra)))
}

/// The double-pointed waist dart, if there is one.
fn waist_dart(piece: &Piece) -> Option<&Dart> {
    piece
        .darts()
        .iter()
        .find(|d| matches!(d.apexes, Apexes::Two(..)))
}

/// Whether a waist dart can take the amount back.
fn waist_dart_bears(piece: &Piece, amount: f64) -> bool {
    waist_dart(piece).is_some_and(|d| d.intake() + amount >= LEAST_INTAKE)
}

/// Everything below the bust: dropped, level, its widths taken back.
fn lower_front(
    sketch: &mut Sketch,
    piece: &Piece,
    (shift, given): (Vec2, Vec2),
    darted: bool,
) -> Result<(), AlterationError> {
    let down = Vec2::new(0.0, shift.y);
    if piece.outline().edge(&EdgeName::WAIST).is_some() {
        let moves = WaistMoves {
            centre: down,
            side: shift,
            longer: 0.0,
            apex: &|_| shift.y,
        };
        redraw_waist(sketch, piece, &moves)?;
    } else if let Some(hem) = hem(piece) {
        let length = sketch.curve(hem)?.length();
        let stations = [Station::new(0.0, given), Station::new(length, down)];
        move_edge(sketch, piece, hem, &stations)?;
        let name = waist_dart(piece).map(|d| d.name.as_str());
        for dart in sketch
            .darts_mut()
            .iter_mut()
            .filter(|d| Some(d.name.as_str()) == name)
        {
            let wider = if darted { shift.x } else { 0.0 };
            let middle = down + Vec2::new(wider / 2.0, 0.0);
            dart.legs = [
                dart.legs[0] + down,
                dart.legs[1] + down + Vec2::new(wider, 0.0),
            ];
            if let Apexes::Two(upper, lower) = dart.apexes {
                dart.apexes = Apexes::Two(upper + middle, lower + middle);
            }
        }
    }
    let fold = sketch.curve(&EdgeName::CENTRE_FRONT)?.clone();
    let fold = Curve::line(fold.start() + down, fold.end())?;
    sketch.replace(&EdgeName::CENTRE_FRONT, fold)?;
    let underarm = sketch.curve(&EdgeName::SIDE_SEAM)?.start();
    let old_underarm = piece
        .outline()
        .edge(&EdgeName::SIDE_SEAM)
        .map_or(underarm, |e| e.curve().start());
    for line in sketch.lines_mut() {
        let (start, end) = (line.curve.start(), line.curve.end());
        line.curve = if end.distance(old_underarm) <= tolerance::SEAM_ALTERED {
            Curve::line(Point::new(start.x, underarm.y), underarm)?
        } else if line.name == "waist" && darted {
            Curve::line(start + down, end + shift)?
        } else if line.name == "hip" || (line.name == "waist" && waist_dart(piece).is_none()) {
            // Level with its notch at the side seam.
            Curve::line(start + given, end + given)?
        } else if line.name == "waist" {
            Curve::line(start + down, end + given)?
        } else {
            continue;
        };
    }
    let grain = &mut sketch.parts_mut().grain;
    grain[0].y += shift.y.min(0.0);
    Ok(())
}
