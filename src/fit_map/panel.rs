//! A back or a front of a pattern, as far as threads are measured on it.

use crate::form::Half;
use crate::geometry::Point;
use crate::piece::{Edge, EdgeName, Piece};

/// How exactly curves are followed, in mm.
const FLAT: f64 = 0.05;

/// A piece from the middle of the body to its side.
pub(super) struct Panel<'a> {
    pub(super) piece: &'a Piece,
    pub(super) half: Half,
    /// The upper end of the centre: the nape, or the hollow of the front neck; of a piece without a
    /// neckline any upper end.
    pub(super) neck: Point,
    /// Whether that is the neck.
    pub(super) has_neck: bool,
    /// The waist from the centre to the side.
    waist: Vec<Point>,
    /// The hip line likewise, if there is one.
    hip: Option<Vec<Point>>,
}

impl<'a> Panel<'a> {
    /// `None` for a piece without centre or waist.
    pub(super) fn of(piece: &'a Piece) -> Option<Self> {
        let outline = piece.outline();
        let centre = |name: &EdgeName| outline.edge(name);
        let (half, centre) = centre(&EdgeName::CENTRE_BACK)
            .map(|edge| (Half::Back, edge))
            .or_else(|| Some((Half::Front, centre(&EdgeName::CENTRE_FRONT)?)))?;
        let neck = upper(centre);
        let from_centre = |mut line: Vec<Point>| {
            let (first, last) = (line.first()?, line.last()?);
            if (first.x - neck.x).abs() > (last.x - neck.x).abs() {
                line.reverse();
            }
            Some(line)
        };
        let waist = match piece.line("waist") {
            Some(line) => flat(line.curve.clone())?,
            None => outline.edge(&EdgeName::WAIST)?.to_polyline(FLAT).ok()?,
        };
        let hip = piece.line("hip").and_then(|line| flat(line.curve.clone()));
        Some(Self {
            piece,
            half,
            neck,
            has_neck: outline.edge(&EdgeName::NECKLINE).is_some(),
            waist: from_centre(waist)?,
            hip: hip.and_then(from_centre),
        })
    }

    /// The place on the waist at a share of the way from the centre to the side.
    pub(super) fn waist_at(&self, share: f64) -> Option<Point> {
        at_share(&self.waist, share)
    }

    /// The place on the waist at a distance from the grain's origin.
    pub(super) fn waist_below(&self, x: f64) -> Option<Point> {
        below(&self.waist, x)
    }

    /// The ends of a straight thread from the waist down to the hip line, by the share of the way from
    /// the centre to the side at the hip, which is the wider; at the side it runs inside the piece.
    pub(super) fn to_hip(&self, share: f64) -> Option<[Point; 2]> {
        let hip = at_share(self.hip.as_ref()?, share)?;
        let side = self.waist.last()?;
        let beyond = (hip.x - self.neck.x).abs() > (side.x - self.neck.x).abs();
        let waist = if beyond {
            *side
        } else {
            self.waist_below(hip.x)?
        };
        Some([Point::new(hip.x, waist.y), hip])
    }

    /// Where side seam and armscye meet.
    pub(super) fn underarm(&self) -> Option<Point> {
        Some(upper(self.piece.outline().edge(&EdgeName::SIDE_SEAM)?))
    }

    /// Where neckline and shoulder meet.
    pub(super) fn neck_side(&self) -> Option<Point> {
        let shoulder = self.piece.outline().edge(&EdgeName::SHOULDER)?;
        let far = |p: Point| (p.x - self.neck.x).abs();
        let [a, b] = shoulder.ends();
        Some(if far(a) < far(b) { a } else { b })
    }

    /// What darts of the side seam take from its length above a height.
    pub(super) fn taken_at_side(&self, above: f64) -> f64 {
        let darts = self.piece.darts().iter();
        darts
            .filter(|dart| dart.edge == Some(EdgeName::SIDE_SEAM))
            .filter(|dart| dart.legs.iter().all(|leg| leg.y < above))
            .map(crate::piece::Dart::intake)
            .sum()
    }
}

/// The upper end of an edge.
fn upper(edge: &Edge) -> Point {
    let [a, b] = edge.ends();
    if a.y < b.y { a } else { b }
}

/// The place on a line from the centre at a share of the way to its other end.
fn at_share(line: &[Point], share: f64) -> Option<Point> {
    let (first, last) = (line.first()?, line.last()?);
    below(line, first.x + share * (last.x - first.x))
}

fn below(line: &[Point], x: f64) -> Option<Point> {
    let pairs = line.iter().zip(line.iter().skip(1));
    let between = pairs
        .map(|(a, b)| (*a, *b))
        .find(|(a, b)| a.x.min(b.x) - 1e-6 <= x && x <= a.x.max(b.x) + 1e-6);
    let (a, b) = between?;
    let t = if (b.x - a.x).abs() > 1e-9 {
        (x - a.x) / (b.x - a.x)
    } else {
        0.0
    };
    Some(Point::new(x, a.y + t * (b.y - a.y)))
}

fn flat(curve: crate::geometry::Curve) -> Option<Vec<Point>> {
    let edge = Edge::new(EdgeName::WAIST, crate::piece::EdgeRole::Seam, curve);
    edge.to_polyline(FLAT).ok()
}
