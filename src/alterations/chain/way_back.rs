//! The way back from an alteration, so that an amount and its opposite lead to the start.
//!
//! An alteration that swings panels and redraws lines is not quite undone by the same construction
//! with the opposite sign: the hinge lies elsewhere afterwards, a redrawn line is fuller or flatter.
//! Less is therefore what more would be made from: what the construction gives is corrected until
//! more of it comes to what there is.

use crate::alterations::sleeves::sleeve::replaced;
use crate::alterations::{AlterationError, Sketch};
use crate::geometry::{Curve, Point, arc_length, as_cubic, tolerance};
use crate::piece::{Apexes, Edge, EdgeName, Pattern, Piece};
use kurbo::{CubicBez, Line, ParamCurve, PathSeg};

/// How closely the way back leads to where it came from, in millimetres; and how closely it has to,
/// for the construction to be given up for it.
const CLOSE: f64 = 1e-7;
const GOOD: f64 = 1e-3;

/// So often it is corrected at most.
const ROUNDS: usize = 24;

/// A round that leaves more than this share of the least so far brings nothing, and after so many in a
/// row no other will; twice as many where it is not good yet.
const WORTH: f64 = 0.9;
const PATIENCE: u8 = 2;

/// A line that the way there draws in other parts stays as the construction left it where it comes
/// back so closely, in millimetres, at so many places: its ends meet the lines beside it.
const PLACES: u32 = 24;
const SAME: f64 = 0.1;

/// The pattern from which `forth` comes to `wanted`, sought near one. Where none is found, that one.
///
/// Corrections are mixed from the last two (D. G. Anderson 1965), since
/// what leans on a bound changes little at each.
pub(in crate::alterations) fn taken_back(
    wanted: &Pattern,
    near: Pattern,
    forth: impl Fn(&Pattern) -> Result<Pattern, AlterationError>,
) -> Pattern {
    let mut best: Option<(f64, Pattern)> = None;
    let mut sought = near.clone();
    let mut last: Option<Round> = None;
    let mut idle = 0_u8;
    for _ in 0..ROUNDS {
        let Some(round) = Round::of(wanted, &sought, &forth) else {
            break;
        };
        let left = round.left();
        let least = best.as_ref().map_or(f64::INFINITY, |(least, _)| *least);
        idle = if left < WORTH * least { 0 } else { idle + 1 };
        if left < least {
            best = Some((left, sought.clone()));
        }
        let patience = if left.min(least) <= GOOD {
            PATIENCE
        } else {
            2 * PATIENCE
        };
        if idle >= patience {
            break;
        }
        let next = round.next(last.as_ref());
        let Some(next) = placed(&sought, &round.compared, &next).filter(|_| left > CLOSE) else {
            break;
        };
        sought = next;
        last = Some(round);
    }
    best.filter(|(left, _)| *left <= GOOD)
        .map_or(near, |(_, found)| found)
}

/// One correction: where everything lies, and how far it would have to move.
struct Round {
    /// Whether each edge of each piece is compared.
    compared: Vec<bool>,
    places: Vec<f64>,
    missing: Vec<f64>,
}

impl Round {
    fn of(
        wanted: &Pattern,
        sought: &Pattern,
        forth: &impl Fn(&Pattern) -> Result<Pattern, AlterationError>,
    ) -> Option<Self> {
        let made = forth(sought).ok()?;
        let mut compared = Vec::new();
        for piece in sought.pieces() {
            let [made, wanted] = [&made, wanted].map(|pattern| pattern.piece(piece.name()));
            let (made, wanted) = (made?, wanted?);
            for edge in piece.outline().edges() {
                let [made, wanted] = [made, wanted].map(|p| p.outline().edge(edge.name()));
                let (made, wanted) = (made?.curve(), wanted?.curve());
                let parts = edge.curve().segments().len();
                let alike = [made, wanted].iter().all(|c| c.segments().len() == parts);
                if !alike && !same(made, wanted) {
                    return None;
                }
                compared.push(alike);
            }
        }
        let [is, to] = [&made, wanted].map(|pattern| places(pattern, &compared));
        let places = places(sought, &compared);
        let missing: Vec<f64> = to.iter().zip(&is).map(|(to, is)| to - is).collect();
        (to.len() == is.len() && places.len() == is.len()).then_some(Self {
            compared,
            places,
            missing,
        })
    }

