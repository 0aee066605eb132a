//! Curves redrawn so that they bend one way only.
//!
//! A cubic whose handles end inside the corner of its two end tangents has a convex control
//! polygon, and so it is convex. Lines are redrawn here with handles that keep their share of the
//! way to that corner: nothing moved, nothing changes, and what is moved far stays hollow.

use super::led::led;
use crate::geometry::elementary::{atan2, cos, exp, sin, tan};
use crate::geometry::{Curve, GeometryError, Point, Rigid, Span, Vec2, root};
use kurbo::{CubicBez, PathSeg};
use std::f64::consts::PI;

/// Least turn between a tangent and the chord beside it, in radians: less is straight to the eye,
/// and a hair further bends back.
const LEAST_TURN: f64 = 2.0 * PI / 180.0;

/// The width point of an armscye slides down softly, in millimetres, and never lower than to this
/// share of the way from shoulder point to underarm.
const SLIDES_OVER: f64 = 3.0;
const LOWEST_WIDTH: f64 = 0.8;

/// The least that an armscye is taken to be clear of straight, in millimetres.
const CLEAR: f64 = 0.01;

/// The direction at the width point turns away from plumb softly, in radians.
const TURNS_OVER: f64 = 1.5 * PI / 180.0;

/// How near to its corner, as a share of the way, a handle is read at most.
const NEAREST: f64 = 0.999;

/// Share of the way to its corner that a handle reaches at most while the corner is rounded and not
/// pointed.
const SHARPEST: f64 = 0.85;

/// The flattest and the fullest that is looked at.
const FULLNESS: (f64, f64) = (-3.0, 3.0);

/// The greater of two numbers, the corner between them rounded: a value `m` for which
/// `(m - a)(m - b)` is the square of `over`, so that either follows from the other two.
pub(in crate::alterations) fn softly_greater(a: f64, b: f64, over: f64) -> f64 {
    0.5 * (a + b + ((a - b) * (a - b) + 4.0 * over * over).sqrt())
}

/// Angle of a direction from straight down, away from the fold positive, in radians.
fn outward(direction: Vec2) -> f64 {
    atan2(direction.x, direction.y)
}

fn toward(angle: f64) -> Vec2 {
    Vec2::new(sin(angle), cos(angle))
}

/// The one cubic that a curve is.
fn cubic(curve: &Curve) -> Option<CubicBez> {
    match curve.segments() {
        [PathSeg::Cubic(c)] => Some(*c),
        _ => None,
    }
}

/// Two ends with their unit directions.
#[derive(Debug, Clone, Copy)]
struct Ends {
    from: Point,
    leave: Vec2,
    to: Point,
    arrive: Vec2,
}

impl Ends {
    fn of(c: &CubicBez) -> Option<Self> {
        let (leave, arrive) = (c.p1 - c.p0, c.p3 - c.p2);
        (leave.hypot() > 0.0 && arrive.hypot() > 0.0).then(|| Self {
            from: c.p0,
            leave: leave.normalize(),
            to: c.p3,
            arrive: arrive.normalize(),
        })
    }

    /// Distances of the corner of the two tangents from both ends; none where a line between
    /// them would have to bend both ways.
    fn legs(&self) -> Option<(f64, f64)> {
        let chord = self.to - self.from;
        let turn = self.leave.cross(self.arrive);
        let legs = (
            chord.cross(self.arrive) / turn,
            self.leave.cross(chord) / turn,
        );
        (turn != 0.0 && legs.0 > 0.0 && legs.1 > 0.0).then_some(legs)
    }

    fn drawn(&self, handles: (f64, f64)) -> Result<Curve, GeometryError> {
        Curve::hermite(
            self.from,
            self.leave * handles.0,
            self.to,
            self.arrive * handles.1,
        )
    }
}

/// How far the handles of a cubic reach on the way to its corner.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Reach(f64, f64);

