//! A panel seam of a back, from the armscye into the waist dart in one calm sweep.
//!
//! A back has no bust point that the seam must run over: the waist dart ends below the underarm
//! line, the blade is broad. So the seam bends one way from the armscye to the underarm line, and
//! both edges part only there, each sweeping into the leg of its panel.

use super::panel_leg::{SWEPT, swept, turned};
use super::panel_path::Node;
use crate::alterations::AlterationError;
use crate::geometry::{
    Curve, GeometryError, Point, Vec2, angle_between, crossings, intersect_lines, root, tolerance,
};
use std::f64::consts::PI;

/// Below the parting an edge turns on beyond the straight way by this share of what it left that by,
/// and by less where that is much, in radians.
const BENT_BELOW: f64 = 0.5;
const MUCH: f64 = 30.0 * PI / 180.0;

/// The place on the underarm line is sought so far on either side of the dart, in millimetres.
const ASIDE: f64 = 45.0;
const STEPS: u32 = 18;

/// The edges part so far below the underarm line, and a dart is turned so far above the width line,
/// in millimetres: both edges cross the line as one.
pub(in crate::alterations) const PAST: f64 = 3.0;

/// The seam leaves the armscye at most so far off the straight way, in radians (35 degrees).
const OFF: f64 = 35.0 * PI / 180.0;

/// Directions that are tried for a seam over a place, and samples of its bends.
const WAYS: u32 = 12;
const SAMPLES: u32 = 16;

/// So much farther or less far than usual, as a share of the way to the corner, the handles of an
/// edge reach at most that is drawn fuller or flatter.
const FULLER: f64 = 0.28;

/// The seam climbs from the armscye at most so steeply, in radians (8 degrees).
const CLIMB: f64 = 8.0 * PI / 180.0;

/// The seam on both pieces from its start to the legs of its waist dart.
#[derive(Debug, Clone)]
pub(in crate::alterations) struct Calm {
    /// From the armscye to where the edges part: common to both panels.
    pub common: Curve,
    /// From there to the ends of the legs.
    pub parted: [Curve; 2],
}

impl Calm {
    /// The whole seam of both panels.
    pub fn ways(&self) -> Result<[Curve; 2], GeometryError> {
        let [one, other] = &self.parted;
        Ok([
            self.common.clone().then(one)?,
            self.common.clone().then(other)?,
        ])
    }
}

/// Where the calm sweep goes: from the armscye over the underarm line into a dart.
pub(in crate::alterations) struct Sweep<'a> {
    pub start: Point,
    /// The underarm line.
    pub level: &'a Curve,
    /// The upper end of the waist dart.
    pub apex: Point,
    /// The ends of its legs, of which the first belongs to the panel that follows the start.
    pub legs: [Point; 2],
    /// The direction in which the seam arrives there; along the legs if none is given.
    pub arrive: Option<Vec2>,
}

impl<'a> Sweep<'a> {
    /// The sweep to the nodes of a seam; and the node at which it ends.
    pub fn through(nodes: &[Node], level: &'a Curve) -> Option<(Self, usize)> {
        let start = nodes.first()?;
        let mut after = nodes.iter().enumerate().skip(1);
        let (end, _) = after.find(|(_, node)| !node.is_common())?;
        let (apex, legs) = (nodes.get(end.checked_sub(1)?)?, nodes.get(end)?);
        let sweep = Self {
            start: start.at[0],
            level,
            apex: apex.at[0],
            legs: legs.at,
            arrive: legs.toward,
        };
        let suits = end > 1 && start.is_common() && sweep.suits();
        suits.then_some((sweep, end))
    }

    /// Whether the seam comes from above the underarm line to a dart that ends below it.
    fn suits(&self) -> bool {
        let level = self.level.nearest(self.apex);
        let Ok((under, _)) = self.level.point_at(level.1) else {
            return false;
        };
        self.start.y < under.y && self.apex.y >= under.y - tolerance::POINT
    }

