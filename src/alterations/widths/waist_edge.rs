//! A waist edge with its darts open: solved so that every part of it, darts closed, is as long
//! as the waist plan says, and so that the closed edge runs on without a corner.

use crate::geometry::elementary::{atan2, cos};
use crate::geometry::{
    Curve, GeometryError, Point, Span, Vec2, angle_between, perpendicular, root, tolerance, unit,
};
use crate::piece::{Apexes, Dart, EdgeName, Pressed, shaped_mouth};

/// Whether the darts point up from the waist (bodice) or down from it (skirt).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum DartsPoint {
    Up,
    Down,
}

impl DartsPoint {
    /// -1 when the apex lies above the waist on the page, +1 when below.
    fn sign(self) -> f64 {
        match self {
            Self::Up => -1.0,
            Self::Down => 1.0,
        }
    }
}

/// One dart asked for.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct DartWanted {
    /// Name within the piece.
    pub name: String,
    /// How far from the fold the first leg meets the sewn waist, in millimetres.
    pub at: f64,
    /// Level of the apex.
    pub apex_level: f64,
    /// Share of the total intake, the shares summing to 1.
    pub share: f64,
}

/// A waist edge asked for.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct WaistSpec {
    /// Where the waist meets the fold.
    pub centre: Point,
    /// Where it meets the side seam.
    pub side: Point,
    /// Unit direction in which the waist arrives at the side seam, square to it.
    pub arrive: Vec2,
    /// Length of the sewn edge.
    pub length: f64,
    /// The darts, from the fold outward.
    pub darts: Vec<DartWanted>,
    /// Which way they point.
    pub point: DartsPoint,
}

/// A waist edge from the fold to the side seam, and its darts in that order.
pub(crate) struct Waistline {
    pub edge: Curve,
    pub darts: Vec<Dart>,
}

/// Handles are this share of the chord: a third makes a cubic of a straight line.
const HANDLE: f64 = 1.0 / 3.0;

fn part(from: Point, leave: Vec2, to: Point, arrive: Vec2) -> Result<Curve, GeometryError> {
    let h = HANDLE * from.distance(to);
    Curve::hermite(from, leave * h, to, arrive * h)
}

/// Rounds in which a dart's depth and angle settle: each is fifty times closer than the one before.
const SETTLED: usize = 8;

/// A dart placed: its apex and legs, and how the waist meets them.
#[derive(Clone, Copy)]
struct Placed {
    apex: Point,
    legs: [Point; 2],
    /// Directions in which the open waist reaches the first and leaves the second leg: each
    /// off the heading of the sewn waist by half the dart's angle, so that it closes smoothly.
    square: [Vec2; 2],
}

/// Places one dart so that the waist from `from` to its first leg is `length` long.
///
/// The sewn waist crosses the dart at `heading`, square to its middle. The first leg ends
/// where an even bend from `leave` takes it.
fn place(
    from: Point,
    leave: Vec2,
    length: f64,
    wanted: &DartWanted,
    (intake, heading): (f64, f64),
    sign: f64,
) -> Result<(Placed, Curve), GeometryError> {
    let half = intake / 2.0;
    let along = unit(heading);
    let inward = perpendicular(along) * sign;
    let at = |reach: f64| -> Result<(Placed, Curve), GeometryError> {
        // The depth follows from where the leg ends, and that from the angle, hence the depth.
        let mut first = from;
        let (mut depth, mut square) = (0.0, [along; 2]);
        for _ in 0..SETTLED {
            let middle = first.y + (along * half).y;
            depth = ((wanted.apex_level - middle).abs() / cos(heading)).max(1.0);
            let angle = sign * atan2(half, depth);
            square = [unit(heading - angle), unit(heading + angle)];
            // An even bend's chord halves the turn.
            first = from + (leave + square[0]).normalize() * reach;
        }
        let legs = [first, first + along * intake];
        let placed = Placed {
            apex: first + along * half + inward * depth,
            legs,
            square,
        };
        Ok((placed, part(from, leave, first, square[0])?))
    };
    let reach = root(
        "place of a waist dart",
        0.5 * length,
        1.01 * length,
        |reach| at(reach).map_or(f64::NAN, |(_, edge)| edge.length() - length),
    )?;
    at(reach)
}