impl Reach {
    /// Of a cubic that bends one way; of another, what comes nearest to it.
    fn of(c: &CubicBez) -> Self {
        let usual = Self(0.55, 0.55);
        let Some(legs) = Ends::of(c).and_then(|e| e.legs()) else {
            return usual;
        };
        let share =
            |handle: Vec2, leg: f64| Span::SHARES.nearest(handle.hypot() / leg).min(NEAREST);
        Self(share(c.p1 - c.p0, legs.0), share(c.p3 - c.p2, legs.1))
    }

    /// Farther into the corner for a positive fullness, less far for a negative one; one fullness
    /// after another is their sum.
    fn fuller(self, fullness: f64) -> Self {
        let factor = exp(fullness);
        let one = |share: f64| share * factor / (1.0 + share * (factor - 1.0));
        Self(one(self.0), one(self.1))
    }
}

/// One line between two places: handles at a share of the way to the corner, or where there is
/// none as long as they were.
fn between(old: &CubicBez, ends: &Ends, fullness: f64) -> Result<Curve, GeometryError> {
    match ends.legs() {
        Some(legs) => {
            let reach = Reach::of(old).fuller(fullness);
            ends.drawn((reach.0 * legs.0, reach.1 * legs.1))
        }
        None => {
            let by = 1.0 + 0.2 * fullness;
            ends.drawn((
                (old.p1 - old.p0).hypot() * by,
                (old.p3 - old.p2).hypot() * by,
            ))
        }
    }
}

/// The fullness at which lines of a family have a length.
fn fullness_for(
    length: f64,
    drawn: impl Fn(f64) -> Result<Curve, GeometryError>,
) -> Result<f64, GeometryError> {
    if let Ok(plain) = drawn(0.0)
        && (plain.length() - length).abs() <= crate::geometry::tolerance::SOLVE * 1e-3
    {
        return Ok(0.0);
    }
    root("fullness of a line", FULLNESS.0, FULLNESS.1, |fullness| {
        drawn(fullness).map_or(f64::NAN, |c| c.length() - length)
    })
}

/// A curve of one cubic with both ends moved, directions included, that bends as it did and is as
/// long as given, or as it comes; none where the curve is not one cubic.
pub(in crate::alterations) fn bent(
    curve: &Curve,
    (at_start, at_end): (&Rigid, &Rigid),
    length: Option<f64>,
) -> Option<Result<Curve, GeometryError>> {
    let old = cubic(curve)?;
    let ends = Ends {
        from: at_start.apply(curve.start()),
        leave: at_start.apply_direction(curve.start_direction()),
        to: at_end.apply(curve.end()),
        arrive: at_end.apply_direction(curve.end_direction()),
    };
    let drawn = |fullness: f64| between(&old, &ends, fullness);
    let fullness = length.map_or(Ok(0.0), |length| fullness_for(length, drawn));
    Some(fullness.and_then(drawn))
}

/// A line with its end moved, as it bent before, or smooth where it has several parts.
pub(in crate::alterations) fn end_moved(
    line: &Curve,
    at_end: &Rigid,
) -> Result<Curve, GeometryError> {
    bent(line, (&Rigid::IDENTITY, at_end), None)
        .unwrap_or_else(|| led(line, &Rigid::IDENTITY, at_end))
}

/// A cubic whose end is turned to another direction, at a length.
pub(in crate::alterations) fn turned(
    old: &CubicBez,
    arrive: Vec2,
    length: f64,
) -> Result<Curve, GeometryError> {
    let ends = Ends {
        from: old.p0,
        leave: (old.p1 - old.p0).normalize(),
        to: old.p3,
        arrive: arrive.normalize(),
    };
    let drawn = |fullness: f64| between(old, &ends, fullness);
    drawn(fullness_for(length, drawn)?)
}