    /// The seam, both edges equally long: the place at which they part is sought for that.
    pub fn drawn(&self) -> Result<Calm, AlterationError> {
        let at_apex = self.level.nearest(self.apex).1;
        let sharp = || AlterationError::First {
            why: "no even seam runs from there into the waist dart".to_owned(),
            advice: "choose another place on the armscye".to_owned(),
        };
        let at = |step: u32| at_apex + ASIDE * (2.0 * f64::from(step) / f64::from(STEPS) - 1.0);
        let miss = |at: f64| {
            let calm = self.parting_at(at).ok()?;
            let [one, other] = &calm.parted;
            Some(one.length() - other.length())
        };
        // The parting nearest to the dart that does.
        let mut found: Option<f64> = None;
        for step in 0..STEPS {
            let (low, high) = (at(step), at(step + 1));
            let (Some(a), Some(b)) = (miss(low), miss(high)) else {
                continue;
            };
            if a * b > 0.0 {
                continue;
            }
            let place = root("parting of a panel seam", low, high, |at| {
                miss(at).unwrap_or(f64::NAN)
            })?;
            if found.is_none_or(|old| (place - at_apex).abs() < (old - at_apex).abs()) {
                found = Some(place);
            }
        }
        Ok(self.parting_at(found.ok_or_else(sharp)?)?)
    }

    /// The seam led over a place between the armscye and the underarm line, bent about circles of at
    /// least some radius, and how far along that is.
    pub fn drawn_over(&self, place: Point, radius: f64) -> Result<(Calm, f64), AlterationError> {
        let below = Self {
            start: place,
            ..*self
        };
        let below = below.drawn()?;
        let (parting, arrive) = (below.common.end(), below.common.end_direction());
        let (chord, onward) = (place - self.start, parting - place);
        let turn = angle_between(chord, onward);
        // In the direction there that bends the seam least.
        let mut best: Option<(f64, Curve, Curve)> = None;
        for step in 1..WAYS {
            let turn = turn * f64::from(step) / f64::from(WAYS);
            let way = turned(chord.normalize(), turn);
            let upper = arc((self.start, place), way, -climbing(turn, chord));
            let lower = swept((place, way), (parting, arrive));
            let (Ok(upper), Ok(lower)) = (upper, lower) else {
                continue;
            };
            let bend = sharpest(&upper)?.max(sharpest(&lower)?);
            let least = best.as_ref().map_or(1.0 / radius, |(least, ..)| *least);
            if bend < least {
                best = Some((bend, upper, lower));
            }
        }
        let (_, upper, lower) = best.ok_or(GeometryError::Parallel)?;
        let at = upper.length();
        let common = upper.then(&lower)?;
        Ok((Calm { common, ..below }, at))
    }

    /// The seam whose edges part at a place along the underarm line.
    fn parting_at(&self, at: f64) -> Result<Calm, GeometryError> {
        if !(0.0..=self.level.length()).contains(&at) {
            return Err(GeometryError::Empty);
        }
        let parting = self.level.point_at(at)?.0 + Vec2::new(0.0, PAST);
        let chord = parting - self.start;
        // Along the circle through the start, the parting and the middle of the dart.
        let beyond = self.apex.lerp(self.legs[0].midpoint(self.legs[1]), 0.5);
        let turn = angle_between(self.start - beyond, parting - beyond);
        let way = turned(chord.normalize(), turn);
        let common = arc((self.start, parting), way, -climbing(turn, chord))?;
        let one = self.down_leg(self.legs[1], (parting, way), None)?;
        let other = self.down_leg(
            self.legs[0],
            (parting, way),
            Some((self.legs[1], one.end_direction())),
        )?;
        Ok(Calm {
            common,
            parted: [other, one],
        })
    }

