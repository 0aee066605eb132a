//! How an allowance goes round a corner.

use crate::geometry::{Curve, GeometryError, Point, Rigid, Vec2, carried_on, crossings, tolerance};
use crate::piece::{Edge, EdgeRole};

/// A mitre longer than so many widths is cut blunt.
const LONGEST_MITRE: f64 = 2.5;
/// Where it is then cut, in widths from the corner of the stitching line.
const BLUNT: f64 = 1.5;
/// A corner is squared only if the edges meet at no less and no more than this, in degrees: a
/// squared end of a flatter or sharper one would stick out.
const SQUARED: (f64, f64) = (30.0, 150.0);

/// How the allowances of two neighbouring edges meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Corner {
    /// Ends where it first meets the fold before the corner, carried on.
    CarriedToFirst,
    /// Ends where it first meets the fold after the corner, carried on.
    CarriedToSecond,
    /// Both carried on until they meet; cut blunt if that is far.
    Mitred,
    /// Squared to the edge before the corner, which is sewn first.
    SquaredToFirst,
    /// Squared to the edge after the corner, which is sewn first.
    SquaredToSecond,
    /// The edge before, mirrored in the hem line that comes after.
    FirstMirrored,
    /// The edge after, mirrored in the hem line before it.
    SecondMirrored,
}

impl Corner {
    /// The corner between an edge and the one after it.
    pub fn between(first: &Edge, second: &Edge) -> Self {
        use EdgeRole::{Fold, Hem};
        match (first.role(), second.role()) {
            (Fold, _) => Self::CarriedToFirst,
            (_, Fold) => Self::CarriedToSecond,
            (Hem, Hem) => Self::Mitred,
            (_, Hem) => Self::FirstMirrored,
            (Hem, _) => Self::SecondMirrored,
            _ => match sewn(first).cmp(&sewn(second)) {
                std::cmp::Ordering::Less => Self::SquaredToFirst,
                std::cmp::Ordering::Greater => Self::SquaredToSecond,
                std::cmp::Ordering::Equal => Self::Mitred,
            },
        }
    }
}

/// When an edge is sewn, in the usual order of work: the seams inside a body part first, then
/// shoulders and sides, then what runs across them: sleeve, waist, neck.
fn sewn(edge: &Edge) -> u8 {
    let is = |names: &[&str]| {
        let name = edge.name().as_str();
        names.iter().any(|n| name.starts_with(n))
    };
    if is(&["neckline", "armscye", "sleeve_cap", "waist"]) {
        2
    } else if is(&["shoulder", "side_seam", "underarm", "centre"]) {
        1
    } else {
        0
    }
}

/// An allowance as it comes up to a corner, from either side.
#[derive(Debug, Clone)]
pub(super) struct Arm {
    /// The line beside the edge, walked toward the corner.
    pub beside: Curve,
    /// Direction of the edge at the corner, walked toward it.
    pub toward: Vec2,
    /// Width.
    pub width: f64,
    /// Direction outward from the edge at the corner.
    pub outward: Vec2,
}

/// Two arms cut to each other, and what lies between their ends, in the order of the outline.
pub(super) struct Met {
    pub first: Curve,
    pub between: Vec<Curve>,
    pub second: Curve,
}

/// Lets two arms meet at a corner of the stitching line.
pub(super) fn meet(
    corner: Corner,
    at: Point,
    first: &Arm,
    second: &Arm,
) -> Result<Met, GeometryError> {
    if first.width.max(second.width) <= tolerance::POINT {
        return Ok(Met {
            first: first.beside.clone(),
            between: join(first.beside.end(), second.beside.end())?,
            second: second.beside.clone(),
        });
    }
    let met = match corner {
        Corner::CarriedToFirst => carried(second, first)?.map(turned),
        Corner::CarriedToSecond => carried(first, second)?,
        Corner::Mitred => None,
        Corner::SquaredToFirst => squared(at, first, second)?,
        Corner::SquaredToSecond => squared(at, second, first)?.map(turned),
        Corner::FirstMirrored => mirrored(at, first, second)?,
        Corner::SecondMirrored => mirrored(at, second, first)?.map(turned),
    };
    if let Some(met) = met {
        return Ok(met);
    }
    let longest = LONGEST_MITRE * first.width.max(second.width);
    if let Some(met) = mitred(at, first, second, longest)? {
        return Ok(met);
    }
    // They do not meet, for they run side by side or one is too short: straight across, and the
    // loop that may make is taken out of the whole ring.
    let (a, b) = (first.beside.end(), second.beside.end());
    Ok(Met {
        first: first.beside.clone(),
        between: join(a, b)?,
        second: second.beside.clone(),
    })
}

/// The same corner walked the other way.
fn turned(met: Met) -> Met {
    Met {
        first: met.second,
        between: met.between.iter().rev().map(Curve::reversed).collect(),
        second: met.first,
    }
}

/// A straight line between two points, or nothing when they are one.
fn join(from: Point, to: Point) -> Result<Vec<Curve>, GeometryError> {
    if from.distance(to) <= tolerance::POINT {
        return Ok(Vec::new());
    }
    Ok(vec![Curve::line(from, to)?])
}