/// Whether a line with its end turned to another direction bends one way at its length, its corner
/// not too sharp; of a line in several parts nothing is said against it.
pub(in crate::alterations) fn turns_hollow(curve: &Curve, arrive: Vec2) -> bool {
    let Some(old) = cubic(curve) else {
        return true;
    };
    let drawn = turned(&old, arrive, curve.length());
    drawn.is_ok_and(|drawn| {
        let corner = cubic(&drawn).and_then(|c| Some((Reach::of(&c), Ends::of(&c)?.legs()?)));
        corner.is_some_and(|(reach, _)| reach.0.max(reach.1) <= SHARPEST)
    })
}

/// An armscye of two lines that meet at the width point.
#[derive(Debug, Clone, Copy)]
pub(in crate::alterations) struct Armscye {
    upper: CubicBez,
    lower: CubicBez,
}

/// Where an armscye is to run.
#[derive(Debug, Clone, Copy)]
pub(in crate::alterations) struct Course {
    /// The shoulder point.
    pub tip: Point,
    /// Direction in which it leaves the shoulder.
    pub leave: Vec2,
    /// The width point.
    pub width: Point,
    /// The underarm.
    pub underarm: Point,
    /// Direction in which it arrives there.
    pub arrive: Vec2,
}

impl Course {
    fn upper_chord(&self) -> f64 {
        outward(self.width - self.tip)
    }

    fn lower_chord(&self) -> f64 {
        outward(self.underarm - self.width)
    }

    /// The turn from the direction at the shoulder point to the chord down to the width point.
    pub fn hollowness(&self) -> f64 {
        self.upper_chord() - outward(self.leave)
    }

    /// The turn from a direction at the shoulder point to the chord down to its width, half way to
    /// the underarm.
    pub fn room(&self, from: Vec2) -> f64 {
        let half_way = Point::new(self.width.x, 0.5 * (self.tip.y + self.underarm.y));
        outward(half_way - self.tip) - outward(from)
    }

    /// It leaves the shoulder farther inward.
    pub fn leaning(self, lean: f64) -> Self {
        let leave = Rigid::turn_about(Point::ORIGIN, lean).apply_direction(self.leave);
        Self { leave, ..self }
    }

    /// The same with the width point as low as it may slide: what could be had.
    pub fn most_hollow(&self) -> f64 {
        let level = self.lowest_level().max(self.width.y);
        let lowest = Point::new(self.width.x, level);
        self.hollowness()
            .max(outward(lowest - self.tip) - outward(self.leave))
    }

    /// The level at which the upper part would be as good as straight: higher up it would have to
    /// bend back, since the shoulder point juts out over the width.
    fn straight_level(&self) -> f64 {
        let lowest = self.lowest_level();
        let (jut, steep) = (
            (self.tip.x - self.width.x).max(0.0),
            -outward(self.leave) - LEAST_TURN,
        );
        if steep <= LEAST_TURN {
            return lowest;
        }
        (self.tip.y + jut / tan(steep)).min(lowest)
    }

    fn lowest_level(&self) -> f64 {
        self.tip.y + LOWEST_WIDTH * (self.underarm.y - self.tip.y)
    }

    /// The width point of an armscye that comes from this course to another: it slides down plumb
    /// ahead of the level at which the upper part gets straight, and up again behind it.
    fn slid(&self, to: &Course) -> Point {
        let (old, straight) = (self.width.y, self.straight_level());
        // An armscye that is straight there already gets no straighter.
        let clear = (old - straight).max(CLEAR);
        let free = old - SLIDES_OVER * SLIDES_OVER / clear + (to.width.y - old);
        let straight = to.straight_level() - (straight + clear - old);
        let level = softly_greater(free, straight, SLIDES_OVER);
        let lowest = to.lowest_level().max(to.width.y);
        Point::new(to.width.x, level.min(lowest))
    }

    /// Its underarm moved.
    pub fn below(self, motion: &Rigid) -> Self {
        Self {
            underarm: motion.apply(self.underarm),
            arrive: motion.apply_direction(self.arrive),
            ..self
        }
    }