    /// From the parting to the end of a leg, where the other edge arrives in some direction: closed,
    /// the waist runs straight on.
    fn down_leg(
        &self,
        end: Point,
        (from, way): (Point, Vec2),
        other: Option<(Point, Vec2)>,
    ) -> Result<Curve, GeometryError> {
        // Bent most where they part, hardly any more at the waist.
        let chord = end - from;
        let off = angle_between(way, chord);
        let onto = BENT_BELOW * off / (1.0 + off.abs() / MUCH);
        let arrive = match (self.arrive, other) {
            (Some(arrive), _) => arrive,
            (None, None) => turned(chord.normalize(), onto),
            (None, Some((leg, arrives))) => {
                turned(arrives, angle_between(leg - self.apex, end - self.apex))
            }
        };
        let handle = chord.hypot() / 3.0;
        Curve::hermite(from, way * handle, end, arrive * handle)
    }
}

/// How sharply a curve bends where it does most, in radians a millimetre.
fn sharpest(curve: &Curve) -> Result<f64, GeometryError> {
    let step = curve.length() / f64::from(SAMPLES);
    let (mut before, mut most) = (curve.start_direction(), 0.0);
    for place in 1..=SAMPLES {
        let way = curve.point_at(step * f64::from(place))?.1;
        most = angle_between(before, way).abs().max(most);
        before = way;
    }
    Ok(most / step)
}

/// By how much a seam leaves the straight way from the armscye, at most by a turn: it does not climb
/// to turn down again.
fn climbing(turn: f64, chord: Vec2) -> f64 {
    // How far the straight way falls; one that starts level climbs by that much less.
    let level = angle_between(
        Vec2::new(chord.x.abs(), 0.0),
        Vec2::new(chord.x.abs(), chord.y),
    );
    turn.abs()
        .min(OFF)
        .min((level + CLIMB).max(0.0))
        .copysign(turn)
}

/// A curve that bends one way from a place to another: it leaves the straight way by an angle and
/// arrives in a direction.
fn arc((from, to): (Point, Point), arrive: Vec2, off: f64) -> Result<Curve, GeometryError> {
    let leave = turned((to - from).normalize(), off);
    swept((from, leave), (to, arrive))
}

/// A curve from another start to its end: it leaves the straight way by the same angle and arrives in
/// the same direction, its handles reaching a share of the way to the corner between.
pub(in crate::alterations) fn from_beside(
    curve: &Curve,
    from: Point,
    share: f64,
) -> Result<Curve, GeometryError> {
    let (to, arrive) = (curve.end(), curve.end_direction());
    let off = angle_between(to - curve.start(), curve.start_direction());
    let leave = turned((to - from).normalize(), off);
    let corner = intersect_lines(from, leave, to, arrive)?;
    if (corner - from).dot(leave) <= 0.0 || (to - corner).dot(arrive) <= 0.0 {
        return Err(GeometryError::Parallel);
    }
    Curve::cubic(from, from.lerp(corner, share), to.lerp(corner, share), to)
}

/// The curve from two starts, equally far from its end, equally long: the one that turns less is
/// drawn fuller, the other flatter.
pub(in crate::alterations) fn pair(
    curve: &Curve,
    starts: [Point; 2],
) -> Result<[Curve; 2], GeometryError> {
    let drawn = |fuller: f64| -> Result<[Curve; 2], GeometryError> {
        Ok([
            from_beside(curve, starts[0], SWEPT + fuller)?,
            from_beside(curve, starts[1], SWEPT - fuller)?,
        ])
    };
    let fuller = root("fullness of a panel seam", -FULLER, FULLER, |fuller| {
        drawn(fuller).map_or(f64::NAN, |[one, other]| one.length() - other.length())
    })?;
    drawn(fuller)
}

/// Where a seam crosses a line, if it does once.
pub(in crate::alterations) fn met(seam: &Curve, line: &Curve) -> Option<(Point, f64)> {
    match crossings(seam.segments(), line.segments()).as_slice() {
        [one] => Some((one.point, seam.length_to(one.first))),
        _ => None,
    }
}
