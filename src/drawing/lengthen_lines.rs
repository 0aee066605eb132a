//! Where a piece is lengthened or shortened: a double line square to the grain.
//!
//! A bodice between underarm and waist, a skirt between hip and hem, a block in one at both
//! places, a sleeve above and below the elbow: there a piece is cut apart without touching
//! armscye, cap, darts' points or the shape over the hips (common practice).

use kurbo::{BezPath, ParamCurve, Point, Shape, Vec2};

use super::beside::write_beside;
use super::pens::GUIDE;
use super::piece_layers::{PieceLayers, mark};
use super::room::Room;
use super::strokes::ring;
use super::{Face, Pen, TextStyle};
use crate::geometry::{Curve, counted, crossings, perpendicular};
use crate::piece::{Apexes, EdgeName, Piece};

const WORDS: &str = "lengthen or shorten here";

/// Distance of the two lines, in millimetres.
const APART: f64 = 2.4;
/// Least distance from the levels between which a line lies, in millimetres.
const INSIDE: f64 = 10.0;
/// Distance that is kept from dart points, notches and other lines, in millimetres.
const CLEAR: f64 = 6.0;
/// A sleeve without an elbow line gets two lines if its underarm is so long, in millimetres.
const TWO_ON_SLEEVE: f64 = 240.0;

/// A double line: the upper line and the lower one.
pub(super) type DoubleLine = [Curve; 2];

/// Draws them, clear of the arrow heads at `tips`, and gives where they are.
pub(super) fn draw(
    out: &mut PieceLayers,
    room: &mut Room,
    piece: &Piece,
    tips: &[Point],
) -> Vec<DoubleLine> {
    let lines = double_lines(piece, tips);
    for line in lines.iter().flatten() {
        mark(&mut out.lengthen, room, line.to_path(), Pen::solid(GUIDE));
    }
    lines
}

/// Says what they are for; gives back what there was no room for.
pub(super) fn write(
    out: &mut PieceLayers,
    room: &mut Room,
    lines: &[DoubleLine],
) -> Option<String> {
    let mut left = None;
    for pair in lines {
        let style = TextStyle::new(Face::Regular, 3.2);
        match write_beside(room, pair, WORDS, style, 0.5) {
            Some(text) => out.words.push(text),
            None => left = Some(format!("{WORDS} (double line)")),
        }
    }
    left
}

fn double_lines(piece: &Piece, tips: &[Point]) -> Vec<DoubleLine> {
    let levels = Levels::of(piece, tips);
    let shape = ring(piece);
    levels
        .spans()
        .into_iter()
        .filter_map(|span| levels.best_in(span))
        .filter_map(|level| {
            Some([
                levels.chord(&shape, level - APART / 2.0)?,
                levels.chord(&shape, level + APART / 2.0)?,
            ])
        })
        .collect()
}

/// Two levels between which a line is wanted, and at which part of the way.
struct Span {
    from: f64,
    to: f64,
    wish: f64,
}

/// Heights on a piece: distances down its grain line, from its upper end.
struct Levels<'a> {
    piece: &'a Piece,
    /// Levels of arrow heads.
    heads: Vec<f64>,
    top: Point,
    down: Vec2,
}

impl<'a> Levels<'a> {
    fn of(piece: &'a Piece, tips: &[Point]) -> Self {
        let [low, top] = piece.grain();
        let down = (low - top).normalize();
        let heads = tips.iter().copied().chain([low, top]);
        Self {
            piece,
            heads: heads.map(|tip| (tip - top).dot(down)).collect(),
            top,
            down,
        }
    }

    fn at(&self, point: Point) -> f64 {
        (point - self.top).dot(self.down)
    }

    /// The highest and the lowest level of some points.
    fn reach(&self, points: impl IntoIterator<Item = Point>) -> Option<(f64, f64)> {
        points
            .into_iter()
            .map(|p| self.at(p))
            .fold(None, |r, level| {
                let (high, low) = r.unwrap_or((level, level));
                Some((level.min(high), level.max(low)))
            })
    }

    fn line(&self, name: &str) -> Option<(f64, f64)> {
        self.reach(ends(&self.piece.line(name)?.curve))
    }

    fn edge(&self, name: &EdgeName) -> Option<(f64, f64)> {
        self.reach(ends(self.piece.outline().edge(name)?.curve()))
    }

