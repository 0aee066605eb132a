//! How far the trued outline lies from the panels as they were taped.

use super::panel::{Origin, Panel};
use super::rings::{distance, is_inside, length, point_along, sides};
use super::slash::{Opening, OpeningKind, Truing};
use crate::geometry::{Curve, Point, Rigid, counted};
use crate::piece::{EdgeName, Piece};

/// How closely curves are followed, in millimetres.
pub(super) const FOLLOWED: f64 = 0.02;

/// How far apart outlines are compared, in millimetres.
const APART: f64 = 3.0;

/// What lies so deep under another panel is hidden, in millimetres.
const HIDDEN: f64 = 0.3;

/// Where the mouths of darts begin and end along an edge: they are drawn with the dart folded, and
/// are not compared.
pub(super) fn without_mouths(piece: &Piece, edge: &EdgeName, curve: &Curve) -> Vec<(Curve, bool)> {
    let mut parts = Vec::new();
    let mut from = 0.0;
    let long = curve.length();
    let mut add = |from: f64, to: f64, mouth: bool| {
        if to - from > 1e-6 {
            parts.extend(curve.part(from, to).ok().map(|part| (part, mouth)));
        }
    };
    for (_, start, end) in piece.mouths(edge) {
        add(from, start, false);
        add(start, end, true);
        from = end;
    }
    add(from, long, false);
    parts
}

/// An edge of a piece as runs of straight sides.
struct Line {
    edge: EdgeName,
    run: Vec<Point>,
}

fn lines(piece: &Piece) -> Vec<Line> {
    let mut found = Vec::new();
    for edge in piece.outline().edges() {
        for (part, mouth) in without_mouths(piece, edge.name(), edge.curve()) {
            if !mouth {
                found.extend(part.to_polyline(FOLLOWED).ok().map(|run| Line {
                    edge: edge.name().clone(),
                    run,
                }));
            }
        }
    }
    found
}

fn samples(run: &[Point]) -> impl Iterator<Item = Point> + '_ {
    let long = length(run);
    let count = (long / APART).ceil().max(1.0);
    (0..=counted(count)).filter_map(move |k| Some(point_along(run, long * k as f64 / count)?.0))
}

/// The most by which the outline after lies from the moved panels, an edge each; `drawn` edges are
/// cut along their new line. The pieces after lie on the table as `laid` says.
pub(super) fn truing(
    before: &Piece,
    (after, laid): (&[&Piece], &Rigid),
    panels: &[Panel],
    openings: &[Opening],
    drawn: &[EdgeName],
) -> Vec<Truing> {
    let mut new: Vec<Line> = after.iter().flat_map(|piece| lines(piece)).collect();
    for p in new.iter_mut().flat_map(|line| &mut line.run) {
        *p = laid.apply(*p);
    }
    let rings: Vec<Vec<Point>> = panels.iter().map(Panel::moved_ring).collect();
    let new_sides: Vec<(Point, Point)> = new
        .iter()
        .flat_map(|line| super::rings::steps(&line.run))
        .chain(
            mouth_chords(after)
                .into_iter()
                .map(|(a, b)| (laid.apply(a), laid.apply(b))),
        )
        .collect();
    let hidden = |own: usize, p: Point| {
        rings.iter().enumerate().any(|(index, ring)| {
            index != own && is_inside(ring, p) && distance(sides(ring), p) > HIDDEN
        })
    };
    let mut found: Vec<Truing> = Vec::new();
    let mut note = |edge: &EdgeName, most: f64, at: Point| {
        if drawn.contains(edge) {
            return;
        }
        match found.iter_mut().find(|t| t.edge == *edge) {
            Some(t) if t.most >= most => {}
            Some(t) => (t.most, t.at) = (most, at),
            None => found.push(Truing {
                edge: edge.clone(),
                most,
                at,
            }),
        }
    };
    let mut taped: Vec<(Point, Point)> = joins(panels);
    let whole = openings
        .iter()
        .filter(|o| matches!(o.kind, OpeningKind::Added | OpeningKind::CutOff));
    taped.extend(whole.flat_map(|o| sides(&o.ring).collect::<Vec<_>>()));
    let edges = before.outline().edges();
    for (index, panel) in panels.iter().enumerate() {
        for (a, b, origin) in panel.tagged() {
            let (a, b) = (panel.motion().apply(a), panel.motion().apply(b));
            match origin {
                // A seam over the cut, as between the panels of a divided piece.
                Origin::Cut if after.len() > 1 => taped.push((a, b)),
                Origin::Cut => {}
                Origin::Mouth => taped.push((a, b)),
                Origin::Edge(number) => {
                    taped.push((a, b));
                    let Some(edge) = edges.get(number) else {
                        continue;
                    };
                    for p in samples(&[a, b]) {
                        if !hidden(index, p) {
                            note(edge.name(), distance(new_sides.iter().copied(), p), p);
                        }
                    }
                }
            }
        }
    }
    for line in &new {
        let is_old = edges.iter().any(|edge| *edge.name() == line.edge);
        if !is_old {
            continue;
        }
        for p in samples(&line.run) {
            note(&line.edge, distance(taped.iter().copied(), p), p);
        }
    }
    found
}

/// The mouths of darts, straight from leg to leg.
fn mouth_chords(pieces: &[&Piece]) -> Vec<(Point, Point)> {
    let darts = pieces.iter().flat_map(|piece| piece.darts());
    let open = darts.filter(|dart| dart.edge.is_some());
    open.map(|dart| (dart.legs[0], dart.legs[1])).collect()
}

/// Where panels that were one at the edge of the paper stand apart: straight from one to the other.
fn joins(panels: &[Panel]) -> Vec<(Point, Point)> {
    let mut ends: Vec<(Point, Point)> = Vec::new();
    for panel in panels {
        let turns = panel
            .tagged()
            .zip(panel.tagged().skip(1).chain(panel.tagged().take(1)));
        for ((_, at, from), (_, _, to)) in turns {
            if (from == Origin::Cut) != (to == Origin::Cut) {
                ends.push((at, panel.motion().apply(at)));
            }
        }
    }
    let mut found = Vec::new();
    for (index, (p, moved)) in ends.iter().enumerate() {
        for (q, other) in ends.iter().skip(index + 1) {
            if p.distance(*q) < 1e-3 {
                found.push((*moved, *other));
            }
        }
    }
    found
}
