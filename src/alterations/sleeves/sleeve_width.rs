//! A long sleeve wider at one level between its biceps line and its wrist.

use super::sleeve::{replaced, sleeves};
use super::sleeve_seams::SleeveSeams;
use crate::alterations::chain::amounts::at_most;
use crate::alterations::chain::promise::{edges_stay, girths_stay};
use crate::alterations::cutting::stations::{Station, moved_at};
use crate::alterations::{AlterationError, Part, Promise, Sketch, StructureChange};
use crate::geometry::{Curve, Point, Vec2, root, tolerance};
use crate::piece::{BalanceLine, EdgeName, Measure, Pattern, Piece};

/// The elbow lies at this share of the underarm seam where no line says so: at 0.570 of the arm
/// below its bone, which is 0.47 from armpit to wrist (computed from the 1988 U.S. Army survey).
const ELBOW_SHARE: f64 = 0.47;

/// The forearm is fullest at this share of the way from elbow to wrist (value from memory: a hand
/// below the elbow).
const FOREARM_SHARE: f64 = 0.33;

/// A dart at the elbow goes out by this share of what the forearm does, so that the seam runs on in one
/// sweep (an assumption).
const ELBOW_FOLLOWS: f64 = 0.6;

const ELBOW: &str = "elbow";
const FOREARM: &str = "forearm";

/// Most at once, in millimetres (value from memory).
const MOST: f64 = 36.0;

/// Where a long sleeve is widened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::alterations) enum ArmLevel {
    Elbow,
    Forearm,
}

impl ArmLevel {
    fn line(self) -> &'static str {
        match self {
            Self::Elbow => ELBOW,
            Self::Forearm => FOREARM,
        }
    }

    /// The long sleeves of a pattern.
    pub fn sleeves(self, pattern: &Pattern) -> impl Iterator<Item = &Piece> {
        let is_long = pattern.girths().iter().any(|g| g.base_name() == "wrist");
        sleeves(pattern).filter(move |_| is_long)
    }

    /// The line is drawn where there is none.
    pub fn structure_change(self, before: &Pattern) -> StructureChange {
        self.sleeves(before)
            .fold(StructureChange::none(), |change, piece| {
                change.adds(Part::Line(piece.name().to_owned(), self.line().to_owned()))
            })
    }

    /// The sleeve is wider there by the amount; its cap, its wrist and every girth stay.
    pub fn promises(self, before: &Pattern, amount: f64) -> Vec<Promise> {
        let wider = Promise::changes_by(Measure::line_girth(self.line()), amount);
        let mut promises = vec![wider.if_there()];
        promises.extend(girths_stay(before, &[]));
        for piece in self.sleeves(before) {
            promises.extend(edges_stay(piece, &KEPT));
        }
        promises
    }

    /// The pattern with its sleeves that much wider there.
    pub fn widened(self, pattern: &Pattern, amount: f64) -> Result<Pattern, AlterationError> {
        at_most(
            amount,
            (-MOST, MOST),
            "mm",
            "the sleeve is another one: draft it with more ease, and measure the elbow",
        )?;
        if self.sleeves(pattern).next().is_none() {
            return Err(AlterationError::Missing {
                what: "a long sleeve".to_owned(),
                advice: "draft with a long sleeve; a short one ends above the elbow",
            });
        }
        let mut altered = pattern.clone();
        if amount != 0.0 {
            for piece in self.sleeves(pattern) {
                altered = replaced(&altered, self.wider(piece, amount)?)?;
            }
        }
        Ok(altered)
    }

    fn wider(self, piece: &Piece, amount: f64) -> Result<Piece, AlterationError> {
        let seams = SleeveSeams::of(piece)?;
        let line = match piece.line(self.line()) {
            Some(line) => [line.curve.start(), line.curve.end()],
            None => self.drawn(piece, &seams)?,
        };
        let [behind, before] = line;
        let width = behind.distance(before);
        let least = seams.wrist.length();
        if width + amount < least {
            return Err(AlterationError::TooMuch {
                amount,
                most: (least - width).min(0.0),
                unit: "mm",
                why: format!("it would be narrower there than at the wrist, {least:.0} mm"),
            });
        }
        let mut sketch = Sketch::of(piece);
        let (moved, [from, to]) = match (self, &seams.above) {
            (Self::Elbow, Some(_)) => at_dart(&seams, line, amount)?,
            _ => between(&seams, line, amount)?,
        };
        let hold = moved.front.nearest(to).1;
        let moved = moved.matched(hold)?;
        moved.put(&mut sketch)?;
        if piece.line(self.line()).is_none() {
            let curve = Curve::line(behind, before)?;
            let name = self.line().to_owned();
            sketch.lines_mut().push(BalanceLine { name, curve });
        }
        for other in [ELBOW, FOREARM] {
            if other == self.line() {
                for line in sketch.lines_mut().iter_mut().filter(|l| l.name == other) {
                    line.curve = Curve::line(from, to)?;
                }
            } else if let Some(old) = piece.line(other) {
                let from = leg_now(&seams, &moved, old.curve.start());
                moved.put_line(&mut sketch, other, [from, old.curve.end()])?;
            }
        }
        sketch.finish()
    }

    /// Where the line is, on a sleeve that has none: its ends on back and front seam.
    fn drawn(self, piece: &Piece, seams: &SleeveSeams) -> Result<[Point; 2], AlterationError> {
        let (front, back) = (&seams.front, &seams.lower);
        let elbow = match (piece.line(ELBOW), &seams.above) {
            // Below the dart: lengths along the part between wrist and dart.
            (_, Some(_)) | (Some(_), None) => {
                let line = piece.line(ELBOW).map(|l| l.curve.end());
                let at = line.map_or(ELBOW_SHARE * front.length(), |end| front.nearest(end).1);
                let from = piece.line(ELBOW).filter(|_| seams.above.is_none());
                let from = from.map_or(back.length(), |l| back.nearest(l.curve.start()).1);
                (from, at)
            }
            (None, None) => (
                (1.0 - ELBOW_SHARE) * back.length(),
                ELBOW_SHARE * front.length(),
            ),
        };
        let share = match self {
            Self::Elbow => 0.0,
            Self::Forearm => FOREARM_SHARE,
        };
        let behind = back.point_at((1.0 - share) * elbow.0)?.0;
        let before = front
            .point_at(elbow.1 + share * (front.length() - elbow.1))?
            .0;
        Ok([behind, before])
    }
}

