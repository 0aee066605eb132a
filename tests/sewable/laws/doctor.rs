//! Ways to spoil a pattern.

use blockwright::geometry::{Curve, Point};
use blockwright::piece::*;
use kurbo::{CubicBez, Line, PathSeg};

/// Changes one piece through its parts; an impossible change leaves it as it was.
pub fn piece(parts: &mut PatternParts, name: &str, change: impl FnOnce(&mut PieceParts)) {
    let old = parts.pieces.iter_mut().find(|p| p.name() == name).unwrap();
    let mut changed = old.clone().into_parts();
    change(&mut changed);
    *old = Piece::new(changed).unwrap();
}

/// Changes the edges of one piece.
pub fn edges(parts: &mut PatternParts, name: &str, change: impl FnOnce(&mut Vec<Edge>)) {
    piece(parts, name, |p| {
        let mut edges = p.outline.edges().to_vec();
        change(&mut edges);
        p.outline = Outline::new(edges).unwrap();
    });
}

/// Gives an edge another line.
pub fn redraw(parts: &mut PatternParts, name: &str, of: &EdgeName, curve: Curve) {
    edges(parts, name, |edges| {
        let edge = edges.iter_mut().find(|e| e.name() == of).unwrap();
        *edge = Edge::new(of.clone(), edge.role(), curve);
    });
}

/// Moves every point of a piece's outline, its handles and its legs.
pub fn warp(parts: &mut PieceParts, to: impl Fn(Point) -> Point) -> Result<(), PieceError> {
    let segment = |s: &PathSeg| match *s {
        PathSeg::Line(l) => PathSeg::Line(Line::new(to(l.p0), to(l.p1))),
        PathSeg::Quad(q) => PathSeg::Cubic(CubicBez::new(to(q.p0), to(q.p1), to(q.p1), to(q.p2))),
        PathSeg::Cubic(c) => PathSeg::Cubic(CubicBez::new(to(c.p0), to(c.p1), to(c.p2), to(c.p3))),
    };
    let mut edges = Vec::new();
    for edge in parts.outline.edges() {
        let curve = Curve::new(edge.curve().segments().iter().map(segment).collect())?;
        edges.push(Edge::new(edge.name().clone(), edge.role(), curve));
    }
    parts.outline = Outline::new(edges)?;
    for dart in &mut parts.darts {
        dart.legs = dart.legs.map(&to);
    }
    Ok(())
}

/// Moves one corner of a piece, and nothing else.
pub fn move_point(parts: &mut PatternParts, name: &str, from: Point, to: Point) {
    piece(parts, name, |p| {
        warp(p, |q| if q.distance(from) < 1e-3 { to } else { q }).unwrap();
    });
}
