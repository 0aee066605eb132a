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
    /// The upper end of the centre: the nape, or the hollow of the front neck.
    pub(super) neck: Point,
    /// The waist from the centre to the side.
    waist: Vec<Point>,
}

impl<'a> Panel<'a> {
    /// `None` for a piece without centre, neckline or waist.
    pub(super) fn of(piece: &'a Piece) -> Option<Self> {
        let outline = piece.outline();
        let centre = |name: &EdgeName| outline.edge(name);
        let (half, centre) = centre(&EdgeName::CENTRE_BACK)
            .map(|edge| (Half::Back, edge))
            .or_else(|| Some((Half::Front, centre(&EdgeName::CENTRE_FRONT)?)))?;
        outline.edge(&EdgeName::NECKLINE)?;
        let mut waist = match piece.line("waist") {
            Some(line) => flat(line.curve.clone())?,
            None => outline.edge(&EdgeName::WAIST)?.to_polyline(FLAT).ok()?,
        };
        let neck = upper(centre);
        let (first, last) = (waist.first()?, waist.last()?);
        if (first.x - neck.x).abs() > (last.x - neck.x).abs() {
            waist.reverse();
        }
        Some(Self {
            piece,
            half,
            neck,
            waist,
        })
    }

    /// The place on the waist at a share of the way from the centre to the side.
    pub(super) fn waist_at(&self, share: f64) -> Option<Point> {
        let (first, last) = (self.waist.first()?, self.waist.last()?);
        self.waist_below(first.x + share * (last.x - first.x))
    }

    /// The place on the waist at a distance from the grain's origin.
    pub(super) fn waist_below(&self, x: f64) -> Option<Point> {
        let pairs = self.waist.iter().zip(self.waist.iter().skip(1));
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

fn flat(curve: crate::geometry::Curve) -> Option<Vec<Point>> {
    let edge = Edge::new(EdgeName::WAIST, crate::piece::EdgeRole::Seam, curve);
    edge.to_polyline(FLAT).ok()
}