    fn spans(&self) -> Vec<Span> {
        let span = |from: f64, to: f64, wish: f64| Span { from, to, wish };
        let mut spans = Vec::new();
        if let Some((_, biceps)) = self.line("biceps") {
            let end = self.edge(&EdgeName::WRIST).map(|w| w.0);
            match (self.line("elbow"), end) {
                (Some((above, below)), Some(end)) => {
                    spans.push(span(biceps, above, 0.5));
                    spans.push(span(below, end, 0.5));
                }
                (None, Some(end)) if end - biceps >= TWO_ON_SLEEVE => {
                    let middle = 0.5 * (biceps + end);
                    spans.push(span(biceps, middle, 0.5));
                    spans.push(span(middle, end, 0.5));
                }
                (None, Some(end)) => spans.push(span(biceps, end, 0.5)),
                (_, None) => {}
            }
            return spans;
        }
        let underarm = self
            .line("underarm")
            .or_else(|| self.edge(&EdgeName::ARMSCYE))
            .map(|r| r.1);
        let waist = self.line("waist").or_else(|| self.edge(&EdgeName::WAIST));
        if let (Some(from), Some((to, _))) = (underarm, waist) {
            spans.push(span(from, to, 0.6));
        }
        let hem = self.edge(&EdgeName::HEM).map(|r| r.0);
        let hip = self.line("hip").map(|r| r.1);
        match (hip, waist, hem) {
            (Some(hip), _, Some(hem)) => spans.push(span(hip, hem, 0.4)),
            // A hem above the hip.
            (None, Some((_, waist)), Some(hem)) => spans.push(span(waist, hem, 0.6)),
            _ => {}
        }
        spans
    }

    /// The level in a span that keeps clear of dart points, then of darts, then of notches and
    /// other lines; the nearest to the wish of those. None where the span is too short.
    fn best_in(&self, span: Span) -> Option<f64> {
        let (from, to) = (span.from + INSIDE, span.to - INSIDE);
        if from > to {
            return None;
        }
        let wish = span.from + span.wish * (span.to - span.from);
        let steps = counted((to - from) / 2.0);
        (0..=steps)
            .map(|step| from + 2.0 * step as f64)
            .map(|level| (self.fault(level) * 1e4 + (level - wish).abs(), level))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .map(|(_, level)| level)
    }

    fn fault(&self, level: f64) -> f64 {
        let near = |(high, low): (f64, f64)| (high - CLEAR..=low + CLEAR).contains(&level);
        let mut fault = 0.0;
        for dart in self.piece.darts() {
            let tips = match dart.apexes {
                Apexes::One(apex) => vec![apex],
                Apexes::Two(upper, lower) => vec![upper, lower],
            };
            // A dart along the grain is lengthened with the piece; one across it is cut in two.
            let middle = dart.legs[0].midpoint(dart.legs[1]) - dart.apex();
            let across = middle.dot(self.down).abs() < middle.cross(self.down).abs();
            let whole = dart.legs.into_iter().chain(tips.iter().copied());
            let through = self.reach(whole).is_some_and(near);
            fault += f64::from(u8::from(across && through)) * 10.0;
            fault += tips
                .iter()
                .filter(|p| near((self.at(**p), self.at(**p))))
                .count() as f64
                * 100.0;
        }
        for head in &self.heads {
            fault += f64::from(u8::from(near((*head, *head)))) * 20.0;
        }
        for hole in self.piece.drill_points() {
            let at = self.at(hole.at);
            fault += f64::from(u8::from(near((at, at)))) * 100.0;
        }
        for notch in self.piece.notches() {
            let edge = self.piece.outline().edge(&notch.edge);
            let point = edge.and_then(|e| e.curve().point_at(notch.at).ok());
            let at = point.map(|(p, _)| self.at(p));
            fault += f64::from(u8::from(at.is_some_and(|at| near((at, at))))) * 2.0;
        }
        for line in self.piece.lines() {
            let reach = self.reach(ends(&line.curve));
            fault += f64::from(u8::from(reach.is_some_and(near))) * 5.0;
        }
        fault
    }

    /// The longest stretch across the piece at a level.
    fn chord(&self, shape: &BezPath, level: f64) -> Option<Curve> {
        let across = perpendicular(self.down) * -1.0;
        let bounds = shape.bounding_box();
        let on = self.top + self.down * level;
        let reach = bounds.width() + bounds.height();
        let ray = Curve::line(on - across * reach, on + across * reach).ok()?;
        let mut met: Vec<f64> = crossings(ray.segments(), &self.piece.outline().segments())
            .iter()
            .map(|c| (c.point - on).dot(across))
            .collect();
        met.sort_by(f64::total_cmp);
        let at = |s: f64| on + across * s;
        met.iter()
            .zip(met.iter().skip(1))
            .filter(|(from, to)| shape.winding(at(0.5 * (*from + *to))) != 0)
            .max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))
            .and_then(|(from, to)| Curve::line(at(*from), at(*to)).ok())
    }
}

/// Where the segments of a curve begin and end.
fn ends(curve: &Curve) -> impl Iterator<Item = Point> + '_ {
    let starts = curve.segments().iter().map(ParamCurve::start);
    starts.chain([curve.end()])
}