    fn left(&self) -> f64 {
        self.missing.iter().fold(0.0, |most, by| by.abs().max(most))
    }

    /// Where everything is tried next: what is missing added, mixed with the round before.
    fn next(&self, last: Option<&Self>) -> Vec<f64> {
        let plain = |round: &Self| -> Vec<f64> {
            let sums = round.places.iter().zip(&round.missing);
            sums.map(|(at, by)| at + by).collect()
        };
        let now = plain(self);
        let Some(last) = last.filter(|last| last.compared == self.compared) else {
            return now;
        };
        let (mut own, mut all) = (0.0, 0.0);
        for (new, old) in self.missing.iter().zip(&last.missing) {
            own += new * (new - old);
            all += (new - old) * (new - old);
        }
        let share = if all > 0.0 { own / all } else { 0.0 };
        let before = plain(last);
        now.iter()
            .zip(before)
            .map(|(now, old)| now + share * (old - now))
            .collect()
    }
}

/// Every number that says where the lines of a pattern run, in order: control points of edges, darts,
/// ends of balance lines, named points, notches.
fn places(pattern: &Pattern, compared: &[bool]) -> Vec<f64> {
    let (mut all, mut compared) = (Vec::new(), compared.iter());
    for piece in pattern.pieces() {
        let mut put = |point: Point| all.extend([point.x, point.y]);
        for edge in piece.outline().edges() {
            if compared.next().copied().unwrap_or(false) {
                put(edge.curve().start());
                for segment in edge.curve().segments() {
                    // Parts begin where the one before ends.
                    let c = as_cubic(segment);
                    [c.p1, c.p2, c.p3].into_iter().for_each(&mut put);
                }
            }
        }
        for dart in piece.darts() {
            dart.legs.into_iter().for_each(&mut put);
            dart.apexes.points().into_iter().for_each(&mut put);
        }
        for line in piece.lines() {
            put(line.curve.start());
            put(line.curve.end());
        }
        piece.points().iter().for_each(|point| put(point.at));
        all.extend(piece.notches().iter().map(|notch| notch.at));
    }
    all
}

