//! A sleeve spread at its biceps line: the cap at its old length, the wrist kept.

use super::sleeve::{crest, map, stretched};
use crate::alterations::cutting::true_up::{carried, with_mouth};
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, angle_between, root, tolerance};
use crate::piece::{EdgeName, Piece};

/// Lowest cap, as a share of its length (as drafts are bounded).
const LOWEST: f64 = 0.14;

/// Least distance of the grain line's end from the cap's top, in millimetres.
const GRAIN_INSIDE: f64 = 18.0;

/// The sleeve wider at its biceps line by an amount.
pub(in crate::alterations) fn wider(piece: &Piece, amount: f64) -> Result<Piece, AlterationError> {
    let (front_name, back_name) = (
        EdgeName::new("underarm_front"),
        EdgeName::new("underarm_back"),
    );
    let mut sketch = Sketch::of(piece);
    let old = sketch.curve(&EdgeName::SLEEVE_CAP)?.clone();
    let front = sketch.curve(&front_name)?.clone();
    let back = sketch.curve(&back_name)?.clone();
    let cap = cap_over(piece, &old, amount)?;
    let turned = |direction: fn(&Curve) -> Vec2| angle_between(direction(&old), direction(&cap));
    let turns = (turned(Curve::start_direction), turned(Curve::end_direction));

    // The front seam is blended down to the elbow line, the back seam down to its dart.
    let elbow = piece
        .line("elbow")
        .map_or(front.length(), |l| front.nearest(l.curve.end()).1);
    let mouths = piece.mouths(&back_name);
    let dart = mouths.iter().max_by(|a, b| a.2.total_cmp(&b.2));
    let opens = dart.map_or(0.0, |(_, _, to)| *to);
    let seams = |slip: f64| -> Result<(Curve, Curve), GeometryError> {
        let slip = Vec2::new(slip, 0.0);
        let upper = |seam: &Curve, over: f64, to: Point, turn: f64| {
            let direction = seam.start_direction();
            let leave = Rigid::turn_about(Point::ORIGIN, turn).apply_direction(direction);
            let motion = Rigid::lay(seam.start(), direction, to + slip, leave);
            let part = seam.part(0.0, over)?;
            carried(&part, &motion)
        };
        let mut fore = upper(&front, elbow, cap.end(), turns.1)?;
        if elbow < front.length() - tolerance::POINT {
            fore = fore.then(&front.part(elbow, front.length())?)?;
        }
        let up = back.reversed();
        let hind = upper(&up, back.length() - opens, cap.start(), turns.0)?.reversed();
        Ok((fore, hind))
    };
    // The whole cap slips along the biceps line until both seams are of one length.
    let miss = |slip: f64| {
        seams(slip).map_or(f64::NAN, |(fore, hind)| {
            (fore.length() - front.length()) - (hind.length() - (back.length() - opens))
        })
    };
    let slip = if miss(0.0).abs() <= tolerance::SEAM_DRAFTED {
        0.0
    } else {
        let reach = 5.0 + amount.abs();
        root("slip of the sleeve cap", -reach, reach, miss)?
    };
    let (fore, hind) = seams(slip)?;
    let hind = match dart {
        None => hind,
        Some((dart, from, _)) => with_mouth(&back.part(0.0, *from)?, dart, &hind)?,
    };
    let cap = cap.moved(&Rigid::shift(Vec2::new(slip, 0.0)));

    let (left, right) = (cap.start(), cap.end());
    for line in sketch.lines_mut().iter_mut().filter(|l| l.name == "biceps") {
        line.curve = Curve::line(left, right)?;
    }
    let top = cap.bounds().y0;
    sketch.replace(&EdgeName::SLEEVE_CAP, cap)?;
    sketch.replace(&front_name, fore)?;
    sketch.replace(&back_name, hind)?;
    let grain = &mut sketch.parts_mut().grain;
    grain[1].y = grain[1].y.max(top + GRAIN_INSIDE);
    sketch.finish()
}

/// The cap over the wider biceps line, each half as long as before.
fn cap_over(piece: &Piece, old: &Curve, amount: f64) -> Result<Curve, AlterationError> {
    let top = piece
        .notches()
        .iter()
        .find(|n| n.name == "shoulder")
        .map_or(old.length() / 2.0, |n| n.at);
    let (back, front) = old.split_at(crest(old, top))?;
    let (from, width) = (old.start().x, old.end().x - old.start().x);
    let drawn = |amount: f64| -> Result<Curve, GeometryError> {
        let wide = |half: &Curve| {
            map(half, |p| {
                let x = from - amount / 2.0 + (p.x - from) * (width + amount) / width;
                Point::new(x, p.y)
            })
        };
        let wanted = (back.length(), front.length());
        Ok(stretched(&wide(&back)?, &wide(&front)?, wanted)?.0)
    };
    let bears = |amount: f64| {
        drawn(amount).ok().filter(|cap| {
            let height = cap.bounds().height();
            height >= LOWEST * cap.length()
        })
    };
    if let Some(cap) = bears(amount) {
        return Ok(cap);
    }
    let (mut low, mut high) = (0.0, amount);
    while (high - low).abs() > 0.1 {
        let middle = 0.5 * (low + high);
        if bears(middle).is_some() {
            low = middle;
        } else {
            high = middle;
        }
    }
    Err(AlterationError::TooMuch {
        amount,
        most: low,
        unit: "mm",
        why: "a cap of the same length over that width is no cap any more".to_owned(),
    })
}