/// Where the end of a line at a dart leg lies once the legs are drawn out; any other stays.
fn leg_now(old: &SleeveSeams, new: &SleeveSeams, end: Point) -> Point {
    let legs = |seams: &SleeveSeams| seams.above.as_ref().map(|(dart, _)| dart.legs);
    let (Some(was), Some(is)) = (legs(old), legs(new)) else {
        return end;
    };
    let mut legs = was.iter().zip(is);
    let at_leg = legs.find(|(leg, _)| leg.distance(end) <= tolerance::PRINT);
    at_leg.map_or(end, |(_, now)| now)
}

/// At a dart: its legs are drawn out, the front seam goes out level.
fn at_dart(
    seams: &SleeveSeams,
    [behind, before]: [Point; 2],
    amount: f64,
) -> Result<(SleeveSeams, [Point; 2]), AlterationError> {
    let out = Vec2::new(0.5 * amount, 0.0);
    let fore = before + out;
    let wanted = behind.distance(before) + amount;
    let Some((dart, _)) = &seams.above else {
        return between(seams, [behind, before], amount);
    };
    let [_, upper] = dart.legs;
    let along = (upper - dart.apex()).normalize();
    let reach = amount.abs() + 1.0;
    let by = root("width at the elbow", -reach, reach, |by| {
        (behind + along * by).distance(fore) - wanted
    })
    .map_err(|source| AlterationError::Construction {
        step: "legs of the elbow dart",
        source,
    })?;
    let mut moved = seams.clone().with_legs_out(by)?;
    let front = &seams.front;
    let at = front.nearest(before).1;
    moved.front = bowed(front, 0.0, (at, out), front.length())?;
    Ok((moved, [behind + along * by, fore]))
}

/// Between biceps line and wrist: both seams go out along a line. The legs of an elbow dart above it go
/// out by a share, each along itself.
fn between(
    seams: &SleeveSeams,
    [behind, before]: [Point; 2],
    amount: f64,
) -> Result<(SleeveSeams, [Point; 2]), AlterationError> {
    let out = (before - behind).normalize() * (0.5 * amount);
    let mut moved = seams.clone();
    let (front, back) = (&seams.front, &seams.lower);
    let (fore, hind) = (front.nearest(before).1, back.nearest(behind).1);
    moved.front = bowed(front, 0.0, (fore, out), front.length())?;
    let at_leg = match &mut moved.above {
        Some((dart, above)) => {
            let apex = dart.apex();
            let by = dart
                .legs
                .map(|leg| (leg - apex).normalize() * (0.5 * amount * ELBOW_FOLLOWS));
            let [lower_leg, upper_leg] = dart.legs;
            let [lower, upper] = by;
            dart.legs = [lower_leg + lower, upper_leg + upper];
            let ends = [
                Station::new(0.0, upper),
                Station::new(above.length(), Vec2::ZERO),
            ];
            *above = moved_at(above, &ends)?;
            lower
        }
        None => Vec2::ZERO,
    };
    let stations = [
        Station::new(0.0, Vec2::ZERO),
        Station::new(hind, -out),
        Station::new(back.length(), at_leg),
    ];
    moved.lower = moved_at(back, &stations)?;
    Ok((moved, [behind - out, before + out]))
}

/// A seam that goes out at one place, nothing at two others.
fn bowed(
    curve: &Curve,
    from: f64,
    (at, out): (f64, Vec2),
    to: f64,
) -> Result<Curve, AlterationError> {
    let stations = [
        Station::new(from, Vec2::ZERO),
        Station::new(at, out),
        Station::new(to, Vec2::ZERO),
    ];
    Ok(moved_at(curve, &stations)?)
}

/// The edges of a sleeve that stay.
const KEPT: [EdgeName; 2] = [EdgeName::SLEEVE_CAP, EdgeName::WRIST];
