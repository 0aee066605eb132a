//! One frame: the piece cut, moved, or trued.

use super::window::{Window, is_crossed};
use super::{clip, hatch};
use crate::demonstration::{Opening, Slash};
use crate::drawing::{
    Anchor, DrawnPath, Face, Ink, Layer, Level, Pen, Room, Text, TextStyle, stroke,
};
use crate::geometry::Vec2;
use crate::geometry::ring::signed_area;
use crate::geometry::{Point, Rigid, Span};
use crate::piece::{EdgeRole, Piece};
use crate::units::{Unit, speak};
use kurbo::{BezPath, Circle, Rect, Shape as _, Size};

/// How finely curves are followed, in millimetres of the piece.
const FOLLOWED: f64 = 0.2;

/// Pens.
pub(super) fn outline_pen() -> Pen {
    Pen::solid(0.35)
}
pub(super) fn old_pen() -> Pen {
    Pen::solid(0.25).dashed(&[1.8, 1.2]).ink(Ink::Grey(110))
}
pub(super) fn cut_pen() -> Pen {
    Pen::solid(0.6).dashed(&[2.4, 1.2])
}
pub(super) fn new_pen() -> Pen {
    Pen::solid(0.6)
}
fn thin(grey: u8) -> Pen {
    Pen::solid(0.15).ink(Ink::Grey(grey))
}

/// Words in a frame.
pub(super) fn label_style() -> TextStyle {
    TextStyle::new(Face::Bold, 3.0)
}

/// What one frame is drawn with.
pub(super) struct Brush<'a> {
    pub window: Window,
    pub unit: Unit,
    pub lines: &'a mut Layer,
    pub words: &'a mut Layer,
    room: Room,
}

impl<'a> Brush<'a> {
    pub fn new(window: Window, unit: Unit, lines: &'a mut Layer, words: &'a mut Layer) -> Self {
        let room = Room::inside(window.frame.to_path(0.1));
        Self {
            window,
            unit,
            lines,
            words,
            room,
        }
    }

    /// A run of the piece, drawn within the frame.
    fn run(&mut self, points: &[Point], pen: &Pen) {
        let placed = self.window.all(points);
        for part in clip::run(self.window.frame, &placed) {
            let path = stroke(&part);
            self.room.take_stroke(&path);
            self.lines.push(DrawnPath::stroked(path, pen.clone()));
        }
    }

    fn ring(&mut self, ring: &[Point], pen: &Pen) {
        let closed: Vec<Point> = ring.iter().chain(ring.first()).copied().collect();
        self.run(&closed, pen);
    }

    fn filled(&mut self, ring: &[Point], ink: Ink) {
        let area = clip::area(self.window.frame, &self.window.all(ring));
        if area.len() > 2 {
            let mut path = stroke(&area);
            path.close_path();
            self.lines.push(DrawnPath::filled(path, ink));
        }
    }

    /// A hatched area: once for paper put in, crossed for paper doubled or cut away.
    fn hatched(&mut self, opening: &Opening) {
        let area = clip::area(self.window.frame, &self.window.all(&opening.ring));
        let hatching = hatch::over(&area, is_crossed(opening.kind));
        if !hatching.path.is_empty() {
            self.lines.push(hatching);
        }
        self.ring(&opening.ring, &Pen::solid(0.25));
    }

    /// A word near a place, clear of everything, with a line to the place.
    fn label(&mut self, place: Point, text: &str) {
        let style = label_style();
        let wish = self.window.at(place);
        if !self.window.frame.contains(wish) {
            return;
        }
        let size = Size::new(style.width(text), style.cap_height());
        let away = wish + (self.window.frame.center() - wish).normalize() * 7.0;
        let away = if away.x.is_finite() { away } else { wish };
        let found = self.room.place(size, away);
        let rect = found.unwrap_or_else(|| Rect::from_center_size(away, size));
        let near = Point::new(
            Span::from_low(rect.x0, rect.x1).nearest(wish.x),
            Span::from_low(rect.y0, rect.y1).nearest(wish.y),
        );
        let back = near - wish;
        if back.hypot() > 1.5 {
            let gap = back.normalize() * 0.6;
            let line = stroke(&[wish, near - gap]);
            self.room.take_stroke(&line);
            self.lines.push(DrawnPath::stroked(line, Pen::solid(0.18)));
        }
        self.words.push(
            Text::new((rect.center().x, rect.y1), text, style)
                .anchor(Anchor::Middle)
                .level(Level::Baseline),
        );
    }