/// An arm carried on far enough to meet anything at its corner.
fn reaching(arm: &Arm, other: &Arm) -> Result<Curve, GeometryError> {
    carried_on(&arm.beside, 6.0 * arm.width.max(other.width) + 1.0)
}

/// A curve up to a point on it.
fn upto(curve: &Curve, point: Point) -> Result<Curve, GeometryError> {
    let (_, at) = curve.nearest(point);
    curve.part(0.0, at)?.ending_at(point)
}

/// Where two curves cross, the place nearest to a point.
fn crossing(a: &Curve, b: &Curve, near: Point) -> Option<Point> {
    crossings(a.segments(), b.segments())
        .into_iter()
        .map(|c| c.point)
        .min_by(|p, q| p.distance(near).total_cmp(&q.distance(near)))
}

/// The allowance ends on the fold carried on, where it first gets there: the cloth beyond is
/// the other half.
fn carried(arm: &Arm, fold: &Arm) -> Result<Option<Met>, GeometryError> {
    let (a, b) = (reaching(arm, fold)?, reaching(fold, arm)?);
    let Some(end) = crossings(a.segments(), b.segments())
        .first()
        .map(|c| c.point)
    else {
        return Ok(None);
    };
    Ok(Some(Met {
        first: upto(&a, end)?,
        between: Vec::new(),
        second: upto(&b, end)?,
    }))
}

fn mitred(
    at: Point,
    first: &Arm,
    second: &Arm,
    longest: f64,
) -> Result<Option<Met>, GeometryError> {
    let (a, b) = (reaching(first, second)?, reaching(second, first)?);
    let out = match crossing(&a, &b, at) {
        Some(tip) if tip.distance(at) <= longest => {
            return Ok(Some(Met {
                first: upto(&a, tip)?,
                between: Vec::new(),
                second: upto(&b, tip)?,
            }));
        }
        Some(tip) => (tip - at).normalize(),
        // So acute that they meet out of reach.
        None if is_acute(first, second) => (first.toward + second.toward).normalize(),
        None => return Ok(None),
    };
    let middle = at + out * BLUNT * first.width.max(second.width);
    let across = Vec2::new(-out.y, out.x) * longest;
    let cut = Curve::line(middle - across, middle + across)?;
    let (Some(p), Some(q)) = (crossing(&a, &cut, at), crossing(&b, &cut, at)) else {
        return Ok(None);
    };
    Ok(Some(Met {
        first: upto(&a, p)?,
        between: join(p, q)?,
        second: upto(&b, q)?,
    }))
}

/// Whether the piece comes to a point at the corner.
fn is_acute(first: &Arm, second: &Arm) -> bool {
    first.toward.dot(second.outward) > 0.0 && first.toward.dot(second.toward) > 0.0
}

/// The allowance of the edge sewn first ends square to it, where its stitching line carried on
/// meets the other's cut line: both halves of that seam then have ends of one shape.
fn squared(at: Point, sewn: &Arm, other: &Arm) -> Result<Option<Met>, GeometryError> {
    // The angle inside the piece, for both directions run toward the corner.
    let inside = crate::geometry::angle_between(sewn.toward, other.toward)
        .abs()
        .to_degrees();
    let sticks_out = sewn.toward.dot(other.outward) > 0.0;
    if !sticks_out || !(SQUARED.0..=SQUARED.1).contains(&inside) || sewn.width == 0.0 {
        return Ok(None);
    }
    let b = reaching(other, sewn)?;
    let ray = Curve::line(at, at + sewn.toward * (3.0 * other.width + 1.0))?;
    let Some(end) = crossing(&b, &ray, at) else {
        return Ok(None);
    };
    let top = end + sewn.outward * sewn.width;
    let mut a = sewn.beside.clone();
    if let Some(on) = join(a.end(), top)?.first() {
        a = a.then(on)?;
    }
    Ok(Some(Met {
        first: a,
        between: join(top, end)?,
        second: upto(&b, end)?,
    }))
}

/// Beyond the hem line the cut line of the edge beside it runs on as its own mirror, so that
/// the hem turned up lies on what it covers.
fn mirrored(at: Point, side: &Arm, hem: &Arm) -> Result<Option<Met>, GeometryError> {
    if hem.width <= tolerance::POINT {
        return Ok(None);
    }
    let far = 3.0 * (side.width + hem.width) + 1.0;
    let line = Curve::line(at - hem.toward * far, at + hem.toward * far)?;
    let a = reaching(side, hem)?;
    let Some(fold) = crossing(&a, &line, at) else {
        return Ok(None);
    };
    let a = upto(&a, fold)?;
    let image = a.reversed().moved(&Rigid::mirror(at, hem.toward));
    let image = carried_on(&image, far)?;
    let b = reaching(hem, side)?;
    let Some(end) = crossing(&image, &b, at) else {
        return Ok(None);
    };
    let gap = fold - image.start();
    let image = image.moved(&Rigid::shift(gap));
    Ok(Some(Met {
        first: a,
        between: vec![upto(&image, end)?],
        second: upto(&b, end)?,
    }))
}
