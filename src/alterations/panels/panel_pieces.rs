//! A piece divided along a panel seam: the outline, marks and lines of both pieces.

use super::panel_path::PanelPath;
use crate::alterations::AlterationError;
use crate::geometry::{Curve, Point, Rigid, Span, Vec2, Which, along, crossings, tolerance};
use crate::piece::{
    BalanceLine, Cut, Dart, Edge, EdgeName, EdgeRole, NamedPoint, Notch, NotchKind, Outline, Piece,
    PieceParts,
};
use kurbo::{BezPath, ParamCurveNearest, Shape};

/// How far a grain line keeps from the edges of a panel where it can, in millimetres: more than a notch is
/// long.
const GRAIN_CLEAR: f64 = 9.0;

/// A line that passes the end of a seam at most so far away is divided there, in millimetres: so
/// deep may an armscye dip below its own end (an assumption).
const PASSES: f64 = 25.0;

/// What the parts of a piece are called: the one at the centre, the one at the side.
pub(in crate::alterations) const PARTS: [&str; 2] = ["centre", "side"];

/// The name of a part of a piece.
pub(in crate::alterations) fn part_name(piece: &Piece, part: &str) -> String {
    let name = format!("{} {part}", piece.base_name());
    piece
        .side()
        .map_or(name.clone(), |side| side.name_of(&name))
}

/// An end of the seam on the outline: its edge, and where it leaves and takes up that edge.
#[derive(Debug, Clone)]
pub(in crate::alterations) struct SeamEnd {
    pub edge: EdgeName,
    pub from: f64,
    pub to: f64,
}

/// How a piece is divided.
pub(in crate::alterations) struct Division<'p> {
    pub piece: &'p Piece,
    /// Where the seam starts and ends on the outline.
    pub ends: [SeamEnd; 2],
    /// On the piece that follows the start along the outline, and on the one before it.
    pub path: PanelPath,
    pub seam: EdgeName,
    /// Names of the darts that the seam takes up.
    pub taken: Vec<String>,
}

/// A part of an old edge on a new piece.
struct Kept<'p> {
    edge: &'p Edge,
    from: f64,
    to: f64,
}