    /// Outline and darts of a piece, with its fold and its balance lines.
    fn piece(&mut self, (piece, laid): (&Piece, &Rigid), pen: &Pen, marks: Marks) {
        for edge in piece.outline().edges() {
            let run = edge
                .curve()
                .moved(laid)
                .to_polyline(FOLLOWED)
                .unwrap_or_default();
            let folded = edge.role() == EdgeRole::Fold && marks == Marks::All;
            let own = pen.clone();
            let own = if folded {
                own.dashed(&[5.0, 1.0, 0.8, 1.0])
            } else {
                own
            };
            self.run(&run, &own);
        }
        let thinner = Pen {
            width: 0.6 * pen.width,
            ..pen.clone()
        };
        for dart in piece.darts() {
            let legs: Vec<Point> = dart
                .to_polyline()
                .into_iter()
                .map(|p| laid.apply(p))
                .collect();
            self.run(&legs, &thinner);
        }
        if marks == Marks::All {
            for line in piece.lines() {
                let run = line.curve.to_polyline(FOLLOWED).unwrap_or_default();
                self.run(&run, &thin(170));
            }
        }
    }
}

/// What is drawn of a piece besides its outline and darts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Marks {
    All,
    None,
}

/// First frame: the old piece with the lines to cut along.
pub(super) fn cut(slash: &Slash, brush: &mut Brush<'_>) {
    brush.piece(
        (&slash.before, &Rigid::IDENTITY),
        &outline_pen(),
        Marks::All,
    );
    for cut in &slash.cuts {
        brush.run(&cut.path, &cut_pen());
    }
    hinges(slash, brush, |_, p| p);
    let started = slash
        .cuts
        .first()
        .and_then(|cut| scissors_at(slash, &cut.path));
    if let Some((at, way)) = started {
        scissors(brush, at, way);
    }
    for hinge in &slash.hinges {
        brush.label(*hinge, "hinge");
    }
}

/// Where the scissors go in: that end of a cut which is no hinge, and the direction into the paper.
fn scissors_at(slash: &Slash, path: &[Point]) -> Option<(Point, Vec2)> {
    let (first, second) = (path.first()?, path.get(1)?);
    let back = path.len().checked_sub(2)?;
    let (last, before) = (path.last()?, path.get(back)?);
    let hinged = |p: &Point| slash.hinges.iter().any(|hinge| hinge.distance(*p) < 0.5);
    let (at, next) = if hinged(first) {
        (last, before)
    } else {
        (first, second)
    };
    if hinged(at) || slash.panels.len() < 2 {
        return None;
    }
    Some((*at, (*next - *at).normalize()))
}

/// A pair of scissors at the start of a cut, outside the paper.
fn scissors(brush: &mut Brush<'_>, at: Point, way: Vec2) {
    let tip = brush.window.at(at);
    let side = Vec2::new(-way.y, way.x);
    let back = tip - way * 5.2;
    if !brush.window.frame.inset(-1.5).contains(back) {
        return;
    }
    let pen = Pen::solid(0.3);
    let mut path = BezPath::new();
    for s in [1.0, -1.0] {
        path.move_to(tip + side * (0.55 * s));
        path.line_to(back - side * (0.9 * s));
        let ring = Circle::new(back - side * (1.3 * s) - way * 0.7, 0.85);
        path.extend(ring.path_elements(0.02));
    }
    brush.room.take_box(path.bounding_box());
    brush.lines.push(DrawnPath::stroked(path, pen));
}