/// A pattern with its lines at other places.
fn placed(pattern: &Pattern, compared: &[bool], places: &[f64]) -> Option<Pattern> {
    let (mut made, mut compared) = (pattern.clone(), compared.iter());
    let mut numbers = places.iter().copied();
    for piece in pattern.pieces() {
        let mut point = || Some(Point::new(numbers.next()?, numbers.next()?));
        let (mut sketch, mut own) = (Sketch::of(piece), Vec::new());
        for edge in piece.outline().edges() {
            if !*compared.next()? {
                own.push(edge.name().clone());
                continue;
            }
            let (mut parts, mut from) = (Vec::new(), point()?);
            for old in edge.curve().segments() {
                let c = CubicBez::new(from, point()?, point()?, point()?);
                from = c.p3;
                let straight = matches!(old, PathSeg::Line(_))
                    && Curve::new(vec![PathSeg::Cubic(c)])
                        .ok()?
                        .is_straight(tolerance::POINT);
                parts.push(if straight {
                    PathSeg::Line(Line::new(c.p0, c.p3))
                } else {
                    PathSeg::Cubic(c)
                });
            }
            sketch.replace(edge.name(), Curve::new(parts).ok()?).ok()?;
        }
        meet_neighbours(&mut sketch, piece, &own).ok()?;
        for old in piece.darts() {
            let mut legs = [point()?, point()?];
            let apexes = match old.apexes {
                Apexes::One(_) => Apexes::One(point()?),
                Apexes::Two(..) => Apexes::Two(point()?, point()?),
            };
            if let Some(edge) = old.edge.as_ref().and_then(|e| piece.outline().edge(e)) {
                let new = sketch.curve(edge.name()).ok()?;
                for (leg, was) in legs.iter_mut().zip(old.legs) {
                    *leg = joint_of(edge.curve(), new, was).unwrap_or(*leg);
                }
            }
            let dart = sketch.dart_mut(&old.name)?;
            (dart.legs, dart.apexes) = (legs, apexes);
        }
        for line in sketch.lines_mut() {
            line.curve = Curve::line(point()?, point()?).ok()?;
        }
        for named in sketch.points_mut() {
            named.at = point()?;
        }
        for (place, old) in piece.notches().iter().enumerate() {
            let at = numbers.next()?;
            if own.contains(&old.edge) {
                continue;
            }
            // A notch at a joint, as at the width of an armscye, stays there.
            let edge = piece.outline().edge(&old.edge)?;
            let joint = joint_at(edge.curve(), old.at);
            let new = sketch.curve(&old.edge).ok()?;
            let at = joint.map_or(at, |joint| length_to(new, joint));
            sketch.parts_mut().notches.get_mut(place)?.at = at;
        }
        made = replaced(&made, sketch.finish().ok()?).ok()?;
    }
    Some(made)
}

/// Draws the ends of edges that stayed to those of the edges beside them.
fn meet_neighbours(
    sketch: &mut Sketch,
    piece: &Piece,
    stayed: &[EdgeName],
) -> Result<(), AlterationError> {
    let edges = piece.outline().edges();
    let names = || edges.iter().map(Edge::name).cycle();
    let around = names()
        .skip(edges.len().saturating_sub(1))
        .zip(names())
        .zip(names().skip(1));
    for ((before, name), after) in around.take(edges.len()) {
        if stayed.contains(name) {
            let to = sketch.curve(after)?.start();
            let from = sketch.curve(before)?.end();
            let drawn = sketch.curve(name)?.clone().ending_at(to)?;
            sketch.replace(name, drawn.reversed().ending_at(from)?.reversed())?;
        }
    }
    Ok(())
}

/// Whether two curves in other parts are one line.
fn same(made: &Curve, wanted: &Curve) -> bool {
    let places = (0..=PLACES).map(|place| f64::from(place) / f64::from(PLACES));
    let mut points = places.map(|share| made.point_at(share * made.length()));
    let ends = [
        made.start().distance(wanted.start()),
        made.end().distance(wanted.end()),
    ];
    ends.iter().all(|apart| *apart <= SAME)
        && points.all(|p| p.is_ok_and(|(p, _)| wanted.nearest(p).0 <= SAME))
}

/// Which joint of a curve lies so far along it: so many parts end there.
fn joint_at(curve: &Curve, at: f64) -> Option<usize> {
    (1..curve.segments().len())
        .find(|&parts| (length_to(curve, parts) - at).abs() <= tolerance::SEAM_DRAFTED)
}

/// Where a joint or an end of a curve went. Legs of darts end there, and stay there to the last bit:
/// corrected by themselves they would leave gaps at which the edge cannot be cut again.
fn joint_of(old: &Curve, new: &Curve, at: Point) -> Option<Point> {
    let ends = old.segments().iter().zip(new.segments());
    let ends = ends.map(|(was, is)| (was.end(), is.end()));
    std::iter::once((old.start(), new.start()))
        .chain(ends)
        .find(|(was, _)| was.distance(at) <= tolerance::POINT)
        .map(|(_, is)| is)
}

/// The length of the first parts of a curve.
fn length_to(curve: &Curve, parts: usize) -> f64 {
    curve.segments().iter().take(parts).map(arc_length).sum()
}