impl Division<'_> {
    /// The two pieces, the one that follows the seam's start along the outline first.
    pub fn pieces(&self) -> Result<[Piece; 2], AlterationError> {
        let kept = [self.kept(Which::First)?, self.kept(Which::Second)?];
        let rings = [
            self.ring(&kept[0], Which::First)?,
            self.ring(&kept[1], Which::Second)?,
        ];
        let inside = [shape(&rings[0]), shape(&rings[1])];
        let centre = self.centre(&inside);
        let make = |side: Which| -> Result<Piece, AlterationError> {
            let is_centre = side == centre;
            let old = self.piece;
            let part = Which::second_if(!is_centre).of(&PARTS);
            let cut = match (is_centre, old.cut()) {
                (false, Cut::Fold) => Cut::Pair,
                (_, cut) => cut,
            };
            let outline = Outline::new(side.of(&rings).clone())?;
            let darts = self.darts(&inside, side)?;
            let named = |name: &str| darts.iter().any(|d| name == format!("{} dart", d.name));
            let drill_points = old.drill_points().iter().filter(|d| named(&d.name));
            Ok(Piece::new(PieceParts {
                name: part_name(old, part),
                side: old.side(),
                cut,
                grain: self.grain(&outline, is_centre)?,
                notches: self.notches(side.of::<Vec<_>>(&kept), side),
                lines: self.lines(&inside, side)?,
                drill_points: drill_points.cloned().collect(),
                points: self.points(&inside, side),
                darts,
                outline,
            })?)
        };
        Ok([make(Which::First)?, make(Which::Second)?])
    }

    /// The parts of old edges on one of the pieces, in outline order.
    fn kept(&self, side: Which) -> Result<Vec<Kept<'_>>, AlterationError> {
        let edges = self.piece.outline().edges();
        let (start, end) = (side.of(&self.ends), side.other().of(&self.ends));
        let index = |of: &SeamEnd| edges.iter().position(|e| e.name() == &of.edge);
        let (Some(first), Some(last)) = (index(start), index(end)) else {
            return Err(AlterationError::Missing {
                what: format!("an edge {} or {}", start.edge, end.edge),
                advice: "name edges of the piece",
            });
        };
        let count = edges.len();
        let steps = (last + count - first) % count;
        let walked = edges.iter().cycle().skip(first).take(steps + 1);
        let parts = walked.enumerate().map(|(step, edge)| Kept {
            edge,
            from: if step == 0 { start.to } else { 0.0 },
            to: if step == steps {
                end.from
            } else {
                edge.curve().length()
            },
        });
        Ok(parts.collect())
    }

    fn ring(&self, kept: &[Kept<'_>], side: Which) -> Result<Vec<Edge>, AlterationError> {
        let mut ring = Vec::with_capacity(kept.len() + 1);
        for part in kept {
            let edge = part.edge;
            let curve = edge.curve().part(part.from, part.to)?;
            ring.push(Edge::new(edge.name().clone(), edge.role(), curve));
        }
        // The path runs from the seam's start to its end: back on the piece that follows.
        let path = side.of(&self.path.curves);
        let seam = if side == Which::First {
            path.reversed()
        } else {
            path.clone()
        };
        let (from, to) = (
            ring.last().map_or(seam.start(), |e| e.curve().end()),
            ring.first().map_or(seam.end(), |e| e.curve().start()),
        );
        let seam = seam.ending_at(to)?;
        let seam = seam.reversed().ending_at(from)?.reversed();
        ring.push(Edge::new(self.seam.clone(), EdgeRole::Seam, seam));
        Ok(ring)
    }

    /// Which of the two is the centre piece: it has the fold, or the middle of the body.
    fn centre(&self, inside: &[BezPath; 2]) -> Which {
        let edges = self.piece.outline().edges();
        let middle = edges.iter().find(|e| {
            e.role() == EdgeRole::Fold
                || [EdgeName::CENTRE_BACK, EdgeName::CENTRE_FRONT].contains(e.name())
        });
        let place = middle.map_or_else(
            || self.piece.grain()[0].midpoint(self.piece.grain()[1]),
            |e| e.curve().start().midpoint(e.curve().end()),
        );
        let distance = |path: &BezPath| {
            let bounds = path.bounding_box();
            let held = bounds.contains(place) && path.contains(place);
            if held {
                0.0
            } else {
                (bounds.center() - place).hypot()
            }
        };
        Which::second_if(distance(&inside[1]) < distance(&inside[0]))
    }

    /// The darts that stay, on the piece they lie on.
    fn darts(&self, inside: &[BezPath; 2], side: Which) -> Result<Vec<Dart>, AlterationError> {
        let mut darts = Vec::new();
        for dart in self.piece.darts() {
            if self.taken.contains(&dart.name) {
                continue;
            }
            for end in dart.legs {
                for apex in dart.apexes.points() {
                    let leg = Curve::line(end, apex)?;
                    let apart =
                        |c: &crate::geometry::Crossing| c.point.distance(apex) > tolerance::PRINT;
                    let met =
                        self.path.curves.iter().any(|path| {
                            crossings(path.segments(), leg.segments()).iter().any(apart)
                        });
                    if met {
                        return Err(AlterationError::First {
                            why: format!("the seam would run through the {} dart", dart.name),
                            advice: "move that dart out of the way first (dart_relocation), or take it into the seam".to_owned(),
                        });
                    }
                }
            }
            let within = dart.legs[0].midpoint(dart.legs[1]).lerp(dart.apex(), 0.5);
            if side.of(inside).contains(within) {
                darts.push(dart.clone());
            }
        }
        Ok(darts)
    }

    /// Notches that were on the kept edges, and those of the seam.
    fn notches(&self, kept: &[Kept<'_>], side: Which) -> Vec<Notch> {
        let mut notches = Vec::new();
        for part in kept {
            let name = part.edge.name();
            for notch in self.piece.notches().iter().filter(|n| &n.edge == name) {
                let at = notch.at - part.from;
                // One in the mouth of a dart that is gone lies where it closed.
                if at >= -tolerance::POINT && notch.at <= part.to + tolerance::POINT {
                    let at = Span::from_low(0.0, part.to - part.from).nearest(at);
                    notches.push(Notch {
                        at,
                        ..notch.clone()
                    });
                }
            }
        }
        let length = side.of(&self.path.curves).length();
        for (name, walked) in &self.path.notches {
            notches.push(Notch {
                name: name.clone(),
                edge: self.seam.clone(),
                at: match side {
                    Which::First => length - walked,
                    Which::Second => *walked,
                },
                kind: NotchKind::Single,
            });
        }
        notches
    }

    /// The named points on one of the pieces; one on the seam itself is the first piece's.
    fn points(&self, inside: &[BezPath; 2], side: Which) -> Vec<NamedPoint> {
        let home = |p: &&NamedPoint| {
            let on_second = inside[1].contains(p.at) && !inside[0].contains(p.at);
            Which::second_if(on_second) == side
        };
        self.piece.points().iter().filter(home).cloned().collect()
    }

    /// The balance lines, cut at the seam.
    fn lines(
        &self,
        inside: &[BezPath; 2],
        side: Which,
    ) -> Result<Vec<BalanceLine>, AlterationError> {
        let mut lines = Vec::new();
        for line in self.piece.lines() {
            let curve = &line.curve;
            let mut stops = vec![0.0, curve.length()];
            let mut between = [curve.length(), 0.0];
            for path in &self.path.curves {
                let met = crossings(curve.segments(), path.segments());
                let mut places: Vec<f64> = met.iter().map(|c| curve.nearest(c.point).1).collect();
                if places.is_empty() {
                    places.extend(beside(curve, path));
                }
                for at in &places {
                    between = [between[0].min(*at), between[1].max(*at)];
                }
                stops.extend(places);
            }
            stops.sort_by(f64::total_cmp);
            stops.dedup_by(|a, b| (*a - *b).abs() <= tolerance::POINT);
            let mut whole: Option<Curve> = None;
            for &[from, to] in stops.array_windows() {
                let part = curve.part(from, to)?;
                let mut votes = [0, 0];
                for step in 1..10 {
                    let (point, _) = part.point_at(part.length() * f64::from(step) / 10.0)?;
                    for (count, path) in votes.iter_mut().zip(inside) {
                        *count += i32::from(path.contains(point));
                    }
                }
                // A level line may run out of the cloth for a while, where an armscye dips below
                // its own end: it stays with the piece beside.
                let open = from >= between[0] && to <= between[1];
                if votes == [0, 0] && !open {
                    let (middle, _) = part.point_at(0.5 * part.length())?;
                    let near = |path: &BezPath| {
                        path.segments()
                            .map(|s| s.nearest(middle, tolerance::PRINT).distance_sq)
                            .fold(f64::INFINITY, f64::min)
                    };
                    *Which::second_if(near(&inside[1]) < near(&inside[0])).of_mut(&mut votes) = 1;
                }
                if side.of(&votes) <= side.other().of(&votes) {
                    continue;
                }
                whole = Some(match whole {
                    None => part,
                    Some(before) if before.end().distance(part.start()) <= tolerance::POINT => {
                        before.then(&part)?
                    }
                    Some(before) => before
                        .clone()
                        .then(&Curve::line(before.end(), part.start())?)?
                        .then(&part)?,
                });
            }
            lines.extend(whole.map(|curve| BalanceLine {
                name: line.name.clone(),
                curve,
            }));
        }
        Ok(lines)
    }

    /// The grain: the old one where it lies in the piece, else one parallel to it.
    fn grain(&self, outline: &Outline, is_centre: bool) -> Result<[Point; 2], AlterationError> {
        let [low, high] = self.piece.grain();
        let ring = outline.segments();
        let path = BezPath::from_path_segments(ring.iter().copied());
        let old = Curve::line(low, high)?;
        let direction = (high - low).normalize();
        let across = Vec2::new(-direction.y, direction.x);
        // A notch in the seam beside it must not reach it.
        let clear = |line: &Curve| {
            [-1.0, 0.0, 1.0].iter().all(|side| {
                let beside = line.moved(&Rigid::shift(across * *side * GRAIN_CLEAR));
                crossings(beside.segments(), &ring).is_empty()
            })
        };
        if is_centre && path.contains(low.midpoint(high)) && clear(&old) {
            return Ok([low, high]);
        }
        // The longest line along the grain among several across the piece.
        let bounds = outline.bounds();
        let reach = bounds.width() + bounds.height();
        let mut best = (0.0, [low, high]);
        for step in -8..=8 {
            let through = bounds.center() + across * (bounds.width() * f64::from(step) / 18.0);
            let line = Curve::line(through - direction * reach, through + direction * reach)?;
            let mut met: Vec<f64> = crossings(line.segments(), &ring)
                .iter()
                .map(|c| line.nearest(c.point).1)
                .collect();
            met.sort_by(f64::total_cmp);
            for [start, end] in met.array_windows() {
                let (from, to) = (line.point_at(*start)?.0, line.point_at(*end)?.0);
                // The middle of the piece is the better place for nearly the same length.
                let inset = 0.12 * (end - start);
                let ends = [along(from, to, inset), along(to, from, inset)];
                let near = if clear(&Curve::line(ends[0], ends[1])?) {
                    1.0
                } else {
                    0.5
                };
                let worth = (end - start) * (1.0 - 0.03 * f64::from(step).abs()) * near;
                if path.contains(from.midpoint(to)) && worth > best.0 {
                    best = (worth, ends);
                }
            }
        }
        Ok(best.1)
    }
}

/// Where a line passes the end of a seam that starts just below it, if it does.
fn beside(line: &Curve, path: &Curve) -> Option<f64> {
    let near = |end: Point| {
        let (distance, at) = line.nearest(end);
        let inside = at > tolerance::PRINT && at < line.length() - tolerance::PRINT;
        (inside && distance <= PASSES).then_some((distance, at))
    };
    let ends = [near(path.start()), near(path.end())];
    let nearest = ends
        .into_iter()
        .flatten()
        .min_by(|a, b| a.0.total_cmp(&b.0));
    nearest.map(|(_, at)| at)
}

fn shape(ring: &[Edge]) -> BezPath {
    BezPath::from_path_segments(
        ring.iter()
            .flat_map(|e| e.curve().segments().iter().copied()),
    )
}