/// The sign of a hinge: a ring, white within.
pub(super) fn hinge_ring(lines: &mut Layer, at: Point) {
    let ring = Circle::new(at, 1.2).to_path(0.02);
    lines.push(DrawnPath::filled(ring.clone(), Ink::WHITE));
    lines.push(DrawnPath::stroked(ring, Pen::solid(0.45)));
}

/// The hinges where they are, or went.
fn hinges(slash: &Slash, brush: &mut Brush<'_>, place: impl Fn(&Slash, Point) -> Point) {
    for hinge in &slash.hinges {
        let at = brush.window.at(place(slash, *hinge));
        if !brush.window.frame.contains(at) {
            continue;
        }
        hinge_ring(brush.lines, at);
        brush.room.take_box(Rect::from_center_size(at, (2.4, 2.4)));
    }
}

/// Where a hinge went: with a panel that has it at its edge and moved it least.
fn hinge_after(slash: &Slash, hinge: Point) -> Point {
    let near = |ring: Vec<Point>| {
        let far = ring.iter().map(|p| p.distance(hinge));
        far.fold(f64::INFINITY, f64::min) < 0.5
    };
    let panels = slash.panels.iter().filter(|panel| near(panel.ring()));
    let moved = panels.map(|panel| panel.motion().apply(hinge));
    moved
        .min_by(|a, b| a.distance(hinge).total_cmp(&b.distance(hinge)))
        .unwrap_or(hinge)
}

/// Second frame: the panels moved, gaps and overlaps hatched.
pub(super) fn moved(slash: &Slash, brush: &mut Brush<'_>) {
    brush.piece((&slash.before, &Rigid::IDENTITY), &old_pen(), Marks::None);
    for panel in &slash.panels {
        let ring = panel.moved_ring();
        if panel.moves() {
            brush.filled(&ring, Ink::Grey(232));
        }
    }
    for panel in &slash.panels {
        brush.ring(&panel.moved_ring(), &outline_pen());
    }
    for opening in &slash.openings {
        brush.hatched(opening);
    }
    for (from, to) in slash.moved_darts() {
        brush.run(&[from, to], &Pen::solid(0.2));
    }
    hinges(slash, brush, hinge_after);
    let mut said: Vec<&Opening> = Vec::new();
    let mut largest: Vec<&Opening> = slash.openings.iter().collect();
    let area = |opening: &Opening| signed_area(&opening.ring).abs();
    largest.sort_by(|a, b| area(b).total_cmp(&area(a)));
    for opening in largest {
        let again = |other: &&Opening| {
            other.at.distance(opening.at) < NEAR
                && (other.amount - opening.amount).abs() < 0.25 * other.amount
        };
        if !said.iter().any(again) {
            brush.label(opening.at, &speak(&opening.words(), brush.unit));
            said.push(opening);
        }
    }
}

/// Of two places nearer to each other that open by about as much, one is measured, in millimetres.
const NEAR: f64 = 40.0;

/// How many places are marked at which the trued outline leaves the paper most.
const MARKED: usize = 2;

/// What the trued outline leaves the paper by at least to be marked, in millimetres.
const WORTH: f64 = 1.0;

/// Third frame: the trued outline over the panels and the old outline.
pub(super) fn trued(slash: &Slash, brush: &mut Brush<'_>) {
    brush.piece((&slash.before, &Rigid::IDENTITY), &old_pen(), Marks::None);
    for panel in &slash.panels {
        brush.ring(&panel.moved_ring(), &thin(130));
    }
    for piece in &slash.after {
        brush.piece((piece, &slash.laid), &new_pen(), Marks::None);
    }
    let mut far: Vec<_> = slash.truing.iter().filter(|t| t.most > WORTH).collect();
    far.sort_by(|a, b| b.most.total_cmp(&a.most));
    far.dedup_by(|a, b| a.at.distance(b.at) < NEAR && a.words() == b.words());
    for truing in far.into_iter().take(MARKED) {
        brush.label(truing.at, &speak(&truing.words(), brush.unit));
    }
}