struct Drawn {
    /// Each dart and the part of the edge before it.
    darts: Vec<(Curve, Placed)>,
    /// What is left of the edge.
    last: Curve,
    /// By how much the chord of the last part misses an even bend, in radians.
    uneven: f64,
}

/// The edge for a total intake; its last part is as long as it comes out.
///
/// `slant` is the heading of the sewn waist at the side seam; it grows evenly from the fold.
fn draw_slanted(spec: &WaistSpec, intake: f64, slant: f64) -> Result<Drawn, GeometryError> {
    let sign = spec.point.sign();
    let (mut from, mut leave, mut walked) = (spec.centre, Vec2::new(1.0, 0.0), 0.0);
    let mut darts = Vec::with_capacity(spec.darts.len());
    for dart in &spec.darts {
        let heading = slant * dart.at / spec.length;
        let (dart_placed, edge) = place(
            from,
            leave,
            dart.at - walked,
            dart,
            (intake * dart.share, heading),
            sign,
        )?;
        darts.push((edge, dart_placed));
        from = dart_placed.legs[1];
        leave = dart_placed.square[1];
        walked = dart.at;
    }
    let uneven = angle_between(leave + spec.arrive, spec.side - from);
    Ok(Drawn {
        darts,
        last: part(from, leave, spec.side, spec.arrive)?,
        uneven,
    })
}

/// The edge for a total intake. A skirt's waist rises evenly to the side, so that its last
/// part bends evenly too; a bodice's darts stay plumb.
fn draw(spec: &WaistSpec, intake: f64) -> Result<Drawn, GeometryError> {
    let plumb = draw_slanted(spec, intake, 0.0)?;
    if spec.point == DartsPoint::Up || spec.darts.is_empty() {
        return Ok(plumb);
    }
    // The miss is all but linear in the slant: one step of the secant.
    let trial = -0.1;
    let change = draw_slanted(spec, intake, trial)?.uneven - plumb.uneven;
    if change.abs() <= tolerance::ANGLE {
        return Ok(plumb);
    }
    draw_slanted(
        spec,
        intake,
        Span::about_zero(0.35).nearest(-plumb.uneven * trial / change),
    )
}

/// Solves the total intake so that the sewn edge has its length, then shapes the mouths.
///
/// Without darts there is nothing to solve for: the edge is as long as its curve.
pub(crate) fn waistline(spec: &WaistSpec) -> Result<Waistline, GeometryError> {
    let reached = spec.darts.last().map_or(0.0, |d| d.at);
    let last = |intake: f64| draw(spec, intake).map_or(f64::NAN, |d| d.last.length());
    if spec.darts.is_empty() {
        return Ok(Waistline {
            edge: draw(spec, 0.0)?.last,
            darts: Vec::new(),
        });
    }
    let span = spec.side.x - spec.centre.x;
    let intake = root(
        "intake of the waist darts",
        0.1,
        (span - reached).max(1.0) * 0.9,
        |intake| last(intake) - (spec.length - reached),
    )?;
    let drawn = draw(spec, intake)?;
    let mut edge: Option<Curve> = None;
    let mut darts = Vec::new();
    for ((before, placed), wanted) in drawn.darts.iter().zip(&spec.darts) {
        // Vertical darts are pressed toward the centre (common practice).
        let mouth = shaped_mouth(placed.apex, placed.legs, before, Pressed::TowardFirstLeg)?;
        let before = match edge {
            Some(edge) => edge.then(before)?,
            None => before.clone(),
        };
        edge = Some(before.then(&mouth)?);
        darts.push(Dart {
            name: wanted.name.clone(),
            edge: Some(EdgeName::WAIST),
            legs: placed.legs,
            apexes: Apexes::One(placed.apex),
            pressed: Pressed::TowardFirstLeg,
        });
    }
    let edge = match edge {
        Some(edge) => edge.then(&drawn.last)?,
        None => drawn.last,
    };
    Ok(Waistline { edge, darts })
}

impl Waistline {
    /// The same edge walked from the side seam to the fold.
    pub fn reversed(mut self) -> Self {
        self.edge = self.edge.reversed();
        self.darts.reverse();
        for dart in &mut self.darts {
            dart.legs.reverse();
            dart.pressed = Pressed::TowardSecondLeg;
        }
        self
    }
}