    /// Its shoulder point moved.
    pub fn above(self, motion: &Rigid) -> Self {
        Self {
            tip: motion.apply(self.tip),
            leave: motion.apply_direction(self.leave),
            ..self
        }
    }
}

impl Armscye {
    /// Of an edge and where along it the width point lies; none where the edge is of other parts,
    /// as with a dart on it.
    pub fn of(curve: &Curve, width_at: f64) -> Option<Self> {
        let (upper, lower) = curve.split_at(width_at).ok()?;
        Some(Self {
            upper: cubic(&upper)?,
            lower: cubic(&lower)?,
        })
    }

    /// Where it runs.
    pub fn course(&self) -> Course {
        Course {
            tip: self.upper.p0,
            leave: (self.upper.p1 - self.upper.p0).normalize(),
            width: self.lower.p0,
            underarm: self.lower.p3,
            arrive: (self.lower.p3 - self.lower.p2).normalize(),
        }
    }

    /// The armscye on another course, and its width point there.
    ///
    /// The direction at the width point stays where both parts stay hollow with it. Where the
    /// shoulder point juts out so far, or the shoulder gets so flat, that the upper part would
    /// bend back, the width point slides down plumb, so that the width stays.
    pub fn on(&self, to: &Course) -> Result<(Curve, Point), GeometryError> {
        self.filled(to, 0.0)
    }

    /// The same at a length: the part under the arm is fuller or flatter.
    pub fn of_length(&self, to: &Course, length: f64) -> Result<(Curve, Point), GeometryError> {
        let drawn = |fullness: f64| self.filled(to, fullness).map(|(curve, _)| curve);
        self.filled(to, fullness_for(length, drawn)?)
    }

    /// The same with its width point sliding down plumb until the whole is as long as wanted, or the
    /// width point has dropped as far as the shoulder point: farther down it would get boxy.
    pub fn lowered(&self, to: &Course, length: f64) -> Result<(Curve, Point), GeometryError> {
        let slid = |by: f64| {
            let width = to.width + Vec2::new(0.0, by);
            self.on(&Course { width, ..*to })
        };
        let room = 0.4 * (to.underarm.y - to.width.y);
        let most = Span::from_low(0.0, room).nearest(to.tip.y - self.upper.p0.y);
        let (plain, farthest) = (slid(0.0)?, slid(most)?);
        if plain.0.length() >= length {
            return Ok(plain);
        }
        if farthest.0.length() <= length {
            return Ok(farthest);
        }
        let by = root("slide of the width point", 0.0, most, |by| {
            slid(by).map_or(f64::NAN, |(curve, _)| curve.length() - length)
        })?;
        slid(by)
    }

    fn filled(&self, to: &Course, fullness: f64) -> Result<(Curve, Point), GeometryError> {
        let old = self.course();
        let width = old.slid(to);
        let at_width = self.direction(&Course { width, ..*to });
        let upper = Ends {
            from: to.tip,
            leave: to.leave.normalize(),
            to: width,
            arrive: toward(at_width),
        };
        let lower = Ends {
            from: width,
            leave: toward(at_width),
            to: to.underarm,
            arrive: to.arrive.normalize(),
        };
        let below = between(&self.lower, &lower, fullness)?;
        Ok((between(&self.upper, &upper, 0.0)?.then(&below)?, width))
    }

    /// Direction at the width point: at the same share of the way from nearly plumb to the chord
    /// below it.
    fn direction(&self, to: &Course) -> f64 {
        let old = self.course();
        let plumb =
            |course: &Course| softly_greater(course.upper_chord() + LEAST_TURN, 0.0, TURNS_OVER);
        let direction = outward(self.lower.p1 - self.lower.p0);
        let share = (direction - plumb(&old)) / (old.lower_chord() - plumb(&old));
        plumb(to) + share * (to.lower_chord() - plumb(to))
    }
}
